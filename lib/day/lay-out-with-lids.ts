import type { Shoot } from '../plan/shoot'
import type { DayForecast } from './day-forecast'
import { type LayOutOptions, layOutDay } from './lay-out'
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
 * The first guess is what the shots at moments open, so that most days need one round.
 */
export function layOutWithLids<F extends DayForecast>(
  shoot: Shoot,
  forecast: ForecastWith<F>,
  options: LayOutOptions,
): LaidOutDay<F> {
  const closed = forecast(shoot, {})
  let openings = lidsOfMoments(shoot, closed)
  let forecasts = noneOf(openings) ? closed : forecast(shoot, openings)
  for (let rounds = 1; ; rounds++) {
    const layout = layOutDay(shoot, forecasts, options)
    const opened = lidsOfLayout(shoot, layout, forecasts)
    const settled = alikeLids(openings, opened)
    if (settled || rounds === MOST_ROUNDS) return { layout: withLids(layout, openings), forecasts, rounds, settled }
    openings = opened
    forecasts = noneOf(openings) ? closed : forecast(shoot, openings)
  }
}

const noneOf = (openings: LidOpenings) => Object.values(openings).every((each) => each.length === 0)
const withLids = (layout: Layout, openings: LidOpenings): Layout =>
  noneOf(openings) ? layout : { ...layout, lidOpenings: openings }
