import type { Drawing } from './drawing'
import { drawHeat } from './heat-line-draw'
import type { HeatFacts, HeatView } from './heat-line-facts'
import { type HeatPlan, heatFacts } from './heat-line-from-plan'

export type { HeatFacts, HeatView } from './heat-line-facts'
export type { HeatLineCook, HeatPlan } from './heat-line-from-plan'
/** A plan, and how its picture is wanted. */
export type HeatLineInput = HeatPlan & HeatView

/** What the picture of a plan is drawn from; the same for every width. Null where there is no cook. */
export function heatLineFacts(plan: HeatPlan): HeatFacts | null {
  const [first] = plan.cooks
  return first ? heatFacts(plan, first) : null
}

/** The heat line of a plan. */
export function drawHeatLine(input: HeatLineInput, facts = heatLineFacts(input)): Drawing {
  if (!facts) return { width: input.width, height: 0, title: input.title, marks: [], tables: [] }
  return drawHeat(input, facts)
}
