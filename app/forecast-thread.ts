import { pullWindow } from '@/lib/card/sizes'
import type { Layout } from '@/lib/day/layout'
import type { CookPlan } from '@/lib/model/cook'
import type { Forecast, Window } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { type ForecastDocument, forecastDocument } from '@/lib/plan/forecast-document'
import type { Shoot } from '@/lib/plan/shoot'
import { answers } from './answers'
import { type DayPlayed, type LoggedDay, loggedDay, rehearsedDay } from './shoots/rehearsed-day'
import { type WhyAsked, type WhyTold, wrapWhy } from './shoots/wrap-why'

/** The thread beside the server that works out forecasts, slice and all, so that no request waits for another's. */
export type Asked = { readonly turn: number } & (
  | { readonly forecasts: Shoot; readonly seed: number }
  /** What the command line prints, by its kernel. */
  | { readonly document: Shoot }
  | { readonly rehearse: Shoot; readonly layout: Layout }
  | { readonly why: WhyAsked }
  | { readonly logged: LoggedDay }
  /** How long one cook takes to its pull. */
  | { readonly pullOf: CookPlan; readonly seed: number }
)
export type Told = { readonly turn: number } & (
  | { readonly forecasts: readonly (readonly [string, Forecast])[] }
  | { readonly document: ForecastDocument }
  | { readonly played: DayPlayed }
  | { readonly told: WhyTold }
  | { readonly became: ReturnType<typeof loggedDay> }
  | { readonly pull: Window }
)

answers(answerTo, (told: Told) => ('forecasts' in told ? told.forecasts.flatMap(([, one]) => curvesOf(one)) : []))

function answerTo(asked: Asked): Told {
  const { turn } = asked
  if ('document' in asked) return { turn, document: forecastDocument(asked.document) }
  if ('rehearse' in asked) return { turn, played: rehearsedDay(asked.rehearse, asked.layout) }
  if ('logged' in asked) return { turn, became: loggedDay(asked.logged) }
  if ('why' in asked) return { turn, told: wrapWhy(asked.why) }
  const options = { seed: asked.seed, kernel: fastestKernel() }
  if ('pullOf' in asked) return { turn, pull: pullWindow(forecastCook(asked.pullOf, options)) }
  const shoot = asked.forecasts
  return {
    turn,
    forecasts: shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), options)] as const),
  }
}

const curvesOf = ({ trace }: Forecast) =>
  [trace.cookerC, trace.surfaceC, trace.coreC, trace.probeC].map((row) => row.buffer as ArrayBuffer)
