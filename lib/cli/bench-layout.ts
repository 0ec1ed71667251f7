import { checkLayout } from '../day/check'
import type { Draft } from '../day/draft'
import { layOutDay } from '../day/lay-out'
import { type DayProblem, dayProblem } from '../day/problem'
import { PRICES } from '../day/rules'
import { searchDay } from '../day/search'
import type { Forecast } from '../model/forecast'
import { forecastCook } from '../model/forecast-cook'
import { toCookPlan } from '../plan/cook-plan'
import type { Cook, Shoot } from '../plan/shoot'
import { plantedDay, plantedDayShell } from './planted-day'

const SECONDS = 2
const SEEDS = 20

/** Share of the droppable weight that a laid-out day loses by drops and interruptions; 0 is the certain best. */
export function lostShare({ floats }: DayProblem, draft: Draft): number {
  const whole = floats.reduce((sum, job) => sum + job.weight, 0)
  const lost = floats.map(({ weight }, i) => {
    const place = draft.floats[i]
    return place ? Math.min(1, place.risk) * weight * PRICES.interrupted : weight
  })
  return lost.reduce((sum, l) => sum + l, 0) / whole
}

/** As many sweeps as the machine does in the time, from one short run. */
function sweepsIn(seconds: number, problem: DayProblem): number {
  const started = performance.now()
  searchDay(problem, { seed: 0, sweeps: 4 })
  return Math.max(1, Math.floor((seconds * 4000) / (performance.now() - started)))
}

/** Gap in per cent for each of 20 planted days after 2 s each, ascending. */
export function layoutGaps(shots: number, forecast: Forecast, seconds = SECONDS, seeds = SEEDS): number[] {
  const gaps = Array.from({ length: seeds }, (_, seed) => {
    const problem = dayProblem(plantedDay(shots, seed + 1, forecast), new Map([['hero', forecast]]))
    const { draft } = searchDay(problem, { seed, sweeps: sweepsIn(seconds, problem) })
    return 100 * lostShare(problem, draft)
  })
  return gaps.sort((a, b) => a - b)
}

/** Milliseconds to the first laid-out day that breaks no rule. */
export function firstLayoutMs(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): number | null {
  for (const sweeps of [0, 1, 2, 4, 8, 16, 32]) {
    const started = performance.now()
    const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps })
    const took = performance.now() - started
    if (checkLayout(shoot, layout, forecasts).length === 0) return took
  }
  return null
}

/** The layout's figures of the bench; gaps are to a certain optimum (planted), 80th percentile and worst of 20. */
export function benchLayout(): Record<string, number> {
  const shoot = plantedDayShell()
  const cook = shoot.cooks[0] as Cook
  const forecast = forecastCook(toCookPlan(shoot, cook), { seed: 1, members: 256 })
  const figures: Record<string, number> = {}
  for (const shots of [20, 40, 80]) {
    const gaps = layoutGaps(shots, forecast)
    figures[`layout_${shots}_gap_pct`] = gaps[Math.ceil(0.8 * gaps.length) - 1] as number
    figures[`layout_${shots}_gap_pct_worst`] = gaps.at(-1) as number
  }
  const first = firstLayoutMs(plantedDay(40, 1, forecast), new Map([['hero', forecast]]))
  if (first !== null) figures.layout_40_first_ms = first
  return figures
}
