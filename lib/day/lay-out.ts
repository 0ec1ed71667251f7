import type { Forecast } from '../model/forecast'
import type { Shoot } from '../plan/shoot'
import { conflictsOf } from './conflicts'
import { droppedOf } from './dropped'
import type { Layout } from './layout'
import { dayProblem } from './problem'
import { defaultSweeps, searchDay } from './search'
import { dutiesOf, toLayout } from './to-layout'

export type LayOutOptions = { readonly seed: number; readonly sweeps?: number }

/**
 * Lays out the day: every moment's shots where they fall, everything else around them at the least price. Never
 * "impossible": what does not fit is dropped, with the reason and the one change that would save it.
 */
export function layOutDay(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>, options: LayOutOptions): Layout {
  const problem = dayProblem(shoot, forecasts)
  const { seed, sweeps = defaultSweeps(problem) } = options
  const found = searchDay(problem, { seed, sweeps })
  const duties = dutiesOf(problem, found.draft)
  const dropped = droppedOf(problem, found, { seed, sweeps, forecasts })
  const conflicts = conflictsOf(problem, found.draft, duties, dropped)
  return toLayout(problem, found.draft, duties, { dropped, conflicts }, forecasts)
}
