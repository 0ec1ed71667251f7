/** The least oven temperatures that go with the minimums, and whether a plan's cooker keeps them. */
import { type Celsius, celsius, fromFahrenheit } from '../units'
import type { CookPlan } from './cook'
import type { SourceId } from './sources'

export type OvenType = 'still-dry' | 'convection' | 'high-humidity'
/** [fda-food-code-2017] 3-401.11(B)(2): °F under 10 lb (4.5 kg), and from there up; in high humidity it is the most. */
export const FOOD_CODE_OVENS: Readonly<Record<OvenType, { readonly underF: number; readonly fromF: number }>> = {
  'still-dry': { underF: 350, fromF: 250 },
  convection: { underF: 325, fromF: 250 },
  'high-humidity': { underF: 250, fromF: 250 },
}
/** 10 lb, which the code prints as 4.5 kg. */
const LARGE_KG = 4.53592
/** [fsis-oven-325] what consumers are told. */
const CONSUMER_LEAST_C = fromFahrenheit(325)

export interface OvenCondition {
  readonly source: SourceId
  /** The code's oven type the cooker was read as; 'charcoal' cookers it does not name are read as still and dry. */
  readonly oven: OvenType | undefined
  readonly named: boolean
  readonly leastC: Celsius
  /** The lowest that the plan roasts at. */
  readonly planC: Celsius
  readonly kept: boolean
}

const NAMED: Readonly<Record<string, OvenType>> = { oven: 'still-dry', 'convection-oven': 'convection' }
/** The code's condition is for ovens; meat in a water bath has none. */
const NO_OVEN: readonly string[] = ['water-bath']

const roastingC = (plan: CookPlan) =>
  celsius(Math.min(...plan.stages.flatMap((stage) => (stage.do === 'roast' ? [stage.at] : []))))

/** Whether the plan keeps the code's oven for its roast; undefined where the code asks for none. */
export function foodCodeOven(plan: CookPlan): OvenCondition | undefined {
  if (NO_OVEN.includes(plan.cooker.kind)) return undefined
  const oven = NAMED[plan.cooker.kind] ?? 'still-dry'
  const { underF, fromF } = FOOD_CODE_OVENS[oven]
  const leastC = fromFahrenheit(plan.roast.mass < LARGE_KG ? underF : fromF)
  const planC = roastingC(plan)
  const cold = plan.stages.some((stage) => stage.do === 'preheat' && stage.cold === true)
  return {
    source: 'fda-food-code-2017',
    oven,
    named: plan.cooker.kind in NAMED,
    leastC,
    planC,
    kept: !cold && planC >= leastC - 0.5,
  }
}

/** Whether it roasts as hot as consumers are told to. */
export function consumerOven(plan: CookPlan): OvenCondition | undefined {
  if (NO_OVEN.includes(plan.cooker.kind)) return undefined
  const planC = roastingC(plan)
  const kept = planC >= CONSUMER_LEAST_C - 0.5
  return { source: 'fsis-oven-325', oven: undefined, named: true, leastC: CONSUMER_LEAST_C, planC, kept }
}
