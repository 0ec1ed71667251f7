import { checkLayout } from '../day/check'
import type { DayForecast } from '../day/day-forecast'
import { layOutDay } from '../day/lay-out'
import { searchDay } from '../day/search'
import type { Shoot } from '../plan/shoot'
import { bestOf, gapPct, openDay, pricesNow, readDay, seedsOf } from './committed-days'

/** Of 2 s of one core: the rest is for what follows the last reading. */
export const SEARCH_S = 1.8

/** What a core has done is asked so seldom: asking takes its own time. */
const ASK_MS = 10

/** A search's time budget in seconds of one core, read as it goes. */
export function secondsOfCore(seconds: number): () => number {
  const began = process.cpuUsage()
  let asked = performance.now()
  let share = 0
  return () => {
    const now = performance.now()
    if (now - asked < ASK_MS) return share
    const { user, system } = process.cpuUsage(began)
    ;[asked, share] = [now, (user + system) / 1e6 / seconds]
    return share
  }
}

/** Gap to the best that is known, in per cent of what may be dropped, for each committed day after so long; ascending. */
export function layoutGaps(shots: number, seconds = SEARCH_S): number[] {
  const gaps = seedsOf(shots).flatMap((seed) => {
    const day = readDay(shots, seed)
    if (!day || day.best.prices !== pricesNow()) return []
    const { problem } = openDay(day)
    const best = bestOf(problem, day.best)
    if (!best) return []
    const { draft } = searchDay(problem, { seed, sweeps: 1, spent: secondsOfCore(seconds) })
    return [gapPct(problem, draft.cost, best.cost)]
  })
  return gaps.sort((a, b) => a - b)
}

/** Milliseconds to the first laid-out day that breaks no rule. */
export function firstLayoutMs(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>): number | null {
  for (const sweeps of [0, 1, 2, 4, 8, 16, 32]) {
    const started = performance.now()
    const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps })
    const took = performance.now() - started
    if (checkLayout(shoot, layout, forecasts).length === 0) return took
  }
  return null
}

/** The layout's figures of the bench: 80th percentile and worst over the committed days of 20, 40 and 80 shots. */
export function benchLayout(): Record<string, number> {
  const figures: Record<string, number> = {}
  for (const shots of [20, 40, 80]) {
    const gaps = layoutGaps(shots)
    if (gaps.length === 0) continue
    figures[`layout_${shots}_gap_pct`] = gaps[Math.ceil(0.8 * gaps.length) - 1] as number
    figures[`layout_${shots}_gap_pct_worst`] = gaps.at(-1) as number
  }
  const day = readDay(40, 1)
  if (!day) return figures
  const { shoot, forecasts } = openDay(day)
  const first = firstLayoutMs(shoot, forecasts)
  if (first !== null) figures.layout_40_first_ms = first
  return figures
}
