import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { area, line as polyline } from 'd3-shape'
import { type Celsius, celsius, fahrenheit, fromFahrenheit, type Instant, instant, type UnitSystem } from '../units'
import type { DrawingAxis } from './drawing'
import type { CurvePoint } from './heat-line-facts'

export type Scale = ScaleLinear<number, number>

/** One x scale for all: linear in time between the gutter and the right margin. */
export const timeAxis = (from: Instant, to: Instant, start: number, end: number): Scale =>
  scaleLinear().domain([from, to]).range([start, end])

export function axisOf(axis: Scale, standing: boolean): DrawingAxis {
  const [from = 0, to = 0] = axis.domain()
  const [start = 0, end = 0] = axis.range()
  return { from: instant(from), to: instant(to), start, end, standing }
}

const HOUR = 3_600_000
/** Whole hours of the zone's clock inside the span; every second or third where they stand too close. */
export function hours(axis: Scale, offsetMs: number, least: number): Instant[] {
  const [from = 0, to = 0] = axis.domain()
  const apart = Math.abs(axis(HOUR) - axis(0))
  const every = ([1, 2, 3, 4, 6, 12].find((n) => n * apart >= least) ?? 24) * HOUR
  const first = Math.ceil((from + offsetMs) / every) * every - offsetMs
  const marks: Instant[] = []
  for (let at = first; at <= to; at += every) marks.push(instant(at))
  return marks
}

/** How far the zone's clock is ahead of UTC at an instant, ms. */
export function clockOffset(at: Instant, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  }).formatToParts(at)
  const part = (type: string) => Number(parts.find((p) => p.type === type)?.value)
  const local = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'))
  return local - Math.floor(at / 60_000) * 60_000
}

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
  const y = scaleLinear().domain([0, ceiling]).range([bottom, top])
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
  const ceiling = Math.max(highest, ...levels)
  const y = scaleLinear().domain([0, ceiling]).range([bottom, top])
  const ticks: { y: number; words: string }[] = []
  for (const level of [0, ...levels])
    if (ticks.every((tick) => Math.abs(tick.y - y(level)) > 14))
      ticks.push({ y: y(level), words: figure(celsius(level), units) })
  return { y, top, bottom, ticks }
}

type Along = (point: CurvePoint) => number
/** Paths of a quantile curve; `x` and `y` place a point (swap them where time runs down). */
export function curvePaths(points: readonly CurvePoint[], axis: Scale, level: Scale, standing = false) {
  const time: Along = (point) => axis(point.at)
  const mid: Along = (point) => level(point.likely)
  const low: Along = (point) => level(point.low)
  const high: Along = (point) => level(point.high)
  const open = (along: Along) =>
    polyline<CurvePoint>(standing ? along : time, standing ? time : along).digits(1)([...points]) ?? ''
  const band = standing
    ? area<CurvePoint>().y(time).x0(low).x1(high).digits(1)
    : area<CurvePoint>().x(time).y0(low).y1(high).digits(1)
  return { likely: open(mid), low: open(low), high: open(high), band: band([...points]) ?? '' }
}

/** The likely value of a curve at an instant; null outside it. */
export function valueAt(points: readonly CurvePoint[], at: Instant): CurvePoint | null {
  const after = points.findIndex((point) => point.at >= at)
  const b = points[after]
  if (!b) return null
  const a = points[after - 1]
  if (!a) return b.at === at ? b : null
  const share = (at - a.at) / (b.at - a.at)
  const between = (from: number, to: number) => from + (to - from) * share
  return { at, low: between(a.low, b.low), likely: between(a.likely, b.likely), high: between(a.high, b.high) }
}
