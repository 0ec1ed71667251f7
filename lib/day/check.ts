import type { Shoot } from '../plan/shoot'
import { checkBookings } from './check/bookings'
import { checkCalls } from './check/calls'
import { checkCapture } from './check/capture'
import { checkCrewDay } from './check/crew-day'
import { gatherFacts } from './check/facts'
import { checkFire } from './check/fire'
import { checkFood } from './check/food'
import { checkHours } from './check/hours'
import { checkMoments } from './check/moments'
import { checkPlacement } from './check/placement'
import { checkReadyCooks } from './check/ready'
import { checkPromises } from './check/replay'
import { checkRoster } from './check/roster'
import { checkSides } from './check/sides'
import { checkTimes } from './check/times'
import type { Violation } from './check/violation'
import type { DayForecast } from './day-forecast'
import type { Layout } from './layout'

export { RULES, type Rule, type Violation } from './check/violation'

/**
 * Every rule a layout breaks, by name; none for a day that can be worked as it stands.
 * Shares the plan's schema and the layout's shape with the scheduler and works out all else by itself. Without forecasts
 * the windows the calls state are believed, and what needs single members is left out.
 */
export function checkLayout(
  shoot: Shoot,
  layout: Layout,
  forecasts: ReadonlyMap<string, DayForecast> = new Map(),
): Violation[] {
  const facts = gatherFacts(shoot, layout, forecasts)
  return [
    checkTimes,
    checkRoster,
    checkBookings,
    checkPlacement,
    checkFood,
    checkMoments,
    checkCalls,
    checkCrewDay,
    checkReadyCooks,
    checkHours,
    checkFire,
    checkSides,
    checkCapture,
    checkPromises,
  ].flatMap((family) => family(facts))
}
