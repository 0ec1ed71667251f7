import type { MomentId } from '../model/moment-ids'
import { quantileOf } from '../model/quantiles'
import type { Shoot, Shot } from '../plan/shoot'
import { type CallRule, chooseRule, ruleTimes } from './call-rule'
import type { CookTimes } from './cook-times'
import { type Crew, type Mode, modesFor } from './crew'
import { PRICES, RULES } from './rules'
import { type Sorted, safeLow, sorted } from './samples'

/** A shot at a moment, in minutes after its cook's meat-on; arrays by member. */
export interface MomentJob {
  readonly shot: Shot
  readonly cook: number
  readonly moment: MomentId
  readonly place: string
  readonly times: Float64Array
  readonly sorted: Sorted
  readonly likely: number
  readonly setup: number
  readonly before: number
  readonly after: number
  readonly weight: number
  readonly modes: readonly Mode[]
  /** Its own setup, or the longest of the chain that stands ready with it. */
  readonly standbySetup: number
  /** Ids of the shots at the same place that come so soon after that a fresh setup does not always fit between. */
  readonly chain: ReadonlySet<string>
  readonly rule: CallRule
  /** When a member calls for it, and when it lets go; both by member. */
  readonly called: Float64Array
  readonly released: Float64Array
}
export type Unfit = {
  readonly shot: Shot
  readonly reason: 'no-forecast' | 'never-comes' | 'nobody'
  readonly share: number
}
export type MomentJobs = { readonly jobs: readonly MomentJob[]; readonly unfit: readonly Unfit[] }

export const minutesOf = (time: number | undefined, otherwise: number) => (time === undefined ? otherwise : time / 60)
export const weightOf = (shot: Shot) => PRICES.weight[shot.priority ?? 'should']
export const handleMin = RULES.handleS / 60
/** A moment before the table is at the cooker, unless the shot says otherwise. */
const placeOf = (shot: Shot) => shot.place ?? 'cooker'

export function momentJobs(shoot: Shoot, crew: Crew, cooks: readonly CookTimes[]): MomentJobs {
  const jobs: Bare[] = []
  const unfit: Unfit[] = []
  for (const shot of shoot.shots ?? []) {
    if (!shot.at) continue
    const found = bareJob(shot, crew, cooks)
    if ('reason' in found) unfit.push(found)
    else jobs.push(found)
  }
  return { jobs: jobs.flatMap((job) => withCall(job, jobs, cooks)), unfit }
}

type Bare = Omit<MomentJob, 'standbySetup' | 'chain' | 'rule' | 'called' | 'released'>

function bareJob(shot: Shot, crew: Crew, cooks: readonly CookTimes[]): Bare | Unfit {
  const cook = shot.cook === undefined ? 0 : cooks.findIndex((c) => c.id === shot.cook)
  const at = shot.at as NonNullable<Shot['at']>
  const times = cooks[cook]?.at(at.moment)
  if (!times) return { shot, reason: 'no-forecast', share: 0 }
  const inOrder = sorted(times)
  const likely = quantileOf(inOrder, 0.5)
  const reached = times.filter((t) => Number.isFinite(t)).length / times.length
  if (!Number.isFinite(likely)) return { shot, reason: 'never-comes', share: reached }
  const modes = modesFor(crew, shot)
  if (modes.length === 0) return { shot, reason: 'nobody', share: 0 }
  return {
    shot,
    cook,
    moment: at.moment,
    place: placeOf(shot),
    times,
    sorted: inOrder,
    likely,
    setup: minutesOf(shot.setup, RULES.setupMin),
    before: minutesOf(at.before, RULES.beforeMin),
    after: minutesOf(at.after, RULES.afterMin),
    weight: weightOf(shot),
    modes,
  }
}

function withCall(job: Bare, all: readonly Bare[], cooks: readonly CookTimes[]): MomentJob[] {
  const followers = all.filter((other) => other !== job && chainFollows(job, other))
  const standbySetup = Math.max(job.setup, ...followers.map((f) => f.setup))
  const cook = cooks[job.cook] as CookTimes
  const lead = { release: RULES.releaseMin, setup: standbySetup, before: job.before + handleMin }
  const rule = chooseRule(cook, job.moment, lead)
  if (!rule) return []
  const released = job.times.map((t) => t + job.after + handleMin)
  const chain = new Set(followers.map((f) => f.shot.id))
  return [{ ...job, standbySetup, chain, rule, called: ruleTimes(cook, rule), released }]
}

function chainFollows(first: Bare, next: Bare): boolean {
  if (first.cook !== next.cook || first.place !== next.place || first.likely > next.likely) return false
  const gaps = first.times.map((t, m) => (next.times[m] as number) - next.before - (t + first.after) - 2 * handleMin)
  return (
    safeLow(sorted(gaps.map((g) => (Number.isNaN(g) ? Number.POSITIVE_INFINITY : g))), RULES.missShare) < next.setup
  )
}
