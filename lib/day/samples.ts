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

/** The greatest value that at most `share` of the members lie below: nearest rank, on the safe side. */
export function safeLow(sample: Sorted, share: number): number {
  return sample[Math.floor(share * sample.length)] as number
}
/** The least value that at least `share` of the members do not lie above: nearest rank, on the safe side. */
export function safeHigh(sample: Sorted, share: number): number {
  return sample[Math.max(0, Math.ceil(share * sample.length - 1e-9) - 1)] as number
}
