/** One process's share of the twins; `in-shards.ts` starts it. */
import type { Share } from './in-shards'
import { scored } from './table'
import { TWIN_KINDS } from './twin'

process.once('message', ({ families, seed, each, shard, of }: Share) => {
  const all = families.flatMap((family) =>
    TWIN_KINDS.flatMap((kind) => Array.from({ length: each }, (_, n) => ({ family, kind, n }))),
  )
  const own = all.filter((_, i) => i % of === shard)
  process.send?.(own.map(({ family, kind, n }) => scored(family, kind, n, seed)))
})
