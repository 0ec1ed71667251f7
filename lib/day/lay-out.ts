import type { Shoot } from '../plan/shoot'
import { conflictsOf } from './conflicts'
import type { DayForecast } from './day-forecast'
import type { Genes } from './draft'
import { droppedOf } from './dropped'
import type { Layout } from './layout'
import { dayProblem } from './problem'
import { refineCalls } from './refine-calls'
import { defaultSweeps, searchDay } from './search'
import { dutiesOf, toLayout } from './to-layout'

export type LayOutOptions = { readonly seed: number; readonly sweeps?: number }

/** A day, and the genes from which a day much like it can be laid out. */
export interface LaidOut {
  readonly layout: Layout
  readonly genes: Genes
}

/**
 * Lays out the day: every moment's shots where they fall, everything else around them at the least price. Never
 * "impossible": what does not fit is dropped, with the reason and the one change that would save it.
 */
export const layOutDay = (shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, options: LayOutOptions): Layout =>
  layOutLike(shoot, forecasts, options).layout

/** `like`: genes of a day that fitted forecasts nearly the same. */
export function layOutLike(
  shoot: Shoot,
  forecasts: ReadonlyMap<string, DayForecast>,
  options: LayOutOptions,
  like?: Genes,
): LaidOut {
  const bare = dayProblem(shoot, forecasts)
  const { seed, sweeps = defaultSweeps(bare) } = options
  // A first staffing of the moments tells whose crew already stands there; the search proper then knows shorter holds.
  const first = searchDay(bare, like ? { seed, sweeps: 0, from: like } : { seed, sweeps: Math.ceil(sweeps / 4) })
  const near = like !== undefined
  const found = searchDay(refineCalls(bare, first.draft), { seed, sweeps, from: first.genes, near })
  const problem = refineCalls(bare, found.draft)
  const duties = dutiesOf(problem, found.draft)
  const dropped = droppedOf(problem, found, { seed, sweeps, forecasts })
  const conflicts = conflictsOf(problem, found.draft, duties, dropped)
  return { layout: toLayout(problem, found.draft, duties, { dropped, conflicts }, forecasts), genes: found.genes }
}
