/** The fire before the meat goes on. */
import type { CookPlan } from './cook'
import { type CookerHabits, STEADY_FOR_S, steadyAfterS } from './cooker'
import type { Course } from './course'
import { habitsOf } from './memory-prior'
import { type Member, warmUpLeadS } from './spread'

/** When it was lit, and how long after that it was steady, s. */
export interface Fire {
  readonly litS: number
  readonly steadyAfterS: number
  readonly warmUpS: number
}
/**
 * Lit early enough for 95 % of fires, so in most members it stands ready for a while; a slower one is lit just in time.
 * A cold oven is switched on as the meat goes in.
 */
export function fireIn(habits: CookerHabits, airC: number, course: Course, { warmUpS }: Member): Fire {
  const steady = steadyAfterS(airC, course.preheatC, warmUpS)
  const leadS = warmUpLeadS(habits, STEADY_FOR_S)
  return { litS: course.cold ? 0 : -Math.max(leadS, steady + STEADY_FOR_S), steadyAfterS: steady, warmUpS }
}
export const fireOf = (plan: CookPlan, course: Course, member: Member): Fire =>
  fireIn(habitsOf(plan.cooker), plan.surroundings.air, course, member)
