import type { Shoot } from '../plan/shoot'
import { conflictsOf } from './conflicts'
import type { DayForecast } from './day-forecast'
import { droppedOf } from './dropped'
import type { Layout } from './layout'
import { dayProblem } from './problem'
import { refineCalls } from './refine-calls'
import { defaultSweeps, searchDay } from './search'
import { dutiesOf, toLayout } from './to-layout'

export type LayOutOptions = { readonly seed: number; readonly sweeps?: number }

/**
 * Lays out the day: every moment's shots where they fall, everything else around them at the least price. Never
 * "impossible": what does not fit is dropped, with the reason and the one change that would save it.
 */
export function layOutDay(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, options: LayOutOptions): Layout {
  const bare = dayProblem(shoot, forecasts)
  const { seed, sweeps = defaultSweeps(bare) } = options
  // A first staffing of the moments tells whose crew already stands there; the search proper then knows shorter holds.
  const first = searchDay(bare, { seed, sweeps: Math.ceil(sweeps / 8) })
  const found = searchDay(refineCalls(bare, first.draft), { seed, sweeps, from: first.genes })
  const problem = refineCalls(bare, found.draft)
  const duties = dutiesOf(problem, found.draft)
  const dropped = droppedOf(problem, found, { seed, sweeps, forecasts })
  const conflicts = conflictsOf(problem, found.draft, duties, dropped)
  return toLayout(problem, found.draft, duties, { dropped, conflicts }, forecasts)
}
