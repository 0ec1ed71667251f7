import type { LidOpenings } from '@/lib/day/lid-openings'
import { cookFacts } from '@/lib/log/cook-facts'
import type { DayState } from '@/lib/log/day-state'
import { type LoggedReading, marksOf, readingsOf } from '@/lib/log/for-forecast'
import type { CookPlan } from '@/lib/model/cook'
import type { CookerMemory } from '@/lib/model/cooker-memory'
import type { Forecast } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { type CookerLesson, combineLessons, rememberCook } from '@/lib/model/memory'
import { windowOf } from '@/lib/model/quantiles'
import { type Narrowings, whatNarrows } from '@/lib/model/what-narrows'
import { toCookPlan } from '@/lib/plan/cook-plan'
import type { Cook, Shoot } from '@/lib/plan/shoot'
import { asDone, type ObservedCook, observedCook } from '@/lib/session/observed-cook'
import { type Instant, later, type Seconds, seconds } from '@/lib/units'
import type { Morning } from '@/lib/wrap/told'
import { type Why, whyOf } from '@/lib/wrap/why'
import { seedOf } from '../worked-out'

export interface WhyAsked {
  readonly shoot: Shoot
  readonly lids: LidOpenings
  readonly day: DayState
  readonly morning: Morning
  /** When the last line was logged. */
  readonly ended: Instant
  readonly shootId: string
  /** By cook, what earlier cooks taught of its cooker. */
  readonly earlier: Readonly<Record<string, readonly CookerLesson[]>>
}
export interface CookWhy {
  readonly why: Why | null
  /** With the seconds after meat-on that what to do next time asks of. */
  readonly readings: readonly LoggedReading[]
  readonly narrows: Narrowings | null
  readonly taught: CookerTaught | null
}
export type WhyTold = Readonly<Record<string, CookWhy>>
/** What the cook taught of its cooker, and how wide the slice's window is before lighting with what earlier cooks taught. */
export interface CookerTaught {
  readonly lesson: CookerLesson
  /** With none, then with each cook more, this one last; s. */
  readonly widths: readonly { readonly cooks: number; readonly widthS: Seconds }[]
  readonly memory: CookerMemory
}

/** One plan is cooked half a dozen times, always by the same members: what moves is what was changed. */
const MEMBERS = 96
const MOST_BARS = 4

/** Why each cook ended when it did, what measuring would have told before, and what it taught. It takes seconds. */
export const wrapWhy = (asked: WhyAsked): WhyTold =>
  Object.fromEntries(asked.shoot.cooks.map((cook) => [cook.id, whyOfCook(asked, cook)]))

function whyOfCook(asked: WhyAsked, cook: Cook): CookWhy {
  const { shoot, lids, day, morning, ended } = asked
  const facts = cookFacts(day, cook.id)
  if (!facts) return { why: null, readings: [], narrows: null, taught: null }
  const planned = morning[cook.id]?.['meat-on']?.likely ?? facts.meatOn
  // A probe that is put back after the sear stands in another place: what it read before the pull is what tells.
  const pulled = facts.at.pull ?? facts.at['off-heat']
  const until = pulled === undefined ? ended : later(facts.meatOn, pulled)
  const seen = observedCook(day, cook.id, planned, until)
  const options = { seed: seedOf(shoot), members: MEMBERS, kernel: fastestKernel() }
  const plan = toCookPlan(shoot, cook, lids[cook.id])
  let first: Forecast | undefined
  const cooked = (changed: CookPlan) => {
    const forecast = forecastCook(changed, options)
    first ??= forecast
    return forecast
  }
  const why = whyOf({
    plan,
    morning: morning[cook.id] ?? {},
    happened: Object.fromEntries(marksOf(day, cook.id).map(({ moment, t }) => [moment, later(facts.meatOn, t)])),
    readings: seen.readings,
    lids: seen.lids.length === 0 ? [] : [...plan.lidOpenings.filter(({ at }) => at <= 0), ...seen.lids],
    pulledAt: facts.probeC.pull ?? null,
    cook: cooked,
  })
  return {
    why,
    readings: readingsOf(day, cook.id, facts.meatOn),
    narrows: (first && whatNarrows(first)) ?? null,
    taught: taughtBy(asked, cook, { done: asDone(plan, seen, until), seen, until }),
  }
}

interface Done {
  readonly done: CookPlan
  readonly seen: ObservedCook
  readonly until: Instant
}
/** The lesson of one cook, given nothing of any other; null where the probe told nothing. */
function taughtBy(asked: WhyAsked, cook: Cook, { done, seen, until }: Done): CookerTaught | null {
  const { shoot, earlier } = asked
  const kernel = fastestKernel()
  const seed = seedOf(shoot)
  const observed = { readings: seen.readings, marks: seen.marks, nowS: (until - seen.meatOn) / 1000 }
  const name = { cook: lessonName(asked.shootId, cook.id), date: shoot.date }
  const lesson = rememberCook(done, observed, { ...name, seed, kernel })
  if (!lesson) return null
  const all = [...(earlier[cook.id] ?? []), lesson]
  const plain = toCookPlan(shoot, cook)
  const from = Math.max(1, all.length - MOST_BARS + 2)
  const counts = [0, ...Array.from({ length: all.length - from + 1 }, (_, i) => from + i)]
  const widths = counts.map((cooks) => ({ cooks, widthS: sliceWidthS(plain, all.slice(0, cooks), seed) }))
  return { lesson, widths, memory: combineLessons(all) as CookerMemory }
}
export const lessonName = (shootId: string, cook: string) => `${shootId}/${cook}`

function sliceWidthS(plan: CookPlan, lessons: readonly CookerLesson[], seed: number): Seconds {
  const memory = combineLessons(lessons)
  const { memory: _, ...cooker } = plan.cooker
  const known = { ...plan, cooker: memory ? { ...cooker, memory } : cooker }
  const { moments } = forecastCook(known, { seed, members: MEMBERS, kernel: fastestKernel() })
  const { early, late } = windowOf(moments['first-slice'] ?? Float64Array.of(Infinity))
  return seconds(early === null || late === null ? Number.NaN : late - early)
}
