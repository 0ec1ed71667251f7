import type { LidOpenings } from '../day/lid-openings'
import type { Forecast } from '../model/forecast'
import { forecastCook } from '../model/forecast-cook'
import { toCookPlan } from '../plan/cook-plan'
import type { Shoot } from '../plan/shoot'

/** Every cook's forecast, the lid being off for shots when the layout has it off. */
export const forecastWith =
  ({ seed, members }: { readonly seed: number; readonly members?: number | undefined }) =>
  (shoot: Shoot, openings: LidOpenings): ReadonlyMap<string, Forecast> =>
    new Map(
      shoot.cooks.map((cook) => [
        cook.id,
        forecastCook(toCookPlan(shoot, cook, openings[cook.id]), {
          seed,
          ...(members === undefined ? {} : { members }),
        }),
      ]),
    )
