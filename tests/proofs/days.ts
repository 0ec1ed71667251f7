import { SEARCH_S, secondsOfCore } from '../../lib/cli/bench-layout'
import { bestOf, gapPct, openDay, pricesNow, readDay, seedsOf } from '../../lib/cli/committed-days'
import { meet } from '../../lib/day/crew'
import type { Draft } from '../../lib/day/draft'
import type { DayProblem } from '../../lib/day/problem'
import { searchDay } from '../../lib/day/search'

const SECONDS = 2
const NEAR_PCT = 2
const FAR_PCT = 5
const NEAR_SHARE = 0.8
/** Of the days of 20 and 40 shots so many must force a drop, and so many have two windows that overlap. */
const DROP_SHARE = 0.4
const OVERLAP_SHARE = 0.3

/**
 * Each committed day laid out within 2 s of one core, beside the best that is known of it from long searches. The gap is
 * a share of what may be dropped (all but the musts); of the whole cost it is told too.
 */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const figures: Record<string, number> = {}
  const short: string[] = []
  const count = { days: 0, drop: 0, overlap: 0 }
  for (const shots of [20, 40, 80]) {
    const days = seedsOf(shots).map((day) => gapOf(shots, day, seed))
    const gaps = days.map((d) => d.gap).sort((a, b) => a - b)
    const costs = days.map((d) => d.ofCost).sort((a, b) => a - b)
    const near = within(gaps, NEAR_PCT)
    const at = (values: readonly number[], share: number) =>
      rounded(values[Math.ceil(share * values.length) - 1] as number)
    figures[`days_${shots}`] = days.length
    figures[`near_${shots}_share`] = rounded(near)
    figures[`gap_${shots}_pct_80th`] = at(gaps, 0.8)
    figures[`gap_${shots}_pct_worst`] = at(gaps, 1)
    figures[`of_cost_${shots}_near_share`] = rounded(within(costs, NEAR_PCT))
    figures[`of_cost_${shots}_pct_80th`] = at(costs, 0.8)
    figures[`of_cost_${shots}_pct_worst`] = at(costs, 1)
    figures[`took_${shots}_s_worst`] = rounded(Math.max(...days.map((d) => d.tookS)))
    // The rules have changed since they were found.
    figures[`best_costs_otherwise_${shots}`] = days.filter((d) => d.recosted).length
    figures[`searched_${shots}_s_least`] = Math.min(...days.map((d) => d.searchedS))
    const drops = days.filter((d) => d.drops).length
    const overlaps = days.filter((d) => d.overlaps).length
    figures[`forced_drop_${shots}_share`] = rounded(drops / days.length)
    figures[`overlap_${shots}_share`] = rounded(overlaps / days.length)
    if ((gaps.at(-1) as number) > FAR_PCT || (shots < 80 && near < NEAR_SHARE))
      short.push(`${shots} shots: ${days.map((d) => `${d.day}: ${rounded(d.gap)}`).join(', ')}`)
    if (days.some((d) => d.tookS > SECONDS)) short.push(`${shots} shots: took longer than ${SECONDS} s`)
    if (shots === 80) continue
    count.days += days.length
    count.drop += drops
    count.overlap += overlaps
  }
  if (count.drop < DROP_SHARE * count.days) short.push(`${count.drop} of ${count.days} days force a drop`)
  if (count.overlap < OVERLAP_SHARE * count.days) short.push(`${count.overlap} of ${count.days} days have windows that overlap`)
  if (short.length > 0) throw new Error(`${short.join('; ')}\n${JSON.stringify(figures, null, 2)}`)
  return figures
}
const rounded = (x: number) => Math.round(1000 * x) / 1000
const within = (gaps: readonly number[], pct: number) => gaps.filter((g) => g <= pct).length / gaps.length

function gapOf(shots: number, day: number, seed: number) {
  const committed = readDay(shots, day)
  if (!committed) throw new Error(`There is no day ${day} of ${shots} shots.`)
  const { problem } = openDay(committed)
  const best = committed.best.prices === pricesNow() ? bestOf(problem, committed.best) : null
  if (!best) throw new Error(`Day ${day} of ${shots} shots has no best at these prices: npx tsx lib/cli/renew-days.ts`)
  const began = process.cpuUsage()
  const { draft } = searchDay(problem, { seed, sweeps: 1, spent: secondsOfCore(SEARCH_S) })
  const took = process.cpuUsage(began)
  return {
    day,
    tookS: (took.user + took.system) / 1e6,
    gap: gapPct(problem, draft.cost, best.cost),
    ofCost: (100 * (draft.cost - best.cost)) / best.cost,
    searchedS: best.searchedS,
    recosted: Math.abs(best.cost - committed.best.cost) > 1e-6,
    drops: [...best.draft.moments, ...best.draft.floats].some((place) => !place),
    overlaps: windowsMeet(problem, best.draft),
  }
}

/** Two shots at different moments of the best day that share people, and whose 5 to 95 % windows overlap. */
function windowsMeet({ moments }: DayProblem, { moments: places, meatOn }: Draft): boolean {
  const windows = moments.map(({ cook, sorted }) => {
    const at = (q: number) => (meatOn[cook] as number) + (sorted[Math.floor(q * (sorted.length - 1))] as number)
    return { from: at(0.05), to: at(0.95) }
  })
  return moments.some((a, i) =>
    moments.some((b, j) => {
      const [one, other] = [places[i], places[j]]
      if (j <= i || !one || !other || (a.cook === b.cook && a.moment === b.moment)) return false
      const [first, next] = [windows[i], windows[j]] as [Window, Window]
      return meet(one.mode.rollMask, other.mode.rollMask) && first.from < next.to && next.from < first.to
    }),
  )
}
type Window = { readonly from: number; readonly to: number }
