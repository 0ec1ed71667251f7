import { chanceOf } from '../../../lib/model/random'

/** Seeded choices of one case: the same seed and number give the same request, whatever was sent before. */
export interface Draw {
  readonly uniform: () => number
  readonly chance: (share: number) => boolean
  readonly below: (n: number) => number
  readonly one: <T>(list: readonly T[]) => T
}

export function drawOf(seed: number, number: number): Draw {
  const { uniform } = chanceOf(seed, number, 7)
  const below = (n: number) => Math.floor(uniform() * n)
  const one = <T>(list: readonly T[]): T => {
    if (list.length === 0) throw new Error('Nothing to choose from.')
    return list[below(list.length)] as T
  }
  return { uniform, chance: (share) => uniform() < share, below, one }
}
