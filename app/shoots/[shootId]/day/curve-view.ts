import { backwardCurve, type CurvePoint } from '@/lib/day/backward-curve'
import type { DayForecast } from '@/lib/day/day-forecast'
import type { Layout } from '@/lib/day/layout'
import { formatClock, fromIso } from '@/lib/plan/clock'
import type { Shoot } from '@/lib/plan/shoot'
import { formatShare } from '@/lib/units'

/** Meat-on against the chance of the wished slice, as it is drawn. Along: 0 to 1 of the picture's width; chance: 0 to 1. */
export interface CurveView {
  readonly wanted: string
  readonly points: readonly (readonly [along: number, chance: number])[]
  readonly hours: readonly { readonly along: number; readonly words: string }[]
  readonly planned: { readonly along: number; readonly clock: string; readonly chance: string } | null
  readonly marks: readonly CurveMarkView[]
  /** Meat-on, chance, and how many of these wait for it. */
  readonly rows: readonly (readonly [string, string, string])[]
}
export interface CurveMarkView {
  readonly share: string
  readonly along: number | null
  readonly chance: number
  readonly clock: string | null
  readonly sentence: string
  readonly chosen: boolean
}
/** So many rows tell the curve as well as the picture does. */
const ROWS = 14
const HOUR = 3_600_000
const WORDED_HOURS = 5

/** Null where no slice is wished or it cannot be had. */
export function curveViewOf(shoot: Shoot, forecast: DayForecast | undefined, layout: Layout): CurveView | null {
  const curve = forecast && backwardCurve(shoot, forecast)
  if (!curve || curve.points.length < 2) return null
  const [from, to] = [fromIso(curve.earliest), fromIso(curve.latest)]
  const along = (iso: string) => (fromIso(iso) - from) / (to - from)
  const clock = (iso: string) => formatClock(fromIso(iso), shoot.zone)
  const now = layout.meatOn[curve.cook] ?? layout.start
  const at = curve.points.find((p) => fromIso(p.meatOn) >= fromIso(now))
  return {
    wanted: curve.wanted,
    points: curve.points.map((p) => [along(p.meatOn), p.chance]),
    hours: hoursOf(from, to, (at) => formatClock(at as never, shoot.zone)),
    planned: at && along(now) >= 0 ? { along: along(now), clock: clock(now), chance: formatShare(at.chance) } : null,
    marks: curve.marks.map((mark) => ({
      share: formatShare(mark.share),
      along: mark.latest ? along(mark.latest) : null,
      chance: mark.share,
      clock: mark.latest ? clock(mark.latest) : null,
      sentence: mark.sentence,
      chosen: shoot.day?.slice?.chance === mark.share,
    })),
    rows: thinned(curve.points).map((p) => [clock(p.meatOn), formatShare(p.chance), formatShare(p.waits)]),
  }
}

function thinned(points: readonly CurvePoint[]): readonly CurvePoint[] {
  const every = Math.ceil(points.length / ROWS)
  return points.filter((_, i) => i % every === 0)
}

function hoursOf(from: number, to: number, words: (at: number) => string) {
  const every = ([0.25, 0.5, 1, 2, 3].find((n) => (to - from) / (n * HOUR) <= WORDED_HOURS) ?? 6) * HOUR
  const marks = []
  // Zones stand whole quarters of an hour from each other.
  for (let at = Math.ceil(from / every) * every; at <= to; at += every)
    marks.push({ along: (at - from) / (to - from), words: words(at) })
  return marks
}
