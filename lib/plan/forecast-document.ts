import { assimilate } from '../model/assimilate'
import { forecastCook } from '../model/forecast-cook'
import type { KernelName } from '../model/kernels'
import { type ReadSummary, readSummary } from '../model/read-summary'
import type { Mark, Reading } from '../model/readings'
import { type Summary, summarise } from '../model/summary'
import { MODEL_VERSION } from '../model/version'
import { toCookPlan } from './cook-plan'
import { documentWarnings } from './document-warnings'
import type { Shoot } from './shoot'
import { roastOf } from './side-tasks'

/** The forecast of a shoot file as machines read it. */
export interface ForecastDocument {
  readonly modelVersion: string
  readonly kernel: KernelName
  readonly seed: number
  readonly cooks: readonly (Summary & { readonly read?: ReadSummary })[]
}

/** What has been read, by cook; `nowS` where the probe has gone dead since. */
export interface Read {
  readonly readings: ReadonlyMap<string, readonly Reading[]>
  readonly marks?: ReadonlyMap<string, readonly Mark[]>
  readonly nowS?: number | undefined
}
/** A side's warning is told with the cook whose cooker it shares. */
function isOfSide(shoot: Shoot, path: string, cook: string): boolean {
  const side = shoot.sides?.[Number(/^\/sides\/(\d+)\//.exec(path)?.[1] ?? Number.NaN)]
  return side !== undefined && roastOf(shoot, side.id) === cook
}
/** Every cook's forecast, given what has been read of it; its warnings at their places in the shoot file. */
export function forecastDocument(
  shoot: Shoot,
  {
    seed = shoot.seed ?? 1,
    members,
    kernel = 'plain',
    read,
  }: {
    readonly seed?: number | undefined
    readonly members?: number | undefined
    readonly kernel?: KernelName | undefined
    readonly read?: Read | undefined
  } = {},
): ForecastDocument {
  const options = { seed, members, kernel }
  const moved = new Map<string, { read: ReadSummary }>()
  const forecasts = new Map(
    shoot.cooks.map((cook) => {
      const plan = toCookPlan(shoot, cook)
      const readings = read?.readings.get(cook.id) ?? []
      const marks = read?.marks?.get(cook.id) ?? []
      if (read === undefined || (readings.length === 0 && marks.length === 0 && read.nowS === undefined))
        return [cook.id, forecastCook(plan, options)] as const
      const observed = { readings, marks, ...(read.nowS === undefined ? {} : { nowS: read.nowS }) }
      const given = assimilate(plan, observed, options)
      moved.set(cook.id, { read: readSummary(forecastCook(plan, options), given, observed) })
      return [cook.id, given.forecast] as const
    }),
  )
  const warnings = documentWarnings(shoot, forecasts)
  const cooks = [...forecasts.values()].map((forecast, i) => ({
    ...summarise(forecast, '', shoot.authority),
    ...moved.get(forecast.cook.id),
    warnings: warnings.filter(({ path }) => path.startsWith(`/cooks/${i}/`) || isOfSide(shoot, path, forecast.cook.id)),
  }))
  return { modelVersion: MODEL_VERSION, kernel, seed, cooks }
}
