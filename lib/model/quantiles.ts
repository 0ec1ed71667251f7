/** Quantiles of members: windows of moments, spreads of values. */
import { frac, seconds } from '../units'
import type { Spread, Window } from './forecast'

/** Linear between order statistics; +Infinity (never) counts as later than every time. */
export function quantileOf(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1)
  const low = Math.floor(at)
  const part = at - low
  const a = sorted[low] as number
  return part === 0 || a === Infinity ? a : a + part * ((sorted[low + 1] as number) - a)
}
export const sortedCopy = (samples: Float64Array) => Float64Array.from(samples).sort()

export function windowOf(samples: Float64Array): Window {
  const sorted = sortedCopy(samples)
  const at = (share: number) => {
    const q = quantileOf(sorted, share)
    return Number.isFinite(q) ? seconds(q) : null
  }
  const reached = sorted.reduce((n, t) => n + (t < Infinity ? 1 : 0), 0) / sorted.length
  return { early: at(0.05), likely: at(0.5), late: at(0.95), q10: at(0.1), q90: at(0.9), reached: frac(reached) }
}

/** The 5, 50 and 95 % quantiles of a finite sample. */
export function spreadOf<Q extends number = number>(samples: Float64Array): Spread<Q> {
  const sorted = sortedCopy(samples)
  return {
    low: quantileOf(sorted, 0.05) as Q,
    likely: quantileOf(sorted, 0.5) as Q,
    high: quantileOf(sorted, 0.95) as Q,
  }
}
export const medianOf = (samples: Float64Array) => quantileOf(sortedCopy(samples), 0.5)
