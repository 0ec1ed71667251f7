import { tablesInShards } from '../../twins/in-shards'
import { printed } from '../../twins/table'

/** Of each kind in each family. */
const EACH = 100

/** Twins of both families: errors, coverage and baselines in one table; every bound that is missed is printed with its figure. */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const tables = await tablesInShards(seed, EACH)
  for (const table of tables) console.log(`${printed(table)}\n`)
  const figures: Record<string, number> = {}
  const round = (x: number) => Math.round(100 * x) / 100
  for (const { family, twins, seen, unseen, preFirePercent, misses } of tables) {
    figures[`${family}_twins`] = twins
    figures[`${family}_pre_fire_error_pct`] = round(preFirePercent)
    figures[`${family}_misses`] = misses.length
    for (const line of seen) {
      const at = `${family}_${line.horizonMin}min`
      figures[`${at}_mae_min`] = round(line.maeMin)
      figures[`${at}_best_baseline_min`] = round(line.bestBaseline)
      figures[`${at}_covered`] = round(line.coverage)
      figures[`${at}_slice_probe_C`] = round(line.sliceProbeMaeC)
      figures[`${at}_slice_core_C`] = round(line.sliceMaeC)
    }
    for (const line of unseen) figures[`${family}_${line.horizonMin}min_no_probe_mae_min`] = round(line.maeMin)
  }
  return figures
}
