import { searchDay } from '../day/search'
import { type Best, type CommittedDay, dayOf, openDay, pricesNow, readDay, writeDay } from './committed-days'

/**
 * Writes the committed days and looks long for the best of each: `npx tsx lib/cli/renew-days.ts SHOTS FROM TO SECONDS`.
 * A best value that is known already is only ever improved, unless the prices have changed since.
 */
const [shots, from, to, seconds] = process.argv.slice(2).map(Number) as [number, number, number, number]
const cpuS = () => process.cpuUsage().user / 1e6

function longSearch(day: CommittedDay | null, shots: number, seed: number, seconds: number): CommittedDay {
  const drawn = dayOf(shots, seed)
  const { problem } = openDay(drawn)
  const known = day && day.best.prices === pricesNow() ? day.best : null
  let best: Best = known ?? { cost: Number.POSITIVE_INFINITY, prices: pricesNow(), searchedS: 0 }
  const began = cpuS()
  for (let run = 1, sweeps = 200; cpuS() - began < seconds; run++, sweeps *= 1.5) {
    const { draft } = searchDay(problem, { seed: 1000 + run + Math.round(best.searchedS), sweeps: Math.round(sweeps) })
    if (draft.cost < best.cost) best = { ...best, cost: draft.cost }
  }
  best = { ...best, searchedS: Math.round(best.searchedS + cpuS() - began) }
  return { shots, seed, document: drawn.document, cooks: drawn.cooks, best }
}

for (let seed = from; seed <= to; seed++) {
  const day = longSearch(readDay(shots, seed), shots, seed, seconds)
  writeDay(day)
  console.log(shots, seed, day.best.cost.toFixed(2), `${day.best.searchedS} s`)
}
