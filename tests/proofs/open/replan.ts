import { openDay, readDay, seedsOf } from '../../../lib/cli/committed-days'
import { checkLayout } from '../../../lib/day/check'
import { rePlan } from '../../../lib/day/re-plan'
import { callsMoved, lateAtHalfTime, overFreePct } from '../../unit/day/late-cook'

const LATER_MIN = 25
const MOST_MOVED_PCT = 30
const MOST_OVER_PCT = 5
const MOST_S = 1
/** Sweeps for the free optimum: some ten times what the re-plan gets. */
const FREE_SWEEPS = 400

/** The cook turns out 25 min late at half time, on every committed day of 40 and 80 shots; the worst and the middle. */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const figures: Record<string, number> = {}
  const short: string[] = []
  for (const shots of [40, 80]) {
    const days = seedsOf(shots).map((day) => late(shots, day, seed))
    const sum = (of: (d: (typeof days)[number]) => number) => days.reduce((all, d) => all + of(d), 0)
    const pct = (part: number, all: number) => Math.round((1000 * part) / Math.max(1, all)) / 10
    figures[`days_${shots}`] = days.length
    figures[`calls_moved_${shots}_pct`] = pct(sum((d) => d.aheadMoved), sum((d) => d.whole))
    figures[`of_calls_ahead_${shots}_pct`] = pct(sum((d) => d.aheadMoved), sum((d) => d.ahead))
    figures[`of_calls_by_clock_ahead_${shots}_pct`] = pct(sum((d) => d.byClockMoved), sum((d) => d.byClock))
    const tenth = (x: number) => Math.round(10 * x) / 10
    const worst = (all: readonly number[]) => tenth(Math.max(...all))
    figures[`over_free_${shots}_pct_mean`] = tenth(sum((d) => d.over.ofWeight) / days.length)
    figures[`over_free_${shots}_pct_worst`] = worst(days.map((d) => d.over.ofWeight))
    figures[`over_free_of_cost_${shots}_pct_worst`] = worst(days.map((d) => d.over.ofCost))
    figures[`took_${shots}_s_worst`] = Math.round(1000 * Math.max(...days.map((d) => d.tookS))) / 1000
    figures[`violations_${shots}`] = sum((d) => d.violations.length)
    if ((figures[`of_calls_by_clock_ahead_${shots}_pct`] as number) > MOST_MOVED_PCT) short.push(`${shots}: calls move`)
    if ((figures[`over_free_${shots}_pct_worst`] as number) > MOST_OVER_PCT) short.push(`${shots}: cost`)
    if ((figures[`took_${shots}_s_worst`] as number) > MOST_S) short.push(`${shots}: time`)
    if (sum((d) => d.violations.length) > 0) short.push(`${shots}: ${days.flatMap((d) => d.violations).join(' ')}`)
  }
  if (short.length > 0) throw new Error(`${short.join('; ')}\n${JSON.stringify(figures, null, 2)}`)
  return figures
}

function late(shots: number, day: number, seed: number) {
  const committed = readDay(shots, day)
  if (!committed) throw new Error(`There is no day ${day} of ${shots} shots.`)
  const { shoot, forecasts } = openDay(committed)
  const lateDay = lateAtHalfTime(shoot, forecasts, LATER_MIN, 30)
  const began = process.cpuUsage()
  const next = rePlan(shoot, lateDay.later, { previous: lateDay.previous, now: lateDay.now, seed })
  const took = process.cpuUsage(began)
  return {
    ...callsMoved(lateDay, next),
    over: overFreePct(lateDay, seed, FREE_SWEEPS),
    tookS: (took.user + took.system) / 1e6,
    violations: checkLayout(shoot, next, lateDay.later).map((v) => `${day}: ${v.rule}: ${v.sentence}`),
  }
}
