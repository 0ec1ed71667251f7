import { type Celsius, celsius, fahrenheit, fromFahrenheit, type Instant, instant, type UnitSystem } from '../units'
import { type DrawingAxis, tenth } from './drawing'
import type { CurvePoint } from './heat-line-facts'

/** A straight scale: px of a value. */
export interface Scale {
  (value: number): number
  readonly domain: readonly [number, number]
  readonly range: readonly [number, number]
}
export function linear(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const slope = (range[1] - range[0]) / (domain[1] - domain[0] || 1)
  return Object.assign((value: number) => range[0] + (value - domain[0]) * slope, { domain, range })
}
/** One x scale for all: linear in time between the gutter and the right margin. */
export const timeAxis = (from: Instant, to: Instant, start: number, end: number): Scale =>
  linear([from, to], [start, end])

export const axisOf = ({ domain, range }: Scale, standing: boolean): DrawingAxis => ({
  from: instant(domain[0]),
  to: instant(domain[1]),
  start: range[0],
  end: range[1],
  standing,
})
export const pxPerMinute = (axis: Scale): number => axis(60_000) - axis(0)
/** An instant's place, kept inside the plot. */
export const inPlot = (axis: Scale, at: number): number => Math.min(axis.range[1], Math.max(axis.range[0], axis(at)))
export const isInPlot = (axis: Scale, at: number): boolean => at >= axis.domain[0] && at <= axis.domain[1]

/** A level scale with its ticks, lettered in the person's units. */
export interface TickedScale {
  readonly y: Scale
  readonly top: number
  readonly bottom: number
  readonly ticks: readonly { readonly y: number; readonly words: string }[]
}
const figure = (at: Celsius, units: UnitSystem) => String(Math.round(units === 'us' ? fahrenheit(at) : at))

/** Meat 0-70 °C (`bottom` is the place of nought, `top` of the ceiling), higher where the cook goes higher; ticks at round figures of the person's units. */
export function meatScale(highest: number, units: UnitSystem, bottom: number, top: number): TickedScale {
  const ceiling = Math.max(70, Math.ceil((highest + 4) / 10) * 10)
  const y = linear([0, ceiling], [bottom, top])
  const round = units === 'us' ? [40, 80, 120, 160, 200] : [0, 20, 40, 60, 80, 100]
  const level = (tick: number) => (units === 'us' ? fromFahrenheit(tick) : tick)
  const shown = round.filter((tick) => level(tick) <= ceiling)
  return { y, top, bottom, ticks: shown.map((tick) => ({ y: y(level(tick)), words: String(tick) })) }
}

/** Cooker: ticks nought, the roast's set-point and the sear, as far as they stand apart. */
export function cookerScale(
  levels: readonly number[],
  highest: number,
  units: UnitSystem,
  bottom: number,
  top: number,
): TickedScale {
  const y = linear([0, Math.max(highest, ...levels)], [bottom, top])
  const ticks: { y: number; words: string }[] = []
  for (const level of [0, ...levels])
    if (ticks.every((tick) => Math.abs(tick.y - y(level)) > 14))
      ticks.push({ y: y(level), words: figure(celsius(level), units) })
  return { y, top, bottom, ticks }
}

type Place = readonly [along: number, across: number]
const through = (places: readonly Place[], standing: boolean): string =>
  places
    .map(([t, v], i) => `${i === 0 ? 'M' : 'L'}${standing ? `${tenth(v)} ${tenth(t)}` : `${tenth(t)} ${tenth(v)}`}`)
    .join('')
/** The path through points in time; `level` places their height. */
export const polyline = (points: readonly Place[], standing = false): string => through(points, standing)

/** Paths of a quantile curve; where time runs down, its two lengths are swapped. */
export function curvePaths(points: readonly CurvePoint[], axis: Scale, level: Scale, standing = false) {
  const along = (of: 'low' | 'likely' | 'high') => points.map((p): Place => [axis(p.at), level(p[of])])
  const [low, high] = [along('low'), along('high')]
  const band = points.length > 1 ? `${through([...low, ...high.reverse()], standing)}Z` : ''
  const open = (places: readonly Place[]) => (points.length > 1 ? through(places, standing) : '')
  return { likely: open(along('likely')), low: open(low), high: open(along('high')), band }
}

const between = (a: number, b: number, share: number) => a + (b - a) * share
/** A curve at an instant; null outside it. */
export function valueAt(points: readonly CurvePoint[], at: Instant): CurvePoint | null {
  const after = points.findIndex((point) => point.at >= at)
  const b = points[after]
  if (!b) return null
  const a = points[after - 1]
  if (!a) return b.at === at ? b : null
  const share = (at - a.at) / (b.at - a.at)
  const mix = (of: 'low' | 'likely' | 'high') => between(a[of], b[of], share)
  return { at, low: mix('low'), likely: mix('likely'), high: mix('high') }
}

/** The part of a curve inside a span, cut where it enters and leaves. */
export function within(points: readonly CurvePoint[], from: number, to: number): CurvePoint[] {
  const inside = points.filter((point) => point.at > from && point.at < to)
  const edge = (at: number) => valueAt(points, instant(at))
  return [edge(from), ...inside, edge(to)].filter((point) => point !== null)
}
