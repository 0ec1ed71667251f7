import { asServed } from '../day/slice-wait'
import type { DayState } from '../log/day-state'
import { type Assimilated, assimilate, type Fit } from '../model/assimilate'
import type { CookPlan, LidOpening } from '../model/cook'
import type { Forecast } from '../model/forecast'
import { forecastCook, type Prepared, prepared } from '../model/forecast-cook'
import { cookAllBy, type KernelName } from '../model/kernels'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { quantileOf, sortedCopy } from '../model/quantiles'
import { watchInput } from '../model/read-summary'
import { type Watched, watchReadings } from '../model/reading-watch'
import type { Mark } from '../model/readings'
import { toIso } from '../plan/clock'
import { toCookPlan } from '../plan/cook-plan'
import type { Cook, Shoot } from '../plan/shoot'
import { type Instant, later, type Seconds, seconds } from '../units'
import { asDone, type ObservedCook, observedCook } from './observed-cook'
import { type Expected, Z } from './session'

/** Enough for middle and early end, and quick; a plan is told with more. */
export const LIVE_MEMBERS = 64

/** A plan that is rehearsed on another day has its times as long after meat-on. */
const ANOTHER_DAY_MS = 12 * 3_600_000

export interface CookInput {
  readonly shoot: Shoot
  readonly cook: Cook
  readonly planned: Instant
  readonly lids: readonly LidOpening[]
  readonly told: DayState
  readonly now: Instant
  readonly kernel: KernelName
}
/** What makes the next forecast of a cook quick. */
export interface KeptCook {
  readonly key: string
  readonly plan: Forecast
  /** Of the plan as it was done so far. */
  readonly done: { readonly key: string; readonly of: Prepared } | undefined
  readonly last: Fit | undefined
}
/** A cook as it stands: its forecast, the plan's, and what the readings did to it. */
export interface CookNow {
  readonly cook: Cook
  readonly planned: Instant
  readonly seen: ObservedCook
  readonly plan: Forecast
  readonly forecast: Forecast
  readonly given: Assimilated | undefined
  readonly watched: readonly Watched[]
  readonly expected: readonly Expected[]
}

export function cookNow(input: CookInput, kept: KeptCook | undefined): { now: CookNow; kept: KeptCook } {
  const { shoot, cook, told, now, planned, lids, kernel } = input
  const options = { seed: shoot.seed ?? 1, members: LIVE_MEMBERS, kernel }
  const asPlanned = toCookPlan(shoot, cook, lids)
  const key = JSON.stringify([asPlanned, options])
  const known = kept?.key === key ? kept : undefined
  const plan = known?.plan ?? forecastCook(asPlanned, options)
  const seen = observedCook(told, cook.id, planned, now)
  const observed = { readings: seen.readings, marks: withProbeIn(seen, plan), nowS: (now - seen.meatOn) / 1000 }
  const done = seen.begun ? preparedAs(asDone(asPlanned, seen, now), known?.done, options) : undefined
  const given =
    done && assimilate(done.plan, observed, { ...options, last: known?.last, of: done.of, endsAtSlice: true })
  const forecast = asServed(
    shoot,
    cook.id,
    given ? withPeak(given.forecast, plan) : plan,
    toIso(seen.meatOn, shoot.zone),
  )
  const pastS = given?.pastS ?? Object.fromEntries(seen.marks.map(({ moment, t }) => [moment, t]))
  return {
    now: {
      cook,
      planned: Math.abs(seen.meatOn - planned) < ANOTHER_DAY_MS ? planned : seen.meatOn,
      seen,
      plan,
      forecast,
      given,
      watched: given ? watchReadings(watchInput(plan, given, observed)) : [],
      expected: expectedOf(cook.id, forecast, seen.meatOn, pastS),
    },
    kept: { key, plan, done, last: given?.fit ?? known?.last },
  }
}

/** A probe that reads before the plan puts it in is in, whether somebody marked it or not. */
function withProbeIn({ readings, marks }: ObservedCook, { moments }: Forecast): readonly Mark[] {
  const [first, planned] = [readings.find(({ sensor }) => sensor === 'core'), moments['probe-in']]
  if (!first || !planned || marks.some(({ moment }) => moment === 'probe-in')) return marks
  return first.t < quantileOf(sortedCopy(planned), 0.5) ? [...marks, { moment: 'probe-in', t: first.t }] : marks
}

/** What a fire that is fed, or a lid that is lifted, leaves as it was need not be prepared anew. */
function preparedAs(plan: CookPlan, known: KeptCook['done'], { seed, kernel }: { seed: number; kernel: KernelName }) {
  const key = JSON.stringify(plan)
  return { key, plan, of: known?.key === key ? known.of : prepared(plan, seed, cookAllBy(kernel)) }
}

/** A live cook is followed to its slice; its peak comes as long after off-heat as the plan's. */
function withPeak(forecast: Forecast, plan: Forecast): Forecast {
  const [off, peak, offNow] = [plan.moments['off-heat'], plan.moments['carryover-peak'], forecast.moments['off-heat']]
  if (!off || !peak || !offNow) return forecast
  const afterS = quantileOf(sortedCopy(peak.map((t, m) => t - (off[m] as number)).filter(Number.isFinite)), 0.5)
  const moments = { ...forecast.moments, 'carryover-peak': offNow.map((t) => t + afterS) }
  return Object.create(forecast, { moments: { value: moments, enumerable: true } }) as Forecast
}

const EARLY = 0.05
/** The middle of each moment, with the spread that has its early end where the members have it. */
function expectedOf(
  cook: string,
  { moments }: Forecast,
  meatOn: Instant,
  pastS: Readonly<Partial<Record<MomentId, number>>>,
): Expected[] {
  const at = (s: number) => later(meatOn, seconds(Math.round(s)))
  return MOMENT_IDS.flatMap((moment): Expected[] => {
    const [row, past] = [moments[moment], pastS[moment]]
    if (row === undefined) return []
    if (past !== undefined) return [{ cook, moment, likely: at(past), sd: seconds(0) }]
    const sorted = sortedCopy(row)
    const likely = quantileOf(sorted, 0.5)
    if (!Number.isFinite(likely)) return []
    const sd = Math.round(Math.max(0, likely - quantileOf(sorted, EARLY)) / Z)
    return [{ cook, moment, likely: at(likely), sd: seconds(sd) }]
  })
}

/** When a moment was likely by the plan alone. */
export function plannedAt({ plan, planned }: CookNow, moment: MomentId): Instant | null {
  const row = plan.moments[moment]
  const likely = row ? quantileOf(sortedCopy(row), 0.5) : Infinity
  return Number.isFinite(likely) ? later(planned, likely as Seconds) : null
}
