import { tablesInShards } from './in-shards'
import { printed } from './table'
import type { Family } from './twin'

/** Of each kind. */
const EACH = 100

/** The twins of one family: errors, coverage and baselines. A bound that is missed fails, with its figure. */
export async function proveFamily(family: Family, seed: number): Promise<Record<string, number>> {
  const [table] = await tablesInShards(seed, EACH, [family])
  if (!table) throw new Error(`no table of family ${family}`)
  console.error(`${printed([table])}\n`)
  if (table.misses.length > 0) throw new Error(table.misses.join('\n'))
  const figures: Record<string, number> = {
    twins: table.twins,
    pre_fire_error_pct: rounded(table.preFirePercent),
  }
  for (const line of table.seen) {
    const at = `at_${line.horizonMin}min`
    figures[`${at}_twins`] = line.count
    figures[`${at}_mae_min`] = rounded(line.maeMin)
    figures[`${at}_best_baseline_min`] = rounded(line.bestBaseline)
    figures[`${at}_covered`] = rounded(line.coverage)
    figures[`${at}_slice_probe_C`] = rounded(line.sliceProbeMaeC)
    figures[`${at}_slice_core_C`] = rounded(line.sliceMaeC)
  }
  for (const line of table.unseen) figures[`at_${line.horizonMin}min_no_probe_mae_min`] = rounded(line.maeMin)
  return figures
}
const rounded = (x: number) => Math.round(100 * x) / 100
