import type { Shoot } from '../plan/shoot'
import type { DayForecast } from './day-forecast'
import { type LaidOut, type LayOutOptions, layOutLike } from './lay-out'
import type { Layout } from './layout'
import { alikeLids, type LidOpenings, lidsOfLayout, lidsOfMoments } from './lid-openings'

/** What gives a forecast of every cook, told when the lid is off for shots. */
export type ForecastWith<F extends DayForecast = DayForecast> = (
  shoot: Shoot,
  openings: LidOpenings,
) => ReadonlyMap<string, F>
export interface LaidOutDay<F extends DayForecast = DayForecast> {
  /** Says in `lidOpenings` which openings its forecast knows. */
  readonly layout: Layout
  /** The forecasts that the layout was made from. */
  readonly forecasts: ReadonlyMap<string, F>
  /** How often the day was laid out. */
  readonly rounds: number
  /** The layout opens the lid when its forecast says it does, to a minute. */
  readonly settled: boolean
}
const MOST_ROUNDS = 4

/**
 * Lays out the day, feeds its lid openings back into the forecast and lays it out again, until they stay where they are.
 * The first guess is where the shots at moments settle, so that most days need one round.
 */
export function layOutWithLids<F extends DayForecast>(
  shoot: Shoot,
  forecast: ForecastWith<F>,
  options: LayOutOptions,
): LaidOutDay<F> {
  const closed = forecast(shoot, {})
  const known = (lids: LidOpenings) => (noneOf(lids) ? closed : forecast(shoot, lids))
  let { openings, forecasts } = firstGuess(shoot, closed, known)
  let last: LaidOut | undefined
  for (let rounds = 1; ; rounds++) {
    last = layOutLike(shoot, forecasts, options, last?.genes)
    const { layout } = last
    const opened = lidsOfLayout(shoot, layout, forecasts)
    const settled = alikeLids(openings, opened)
    if (settled || rounds === MOST_ROUNDS) return { layout: withLids(layout, openings), forecasts, rounds, settled }
    openings = opened
    forecasts = known(openings)
  }
}

/** Shots at moments move with the moments that they hold back: forecasts alone find where they settle. */
function firstGuess<F extends DayForecast>(
  shoot: Shoot,
  closed: ReadonlyMap<string, F>,
  known: (lids: LidOpenings) => ReadonlyMap<string, F>,
) {
  let openings = lidsOfMoments(shoot, closed)
  let forecasts = known(openings)
  for (let tries = 1; tries < MOST_ROUNDS; tries++) {
    const moved = lidsOfMoments(shoot, forecasts)
    if (alikeLids(openings, moved)) break
    openings = moved
    forecasts = known(openings)
  }
  return { openings, forecasts }
}

const noneOf = (openings: LidOpenings) => Object.values(openings).every((each) => each.length === 0)
const withLids = (layout: Layout, openings: LidOpenings): Layout =>
  noneOf(openings) ? layout : { ...layout, lidOpenings: openings }
