import { quantileOf } from '../model/quantiles'
import type { Shoot } from '../plan/shoot'
import type { Chance } from './backward-curve'
import type { CookTimes } from './cook-times'
import type { DayClock } from './day-clock'
import { handleMin, type MomentJob } from './moment-job'
import { leadForReady, readyMeatOn } from './ready-cooks'
import { PRICES, RULES } from './rules'
import { safeLow, shareBelow } from './samples'
import { lightSpans } from './shot-window'

export interface MeatOnChoices {
  /** For each cook the minutes its meat may go on, ascending. */
  readonly choices: readonly (readonly number[])[]
  /** Share of members whose first slice falls in the wanted light, beside each choice of the first cook; else empty. */
  readonly inLight: readonly number[]
  /** What each choice of the first cook costs beside the wish; empty where nothing is wished, or it cannot be had. */
  readonly wish: readonly number[]
  /** The wanted slice cannot be had: the call is too late for it. */
  readonly sliceTooSoon: boolean
}
interface Context {
  readonly shoot: Shoot
  readonly clock: DayClock
  readonly cooks: readonly CookTimes[]
  readonly moments: readonly MomentJob[]
  readonly call: number | null
  /** The latest a shot may end. */
  readonly lastEnd: number | null
  /** The meat-on of the first cook that a chosen chance asks for. */
  readonly chosen: Chance | null
}
const FORWARD_MIN = 240
/** A slice in the light may give away so much of its chance if the day gains by it. */
const LIGHT_SLACK = 0.02

export function meatOnChoices(context: Context): MeatOnChoices {
  const first = firstCook(context)
  const hero = first.choices[first.inLight.length > 0 ? first.inLight.length >> 1 : 0] ?? 0
  const others = context.cooks.slice(1).map((_, i) => otherCook(context, i + 1, hero, Math.min(...first.choices)))
  return { ...first, choices: [first.choices, ...others] }
}

/** The soonest that the fire is lit and the first shot set up after the call. */
export function soonestMeatOn(
  { cooks, moments }: Pick<Context, 'cooks' | 'moments'>,
  cook: number,
  call: number,
): number {
  const fire = cooks[cook]?.sorted('fire-lit')
  const leads = moments
    .filter((job) => job.cook === cook)
    .map((job) => job.before + job.standbySetup + RULES.clockMarginMin + 1 - safeLow(job.sorted, RULES.missShare))
  return Math.ceil(call + Math.max(0, fire ? -safeLow(fire, RULES.missShare) : 0, ...leads))
}
/** The first cook waits for those that are made ready for it. */
function soonestWithOthers(context: Context, call: number): number {
  const leads = context.cooks.map((_, cook) => {
    const lead = cook === 0 ? null : leadForReady(context, cook)
    return lead !== null && Number.isFinite(lead) ? soonestMeatOn(context, cook, call) + lead : Number.NEGATIVE_INFINITY
  })
  return Math.ceil(Math.max(soonestMeatOn(context, 0, call), ...leads))
}
const ahead = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i)

function firstCook(context: Context): Omit<MeatOnChoices, 'choices'> & { choices: number[] } {
  const { shoot, clock, call, chosen } = context
  const slice = shoot.day?.slice
  if (slice && chosen)
    return {
      choices: [chosen.minute],
      inLight: 'in' in slice ? [chosen.chance] : [],
      wish: [0],
      sliceTooSoon: false,
    }
  const soonest = call === null ? Number.NEGATIVE_INFINITY : soonestWithOthers(context, call)
  const wanted =
    slice && ('at' in slice ? sliceAt(context, clock.fromClock(slice.at)) : sliceIn(context, slice.in, soonest))
  if (!wanted || wanted.choices.length === 0)
    return {
      choices: ahead(call === null ? clock.fromClock(RULES.call) : soonest, FORWARD_MIN),
      inLight: [],
      wish: [],
      sliceTooSoon: false,
    }
  if ((wanted.choices.at(-1) as number) < soonest)
    return { choices: ahead(soonest, FORWARD_MIN), inLight: [], wish: [], sliceTooSoon: true }
  const best = Math.max(0, ...wanted.inLight)
  const wish = wanted.choices.map((_, i) => (best - (wanted.inLight[i] ?? best)) * PRICES.sliceOutOfLight)
  const sooner = soonerForMusts(context, wanted.choices, soonest)
  return {
    choices: [...sooner, ...wanted.choices],
    inLight: wanted.inLight.length > 0 ? [...sooner.map(() => 0), ...wanted.inLight] : [],
    wish: [...sooner.map(() => PRICES.wishMissed), ...wish],
    sliceTooSoon: false,
  }
}
type Wanted = { readonly choices: number[]; readonly inLight: readonly number[] }

const MOST_SOONER = 60
/** Where the wish leaves a must at a moment no time before the wrap: the latest minutes that do. A must outranks a wish. */
function soonerForMusts({ moments, lastEnd }: Context, wished: readonly number[], soonest: number): number[] {
  if (lastEnd === null) return []
  const musts = moments.filter((job) => job.cook === 0 && job.shot.priority === 'must')
  const ends = musts.map((job) => job.likely + job.after + handleMin)
  const first = wished[0] as number
  // A must that ends too late even for the soonest meat-on is lost either way.
  const inReach = ends.filter((end) => Number.isFinite(end) && Math.max(soonest, 0) + end <= lastEnd)
  const latest = Math.floor(Math.min(...inReach.map((end) => lastEnd - end)))
  if (latest >= first || !Number.isFinite(latest)) return []
  const from = Math.ceil(Math.max(soonest, latest - MOST_SOONER, 0))
  return ahead(from, Math.max(0, latest - from + 1))
}

function sliceAt({ cooks }: Context, at: number): Wanted | undefined {
  const times = cooks[0]?.sorted('first-slice')
  const likely = times ? likelyOf(times) : Number.POSITIVE_INFINITY
  return Number.isFinite(likely) ? { choices: [Math.round(at - likely)], inLight: [] } : undefined
}
const likelyOf = (times: Float64Array) => quantileOf(times, 0.5)

/** Every minute whose chance is within reach of the best. */
function sliceIn(context: Context, light: string, soonest: number): Wanted | undefined {
  const times = context.cooks[0]?.sorted('first-slice')
  const spans = lightSpans(context, light).filter(
    (s) => s.end > dayStart(context) && s.start < dayStart(context) + 1440,
  )
  if (!times || spans.length === 0) return undefined
  const from = Math.ceil(Math.max(soonest, 0))
  const chances = ahead(from, 3 * 1440).map((minute) =>
    spans.reduce((sum, s) => sum + shareBelow(times, s.end - minute) - shareBelow(times, s.start - minute), 0),
  )
  const best = Math.max(...chances)
  if (best <= 0) return undefined
  const kept = chances.flatMap((chance, i) => (chance >= best - LIGHT_SLACK ? [i] : []))
  return { choices: kept.map((i) => from + i), inLight: kept.map((i) => chances[i] as number) }
}
/** The light of the shoot's own day: after the call, or after its first minute. */
const dayStart = ({ call, clock }: Context) => call ?? clock.fromClock('00:00')

/** How much sooner than it must a cook may be made ready. */
const READY_EARLY_MIN = 5
/** A further cook goes on when it is due, else when it suits the day: after the call, or about when the first one does. */
function otherCook(context: Context, cook: number, hero: number, heroSoonest: number): number[] {
  const due = readyMeatOn(context, cook, heroSoonest)
  const soonest = context.call === null ? Number.NEGATIVE_INFINITY : soonestMeatOn(context, cook, context.call)
  if (due !== null) {
    const from = Math.max(due - READY_EARLY_MIN, soonest)
    return ahead(from, Math.max(1, due - from + 1))
  }
  if (context.call !== null) return ahead(soonest, 2 * FORWARD_MIN)
  const slice = context.cooks[0]?.sorted('first-slice')
  const own = context.cooks[cook]?.sorted('first-slice')
  const apart = slice && own ? likelyOf(slice) - likelyOf(own) : 0
  return ahead(Math.round(hero + (Number.isFinite(apart) ? apart : 0)) - FORWARD_MIN, 2 * FORWARD_MIN)
}
