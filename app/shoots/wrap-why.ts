import type { LidOpenings } from '@/lib/day/lid-openings'
import { cookFacts } from '@/lib/log/cook-facts'
import type { DayState } from '@/lib/log/day-state'
import { marksOf } from '@/lib/log/for-forecast'
import type { Forecast } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { type Narrowings, whatNarrows } from '@/lib/model/what-narrows'
import { toCookPlan } from '@/lib/plan/cook-plan'
import type { Cook, Shoot } from '@/lib/plan/shoot'
import { observedCook } from '@/lib/session/observed-cook'
import { type Instant, later } from '@/lib/units'
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
}
export interface CookWhy {
  readonly why: Why | null
  readonly narrows: Narrowings | null
}

/** One plan is cooked half a dozen times, always by the same members: what moves is what was changed. */
const MEMBERS = 96

/** Why each cook ended when it did, and what measuring would have told before. It takes seconds. */
export const wrapWhy = (asked: WhyAsked): Readonly<Record<string, CookWhy>> =>
  Object.fromEntries(asked.shoot.cooks.map((cook) => [cook.id, whyOfCook(asked, cook)]))

function whyOfCook({ shoot, lids, day, morning, ended }: WhyAsked, cook: Cook): CookWhy {
  const facts = cookFacts(day, cook.id)
  if (!facts) return { why: null, narrows: null }
  const planned = morning[cook.id]?.['meat-on']?.likely ?? facts.meatOn
  const seen = observedCook(day, cook.id, planned, ended)
  const options = { seed: seedOf(shoot), members: MEMBERS, kernel: fastestKernel() }
  const plan = toCookPlan(shoot, cook, lids[cook.id])
  let first: Forecast | undefined
  const cooked = (changed: typeof plan) => {
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
  return { why, narrows: (first && whatNarrows(first)) ?? null }
}
