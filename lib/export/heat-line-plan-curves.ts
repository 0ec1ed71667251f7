import type { Trace } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { quantileOf } from '../model/quantiles'
import { later, seconds } from '../units'
import type { CurvePoint, HeatFacts, MomentFact } from './heat-line-facts'
import type { HeatLineCook } from './heat-line-from-plan'

const MINUTE = 60_000
/** As many as a picture can show; what lies on the straight line between its neighbours is left out after that. */
const MOST_POINTS = 160
/** What no eye sees on the picture, °C. */
const UNSEEN_C = 0.12
const hundredth = (n: number) => Math.round(n * 100) / 100

/** Quantiles over the members; both curves end soon after the likely slice. */
export function planCurves(
  cook: HeatLineCook,
  moments: readonly MomentFact[],
  to: number,
): Pick<HeatFacts, 'meat' | 'whole' | 'cooker'> {
  const likely = (id: MomentId) => moments.find((m) => m.id === id)?.likely
  const { trace } = cook.forecast
  const traceEnd = Math.min(to, later(cook.meatOn, seconds(trace.startS + trace.stepS * (trace.count - 1))))
  const slice = likely('first-slice')
  const meatEnd = slice ? Math.min(slice + 12 * MINUTE, traceEnd) : traceEnd
  const fireEnd = likely('off-heat') ?? traceEnd
  const fireLit = likely('fire-lit') ?? cook.meatOn
  const peak = likely('carryover-peak') ?? 0
  return {
    meat: thinned(quantileCurve(cook, trace.probeC, cook.meatOn, meatEnd)),
    whole: peak > meatEnd ? thinned(quantileCurve(cook, trace.probeC, meatEnd, peak)) : [],
    cooker: thinned(fireCurve(cook, moments, fireLit, fireEnd)),
  }
}

/**
 * The cooker's band, and in it the fire of the one cook whose moments come nearest the likely ones: a median over fires
 * that are opened at different times would show none that is ever opened.
 */
function fireCurve(cook: HeatLineCook, moments: readonly MomentFact[], from: number, to: number): CurvePoint[] {
  const { trace, members, moments: joint } = cook.forecast
  const miss = (m: number) =>
    moments.reduce((sum, { id, likely }) => {
      const own = joint[id]?.[m]
      return own === undefined || likely === null ? sum : sum + Math.abs(own - (likely - cook.meatOn) / 1000)
    }, 0)
  const misses = Array.from({ length: members }, (_, m) => miss(m))
  const typical = misses.indexOf(Math.min(...misses))
  const band = quantileCurve(cook, trace.cookerC, from, to, joint['off-heat'])
  const index = (sinceMeatOn: number) => Math.round((sinceMeatOn - trace.startS) / trace.stepS)
  const off = joint['off-heat']?.[typical] ?? Number.POSITIVE_INFINITY
  const done = Number.isFinite(off) ? index(off) : trace.count - 1
  return band.map((point) => {
    const i = Math.min(done, index((point.at - cook.meatOn) / 1000))
    return { ...point, likely: hundredth(trace.cookerC[typical * trace.count + i] ?? point.likely) }
  })
}

/** `until`, seconds after meat-on: a member keeps its value from then on (its fire is of no interest once the meat is off). */
function quantileCurve(
  { forecast, meatOn }: HeatLineCook,
  values: Float32Array,
  from: number,
  to: number,
  until?: Float64Array,
): CurvePoint[] {
  const { trace } = forecast
  const indexOf = (sinceMeatOn: number) => Math.round((sinceMeatOn - trace.startS) / trace.stepS)
  const first = Math.max(0, indexOf((from - meatOn) / 1000))
  const last = Math.min(trace.count - 1, indexOf((to - meatOn) / 1000))
  const stride = Math.max(1, Math.ceil((last - first) / MOST_POINTS))
  const column = new Float64Array(values.length / trace.count)
  const stops = until && Float64Array.from(until, (s) => (s < Infinity ? indexOf(s) : Infinity))
  const points: CurvePoint[] = []
  for (let i = first; i <= last; i += stride) {
    fillColumn(column, trace, values, i, stops)
    const at = (share: number) => hundredth(quantileOf(column, share))
    const when = later(meatOn, seconds(trace.startS + i * trace.stepS))
    points.push({ at: when, low: at(0.05), likely: at(0.5), high: at(0.95) })
  }
  return points
}

/** All members' values of one instant, in order of size. */
function fillColumn(column: Float64Array, { count }: Trace, values: Float32Array, i: number, stops?: Float64Array) {
  for (let m = 0; m < column.length; m++) column[m] = values[m * count + Math.min(i, stops?.[m] ?? i)] ?? Number.NaN
  column.sort()
}

/** Without the points that lie on the straight line from the last one kept to the next. */
export function thinned(points: readonly CurvePoint[]): CurvePoint[] {
  const kept = points.slice(0, 1)
  let since: CurvePoint[] = []
  for (const [i, point] of points.entries()) {
    const from = kept.at(-1)
    const next = points[i + 1]
    if (i === 0 || !from) continue
    since.push(point)
    if (next && since.length < 12 && since.every((mid) => onLine(from, mid, next))) continue
    kept.push(point)
    since = []
  }
  return kept
}
function onLine(a: CurvePoint, mid: CurvePoint, b: CurvePoint): boolean {
  const share = (mid.at - a.at) / (b.at - a.at)
  const off = (of: 'low' | 'likely' | 'high') => Math.abs(a[of] + (b[of] - a[of]) * share - mid[of])
  return off('low') < UNSEEN_C && off('likely') < UNSEEN_C && off('high') < UNSEEN_C
}
