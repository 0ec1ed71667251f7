import { type SearchOptions, searchDay } from '../day/search'
import { type Best, bestOf, type CommittedDay, dayOf, openDay, pricesNow, readDay, writeDay } from './committed-days'

/**
 * Writes the committed days and looks long for the best of each: `npx tsx lib/cli/renew-days.ts SHOTS FROM TO SECONDS`,
 * seconds of one core a day. What is known already, at today's rules, is only ever improved.
 */
const [shots, from, to, seconds] = process.argv.slice(2).map(Number) as [number, number, number, number]
const cpuS = () => process.cpuUsage().user / 1e6
/** A best is that of at least so many searches, each as long as the others. */
const RUNS = 2

function longSearch(day: CommittedDay | null, shots: number, seed: number, seconds: number): CommittedDay {
  const drawn = dayOf(shots, seed)
  const { problem } = openDay(drawn)
  let best: Best | null = day && bestOf(problem, day.best)
  const searchedS = best?.searchedS ?? 0
  const began = cpuS()
  const look = (options: Omit<SearchOptions, 'sweeps'>) => {
    const { draft, genes } = searchDay(problem, { sweeps: 1, ...options })
    const kept: Best = { cost: draft.cost, prices: pricesNow(), searchedS: 0, genes }
    if (!best || draft.cost < best.cost - 1e-9) best = kept
  }
  for (let run = 0; run < RUNS; run++) {
    const start = cpuS()
    const each = seconds / (RUNS + 0.5)
    look({ seed: 1000 + run + 10 * searchedS, spent: () => (cpuS() - start) / each })
  }
  // The best of them, turned over once more.
  const start = cpuS()
  const rest = seconds - (start - began)
  if (best?.genes) look({ seed: 1, from: best.genes, spent: () => (cpuS() - start) / rest })
  // Found within `look`, which the types do not follow.
  const { cost, prices, genes } = best as unknown as Best
  const found = { cost, prices, searchedS: Math.round(searchedS + cpuS() - began), genes }
  return { shots, seed, document: drawn.document, cooks: drawn.cooks, best: found }
}

for (let seed = from; seed <= to; seed++) {
  const day = longSearch(readDay(shots, seed), shots, seed, seconds)
  writeDay(day)
  console.log(shots, seed, day.best.cost.toFixed(2), `${day.best.searchedS} s`)
}
