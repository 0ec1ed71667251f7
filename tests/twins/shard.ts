/** One process's share of the twins; `in-shards.ts` starts it. */
import type { Share } from './in-shards'
import { scored } from './table'
import { FAMILIES, TWIN_KINDS } from './twin'

process.once('message', ({ seed, each, shard, of }: Share) => {
  const all = FAMILIES.flatMap((family) =>
    TWIN_KINDS.flatMap((kind) => Array.from({ length: each }, (_, n) => ({ family, kind, n }))),
  )
  const own = all.filter((_, i) => i % of === shard)
  process.send?.(own.map(({ family, kind, n }) => scored(family, kind, n, seed)))
})
