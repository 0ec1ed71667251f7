import { secondsOfCore } from '../../../lib/cli/bench-layout'
import { gapPct, openDay, pricesNow, readDay, seedsOf } from '../../../lib/cli/committed-days'
import type { DayProblem } from '../../../lib/day/problem'
import { searchDay } from '../../../lib/day/search'

const SECONDS = 2
const NEAR_PCT = 2
const FAR_PCT = 5
const NEAR_SHARE = 0.8

/**
 * Each committed day laid out within 2 s of one core, beside the best that is known of it from long searches. The gap is
 * a share of what may be dropped (all but the musts); of the whole cost it is told too.
 */
export function prove({ seed }: { readonly seed: number }): Record<string, number> {
  const figures: Record<string, number> = {}
  const short: string[] = []
  for (const shots of [20, 40, 80]) {
    const days = seedsOf(shots).map((day) => gapOf(shots, day, seed))
    const gaps = days.map((d) => d.gap).sort((a, b) => a - b)
    const near = gaps.filter((g) => g <= NEAR_PCT).length / gaps.length
    const costs = days.map((d) => d.ofCost).sort((a, b) => a - b)
    const at = (values: readonly number[], share: number) => rounded(values[Math.ceil(share * values.length) - 1] as number)
    figures[`days_${shots}`] = days.length
    figures[`near_${shots}_share`] = rounded(near)
    figures[`gap_${shots}_pct_80th`] = at(gaps, 0.8)
    figures[`gap_${shots}_pct_worst`] = at(gaps, 1)
    figures[`of_cost_${shots}_pct_80th`] = at(costs, 0.8)
    figures[`of_cost_${shots}_pct_worst`] = at(costs, 1)
    figures[`forced_drop_${shots}_share`] = rounded(days.filter((d) => d.drops).length / days.length)
    figures[`overlap_${shots}_share`] = rounded(days.filter((d) => d.overlap).length / days.length)
    if ((gaps.at(-1) as number) > FAR_PCT || (shots < 80 && near < NEAR_SHARE)) short.push(`${shots} shots: ${gaps.map(rounded)}`)
  }
  if (short.length > 0) throw new Error(`${short.join('; ')}\n${JSON.stringify(figures, null, 2)}`)
  return figures
}
const rounded = (x: number) => Math.round(1000 * x) / 1000

function gapOf(shots: number, day: number, seed: number) {
  const committed = readDay(shots, day)
  if (!committed || committed.best.prices !== pricesNow())
    throw new Error(`Day ${day} of ${shots} shots has no best value at these prices: npx tsx lib/cli/renew-days.ts`)
  const { problem } = openDay(committed)
  const { draft } = searchDay(problem, { seed, sweeps: 1, spent: secondsOfCore(SECONDS) })
  return {
    gap: gapPct(problem, draft.cost, committed.best.cost),
    ofCost: (100 * (draft.cost - committed.best.cost)) / committed.best.cost,
    // The best that is known drops something too.
    drops: committed.best.cost > draft.cost - 20 && [...draft.moments, ...draft.floats].some((place) => !place),
    overlap: windowsMeet(problem),
  }
}

/** Two moments at different instants whose 5 to 95 % windows overlap. */
function windowsMeet({ moments }: DayProblem): boolean {
  const window = (sorted: Float64Array) => [0.05, 0.95].map((q) => sorted[Math.floor(q * (sorted.length - 1))] as number)
  return moments.some((a, i) =>
    moments.slice(i + 1).some((b) => {
      if (a.cook !== b.cook || a.moment === b.moment || a.sorted[0] === a.sorted.at(-1)) return false
      const [[fromA, toA], [fromB, toB]] = [window(a.sorted), window(b.sorted)] as [number[], number[]]
      return (fromA as number) < (toB as number) && (fromB as number) < (toA as number)
    }),
  )
}
