import { forecastCook } from '../model/forecast-cook'
import type { KernelName } from '../model/kernels'
import { type Summary, summarise } from '../model/summary'
import { MODEL_VERSION } from '../model/version'
import { toCookPlan } from './cook-plan'
import { documentWarnings } from './document-warnings'
import type { Shoot } from './shoot'

/** The forecast of a shoot file as machines read it. */
export interface ForecastDocument {
  readonly modelVersion: string
  readonly kernel: KernelName
  readonly seed: number
  readonly cooks: readonly Summary[]
}

/** Every cook's forecast, its warnings at their places in the shoot file. */
export function forecastDocument(
  shoot: Shoot,
  {
    seed = shoot.seed ?? 1,
    members,
    kernel = 'plain',
  }: {
    readonly seed?: number | undefined
    readonly members?: number | undefined
    readonly kernel?: KernelName | undefined
  } = {},
): ForecastDocument {
  const forecasts = new Map(
    shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed, members, kernel })]),
  )
  const warnings = documentWarnings(shoot, forecasts)
  const cooks = [...forecasts.values()].map((forecast, i) => ({
    ...summarise(forecast, '', shoot.authority),
    warnings: warnings.filter(({ path }) => path.startsWith(`/cooks/${i}/`)),
  }))
  return { modelVersion: MODEL_VERSION, kernel, seed, cooks }
}
