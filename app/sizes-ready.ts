import 'server-only'
import { bareShoot } from '@/lib/card/other-cook'
import { pullWindow, type SizeTable, sizeGrid, tableOf } from '@/lib/card/sizes'
import type { CookPlan } from '@/lib/model/cook'
import type { Forecast, Window } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { MODEL_VERSION } from '@/lib/model/version'
import type { Shoot } from '@/lib/plan/shoot'
import { pullBeside } from './forecast-pool'
import { forecastsOf, seedOf } from './worked-out'

/** The table of times for other sizes: some fifteen forecasts, worked out beside the server once and kept for the next who asks. */
const KEPT = 24
interface Kept {
  readonly table: Promise<SizeTable>
  done?: SizeTable
}
const holder = globalThis as { emberslateSizes?: Map<string, Kept> }
holder.emberslateSizes ??= new Map()
const tables = holder.emberslateSizes
const keyOf = (shoot: Shoot) => JSON.stringify([bareShoot(shoot), shoot.cooks[0]?.cooker, MODEL_VERSION])

/** The table if it has been worked out. */
export const knownSizes = (shoot: Shoot): SizeTable | undefined => tables.get(keyOf(shoot))?.done

export function sizesReady(shoot: Shoot): Promise<SizeTable> {
  const key = keyOf(shoot)
  const known = tables.get(key)
  if (known) return known.table
  const kept: Kept = { table: workedOut(shoot) }
  tables.set(key, kept)
  if (tables.size > KEPT) tables.delete(tables.keys().next().value as string)
  kept.table.then(
    (table) => {
      kept.done = table
    },
    () => tables.delete(key),
  )
  return kept.table
}

/** One after another, so that whoever asks the thread meanwhile waits for one forecast and not for all. */
async function workedOut(shoot: Shoot): Promise<SizeTable> {
  const filmed = forecastsOf(shoot).get(shoot.cooks[0]?.id ?? '') as Forecast
  const grid = sizeGrid(shoot, filmed)
  const windows: Window[][] = []
  for (const { plans } of grid.rows) {
    const row: Window[] = []
    for (const plan of plans)
      row.push(plan === filmed.cook ? pullWindow(filmed) : await windowOf(shoot, plan, seedOf(shoot)))
    windows.push(row)
  }
  return tableOf(grid, windows)
}
const windowOf = async (shoot: Shoot, plan: CookPlan, seed: number): Promise<Window> =>
  (await pullBeside(shoot, plan, seed)) ?? pullWindow(forecastCook(plan, { seed, kernel: fastestKernel() }))
