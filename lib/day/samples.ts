/** A sorted sample as a distribution; +Infinity stands for "never" and lies after every time. */
export type Sorted = Float64Array

export const sorted = (sample: ArrayLike<number>): Sorted => Float64Array.from(sample).sort()

/** How many values lie below x. */
export function countBelow(sample: Sorted, x: number): number {
  let low = 0
  let high = sample.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sample[middle] as number) < x) low = middle + 1
    else high = middle
  }
  return low
}
export const shareBelow = (sample: Sorted, x: number) => countBelow(sample, x) / sample.length

/** Linear between order statistics; +Infinity where the rank falls among those that never come. */
export function quantile(sample: Sorted, p: number): number {
  const rank = (sample.length - 1) * p
  const low = sample[Math.floor(rank)] as number
  const high = sample[Math.ceil(rank)] as number
  return low === high ? low : low + (high - low) * (rank - Math.floor(rank))
}

/** The greatest value that at most `share` of the members lie below: nearest rank, on the safe side. */
export function safeLow(sample: Sorted, share: number): number {
  return sample[Math.floor(share * sample.length)] as number
}
