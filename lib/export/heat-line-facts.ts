import type { Layout } from '../day/layout'
import { lightBands, type Place, sunAltitude } from '../day/sun'
import type { Stage } from '../model/cook'
import type { Forecast, Trace } from '../model/forecast'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { spreadOf, windowOf } from '../model/quantiles'
import { fromIso } from '../plan/clock'
import { momentName } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { type Celsius, celsius, formatTemp, type Instant, instant, later, seconds, type UnitSystem } from '../units'

export interface HeatLineCook {
  readonly forecast: Forecast
  readonly meatOn: Instant
  readonly title: string
}
export interface HeatLineInput {
  readonly zone: string
  readonly place: Place
  /** One sentence that says what the picture says; read aloud in its stead. */
  readonly title: string
  /** Written into the empty upper left, or above the picture where flags stand there. */
  readonly say?: { readonly main: string; readonly why: readonly string[] }
  /** The first is drawn in full, the others as one line each. */
  readonly cooks: readonly HeatLineCook[]
  readonly shoot?: Shoot
  readonly layout?: Layout
  /** The food-safety authority's minimum, drawn dotted right across. */
  readonly minimum?: { readonly at: Celsius; readonly words: string }
  readonly from?: Instant
  readonly to?: Instant
  readonly width: number
  readonly units: UnitSystem
  readonly lanes: boolean
  /** Time runs down, for a phone. */
  readonly standing: boolean
  /** Low panels, for the call sheet, where a table with the windows stands beside. */
  readonly compact?: boolean
}

export interface MomentFact {
  readonly id: MomentId
  readonly name: string
  readonly early: Instant | null
  readonly likely: Instant | null
  readonly late: Instant | null
  readonly reached: number
}
export interface CurvePoint {
  readonly at: Instant
  readonly low: number
  readonly likely: number
  readonly high: number
}
export type LightPart = {
  readonly light: 'golden' | 'twilight' | 'dark'
  readonly name: string
  readonly start: Instant
  readonly end: Instant
}
export interface HeatFacts {
  readonly from: Instant
  readonly to: Instant
  /** Those that likely come, by time. */
  readonly moments: readonly MomentFact[]
  /** Those that do not come in at least half of the cooks. */
  readonly never: readonly MomentFact[]
  /** What the probe reads, °C, from meat-on to just after the slice. */
  readonly meat: readonly CurvePoint[]
  /** What it would read from there to the carryover peak, were the roast left whole. */
  readonly whole: readonly CurvePoint[]
  readonly cooker: readonly CurvePoint[]
  readonly targets: readonly { readonly at: Celsius; readonly words: string }[]
  readonly roastAt: Celsius
  readonly searAt: Celsius | null
  readonly sliced: { readonly low: number; readonly likely: number; readonly high: number }
  readonly sun: readonly { readonly at: Instant; readonly deg: number }[]
  readonly light: readonly LightPart[]
}

const MINUTE = 60_000

export function heatFacts(input: HeatLineInput, cook: HeatLineCook): HeatFacts {
  const all = momentFacts(cook)
  const moments = all.filter((m) => m.likely !== null).sort((a, b) => Number(a.likely) - Number(b.likely))
  const { from, to } = span(input, moments)
  const stages = cook.forecast.cook.stages
  return {
    from,
    to,
    moments,
    never: all.filter((m) => m.likely === null),
    ...curves(cook, moments, to),
    targets: targets(stages, input.units),
    roastAt: stages.find((s) => s.do === 'roast')?.at ?? celsius(150),
    searAt: stages.find((s) => s.do === 'sear')?.at ?? null,
    sliced: spreadOf(cook.forecast.atSlice.probeC),
    ...daylight(input.place, from, to),
  }
}

/** The sun and the parts of the light in a span. */
export const daylight = (place: Place, from: Instant, to: Instant): Pick<HeatFacts, 'sun' | 'light'> => ({
  sun: samples(from, to, 10 * MINUTE).map((at) => ({ at, deg: sunAltitude(at, place) })),
  light: lightParts(place, from, to),
})

export function momentFacts({ forecast, meatOn }: HeatLineCook): MomentFact[] {
  const at = (s: number | null) => (s === null ? null : later(meatOn, seconds(s)))
  return MOMENT_IDS.flatMap((id) => {
    const members = forecast.moments[id]
    if (!members) return []
    const { early, likely, late, reached } = windowOf(members)
    const name = momentName(id, forecast.cook.cooker.kind)
    return [{ id, name, early: at(early), likely: at(likely), late: at(late), reached }]
  })
}

/**
 * From 20 min before the first call to 25 min after wrap; dark is let in where it is near. Where no crew is shown, from
 * the first moment to the last: the peak's late end, long after the slice, is let run out of the picture.
 */
function span(input: HeatLineInput, moments: readonly MomentFact[]): { from: Instant; to: Instant } {
  const crew = input.lanes || input.standing ? input.layout : undefined
  const call = crew ? fromIso(crew.crewCall) : Number.POSITIVE_INFINITY
  const wrap = crew ? fromIso(crew.wrap) : 0
  const first = Math.min(call, ...moments.map((m) => m.early ?? m.likely ?? Number.POSITIVE_INFINITY))
  const last = Math.max(wrap, ...moments.map((m) => (m.id === 'carryover-peak' ? m.likely : m.late) ?? m.likely ?? 0))
  const dark = lightBands(input.place, instant(last - 60 * MINUTE), instant(last + 90 * MINUTE)).find(
    (band) => band.light === 'night' && band.start > last - 59 * MINUTE,
  )
  const end = Math.max(last, dark?.start ?? 0)
  const whole = (ms: number) => instant(Math.round(ms / MINUTE) * MINUTE)
  return { from: input.from ?? whole(first - 20 * MINUTE), to: input.to ?? whole(end + 25 * MINUTE) }
}

function samples(from: Instant, to: Instant, every: number): Instant[] {
  const n = Math.ceil((to - from) / every)
  return Array.from({ length: n + 1 }, (_, i) => instant(Math.min(from + i * every, to)))
}

/** Quantiles over the members, at most some 200 instants; both curves end soon after the likely slice. */
function curves(
  cook: HeatLineCook,
  moments: readonly MomentFact[],
  to: Instant,
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
    meat: quantileCurve(cook, trace.probeC, cook.meatOn, meatEnd),
    whole: peak > meatEnd ? quantileCurve(cook, trace.probeC, meatEnd, peak) : [],
    cooker: fireCurve(cook, moments, fireLit, fireEnd),
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
  const typical = Array.from({ length: members }, (_, m) => m).reduce((best, m) => (miss(m) < miss(best) ? m : best), 0)
  const band = quantileCurve(cook, trace.cookerC, from, to, joint['off-heat'])
  return band.map((point) => {
    const i = Math.round(((point.at - cook.meatOn) / 1000 - trace.startS) / trace.stepS)
    return { ...point, likely: trace.cookerC[typical * trace.count + i] ?? point.likely }
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
  const stride = Math.max(1, Math.ceil((last - first) / 200))
  const points: CurvePoint[] = []
  for (let i = first; i <= last; i += stride) {
    const at = later(meatOn, seconds(trace.startS + i * trace.stepS))
    points.push({
      at,
      ...spreadOf(columnOf(trace, values, (m) => Math.min(i, indexOf(until?.[m] ?? Number.POSITIVE_INFINITY)))),
    })
  }
  return points
}

function columnOf(trace: Trace, values: Float32Array, indexIn: (member: number) => number): Float64Array {
  return Float64Array.from(
    { length: values.length / trace.count },
    (_, m) => values[m * trace.count + indexIn(m)] ?? Number.NaN,
  )
}

function targets(stages: readonly Stage[], units: UnitSystem): HeatFacts['targets'] {
  const word = { roast: 'pull', sear: 'off the heat' }
  const seared = stages.some((s) => s.do === 'sear')
  return stages.flatMap((stage) => {
    if ((stage.do !== 'roast' && stage.do !== 'sear') || !('core' in stage.until)) return []
    const name = stage.do === 'roast' && !seared ? 'pull, off the heat' : word[stage.do]
    return [{ at: stage.until.core, words: `${formatTemp(stage.until.core, units)} ${name}` }]
  })
}

/** Golden hour while the sun is under 6°, twilight to −6°, dark. */
export function lightParts(place: Place, from: Instant, to: Instant): LightPart[] {
  const bands = lightBands(place, from, to)
  const days = bands.filter((b) => b.light === 'daylight')
  return bands.flatMap((band): LightPart[] => {
    const { light, start, end } = band
    if (light === 'twilight') {
      const evening = sunAltitude(start, place) > sunAltitude(end, place)
      return [{ light, name: evening ? 'sunset' : 'first light', start, end }]
    }
    if (light === 'night') return [{ light: 'dark', name: 'dark', start, end }]
    const day = days.find((d) => d.start < end && start < d.end)
    if (light === 'daylight' || !day) return []
    const name = light === 'golden-hour' ? 'golden hour' : 'sunrise'
    const inDay = { start: instant(Math.max(start, day.start)), end: instant(Math.min(end, day.end)) }
    return [{ light: 'golden', name, ...inDay }]
  })
}
