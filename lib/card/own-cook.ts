import type { CookPlan } from '../model/cook'
import { knownCutOf } from '../model/custom-cut'
import { ALWAYS } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import { medianOf, spreadOf } from '../model/quantiles'
import { HIGHEST_CORE_C } from '../plan/bounds'
import { toCookPlan } from '../plan/cook-plan'
import type { Cook } from '../plan/shoot'
import { type Kelvins, kelvins } from '../units'
import { coldestPeak, shareMeeting } from './coldest'
import { otherCook } from './other-cook'
import { type CardBasis, cookOf, type Wish } from './own-wish'

export type ForecastOf = (plan: CookPlan) => Forecast
export interface OwnCook {
  readonly cook: Cook
  readonly forecast: Forecast
  /** Whether the goal is met: within what a probe can tell, or by 19 cooks in 20. */
  readonly met: boolean
}

/** What nobody reads off a probe. */
const NEAR_K = 1.5
const MOST_TRIES = 6
/** So far a heat's end must stay from the heat itself, and above where the meat starts. */
const BELOW_HEAT_K = 2
const ABOVE_START_K = 5

type Heat = Extract<Cook['stages'][number], { do: 'roast' | 'sear' }>
/** How far the ends of the heats can be moved, K: the water in the meat boils, and a middle never passes its fire. */
function reach(cook: Cook): { readonly least: number; readonly most: number } {
  const heats = cook.stages.filter((s): s is Heat => s.do === 'roast' || s.do === 'sear')
  const cores = heats.flatMap((s) => ('core' in s.until ? [{ core: s.until.core, at: s.at }] : []))
  return {
    least: Math.max(...cores.map(({ core }) => cook.roast.start + ABOVE_START_K - core)),
    most: Math.min(...cores.map(({ core, at }) => Math.min(HIGHEST_CORE_C - 1, at - BELOW_HEAT_K) - core)),
  }
}

/**
 * The card's cook for the reader's roast, its heats ended later or sooner until the slice is as they want it. What the
 * rest adds hangs on the size and the cooker, so it is found by forecasting and not carried over from the card.
 */
export function ownCook(basis: CardBasis, wish: Wish, forecastOf: ForecastOf): OwnCook {
  const { thickness, mass, start, cooker, goal } = wish
  const change = { thickness, start, cooker, ...(mass === null ? {} : { mass }) }
  const cookBy = (hotter: Kelvins) => otherCook(cookOf(basis), basis.pull, { ...change, hotter })
  const { least, most } = reach(cookBy(kelvins(0)))
  let hotter = 0
  for (let tries = 1; ; tries++) {
    const cook = cookBy(kelvins(hotter))
    const forecast = forecastOf(toCookPlan(basis.shoot, cook))
    const short = shortOf(basis, wish, forecast, tries)
    const next = Math.max(least, Math.min(most, hotter + Math.round(short)))
    if (next === hotter || tries === MOST_TRIES) return { cook, forecast, met: metBy(basis, goal, forecast) }
    hotter = next
  }
}

const minimumOf = (basis: CardBasis) =>
  minimumFor({ animal: knownCutOf(cookOf(basis).roast).animal }, basis.shoot.authority)
const keepsMinimum = (basis: CardBasis, forecast: Forecast) => shareMeeting(forecast, minimumOf(basis)) >= ALWAYS

/** By how much the heats end too soon, K; below 0 where too late. The minimum is never given away for a wanted middle. */
function shortOf(basis: CardBasis, { goal }: Wish, forecast: Forecast, tries: number): number {
  const below = goal.minimum && !keepsMinimum(basis, forecast)
  if (below) return Math.max(1, Math.ceil(minimumOf(basis).tempC - coldestPeak(forecast).low))
  if (goal.middle === null) return 0
  const short = goal.middle - medianOf(forecast.atSlice.probeC)
  // Once the minimum has pushed it up, coming down again would only swing about it.
  return Number.isFinite(short) && !(goal.minimum && short < 0 && tries > 1) ? short : 0
}

function metBy(basis: CardBasis, { middle, minimum }: Wish['goal'], forecast: Forecast): boolean {
  const sliced = spreadOf<number>(forecast.atSlice.probeC).likely
  if (!Number.isFinite(sliced)) return false
  if (minimum) return keepsMinimum(basis, forecast)
  return middle === null || Math.abs(middle - sliced) <= NEAR_K
}
