import { type OwnPlan, ownPlan } from '@/lib/card/own-plan'
import type { CardBasis, Filled } from '@/lib/card/own-wish'
import type { CookPlan } from '@/lib/model/cook'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import type { Result } from '@/lib/refusals'
import { remembered } from '../remembered'

/** Another time to serve at asks for the same forecasts. */
const KEPT = 12
const forecastEach = remembered(KEPT, (plan: CookPlan, seed: number) =>
  forecastCook(plan, { seed, kernel: fastestKernel() }),
)

export const answerOwn = (basis: CardBasis, filled: Filled): Result<OwnPlan> =>
  ownPlan(basis, filled, (plan) => forecastEach(plan, basis.shoot.seed ?? 1))
