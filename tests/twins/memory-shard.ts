/** One process's share of the cookers. */
import { guessesOf } from './memory-days'

export interface MemoryShare {
  readonly seed: number
  readonly cookers: number
  readonly shard: number
  readonly of: number
}
process.once('message', ({ seed, cookers, shard, of }: MemoryShare) => {
  const own = Array.from({ length: cookers }, (_, n) => n).filter((n) => n % of === shard)
  process.send?.(own.flatMap((n) => guessesOf(seed, n)))
})
