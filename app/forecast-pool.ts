import 'server-only'
import { Worker } from 'node:worker_threads'
import type { Layout } from '@/lib/day/layout'
import type { CookPlan } from '@/lib/model/cook'
import type { Forecast, Window } from '@/lib/model/forecast'
import type { ForecastDocument } from '@/lib/plan/forecast-document'
import type { Shoot } from '@/lib/plan/shoot'
import { Beside } from './beside'
import type { Asked, Told } from './forecast-thread'
import { type DayPlayed, type LoggedDay, loggedDay, rehearsedDay } from './shoots/rehearsed-day'
import { type WhyAsked, type WhyTold, wrapWhy } from './shoots/wrap-why'
import { whoseIs } from './whose'

const holder = globalThis as { emberslateForecasts?: Beside<Asked, Told> }
holder.emberslateForecasts ??= new Beside(
  'forecast',
  () => new Worker(new URL('./forecast-thread.ts', import.meta.url)),
  'forecast',
)
export const forecastThread = holder.emberslateForecasts

export async function forecastsBeside(shoot: Shoot, seed: number): Promise<ReadonlyMap<string, Forecast> | undefined> {
  const told = await forecastThread.ask({ forecasts: shoot, seed }, whoseIs(shoot))
  return told && 'forecasts' in told ? new Map(told.forecasts) : undefined
}
export async function documentBeside(shoot: Shoot): Promise<ForecastDocument | undefined> {
  const told = await forecastThread.ask({ document: shoot }, whoseIs(shoot))
  return told && 'document' in told ? told.document : undefined
}
export async function rehearsedBeside(shoot: Shoot, layout: Layout): Promise<DayPlayed> {
  const told = await forecastThread.ask({ rehearse: shoot, layout }, whoseIs(shoot))
  return told && 'played' in told ? told.played : rehearsedDay(shoot, layout)
}
/** How long one cook of the shoot's would take to its pull. */
export async function pullBeside(shoot: Shoot, plan: CookPlan, seed: number): Promise<Window | undefined> {
  const told = await forecastThread.ask({ pullOf: plan, seed }, whoseIs(shoot))
  return told && 'pull' in told ? told.pull : undefined
}
export async function loggedBeside(logged: LoggedDay): Promise<ReturnType<typeof loggedDay>> {
  const told = await forecastThread.ask({ logged }, whoseIs(logged.shoot))
  return told && 'became' in told ? told.became : loggedDay(logged)
}
export async function whyBeside(why: WhyAsked): Promise<WhyTold> {
  const answer = await forecastThread.ask({ why }, whoseIs(why.shoot))
  return answer && 'told' in answer ? answer.told : wrapWhy(why)
}
