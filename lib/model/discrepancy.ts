/** What the model as a whole leaves out while it cooks: a Gaussian process on top of the probe, Matérn-3/2. */
import { cholesky, dot, forward, solve } from './dense'

/** [own-trial] */
const DISCREPANCY_SD_K = 0.5
const DISCREPANCY_S = 1800
/** A reading's own error: a thermometer that shows tenths, and flicker. [estimate] */
const READING_SD_K = 0.1

export function matern(apartS: number, sdK = DISCREPANCY_SD_K, lengthS = DISCREPANCY_S): number {
  const x = (Math.sqrt(3) * Math.abs(apartS)) / lengthS
  return sdK * sdK * (1 + x) * Math.exp(-x)
}

/** The process as readings at some times tell of it. */
export class Discrepancy {
  readonly lower: Float64Array
  constructor(private readonly timesS: readonly number[]) {
    const n = timesS.length
    const s = new Float64Array(n * n)
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        s[i * n + j] = matern((timesS[i] as number) - (timesS[j] as number)) + (i === j ? READING_SD_K ** 2 : 0)
    this.lower = cholesky(s, n)
  }
  /** What is left over, in units in which it should be standard normal. */
  whiten = (leftK: Float64Array) => forward(this.lower, this.timesS.length, leftK)
  private toward = (timeS: number) => Float64Array.from(this.timesS, (t) => matern(timeS - t))
  /** Weights of what is left over at the readings for the mean at a time, and the variance that stays. */
  at(timeS: number): { weights: Float64Array; varianceK2: number } {
    const k = this.toward(timeS)
    const weights = solve(this.lower, k.length, k)
    return { weights, varianceK2: Math.max(0, matern(0) - dot(k, weights)) }
  }
  /** Covariance that stays between two times. */
  between(timeS: number, { weights }: { weights: Float64Array }, otherS: number): number {
    return matern(timeS - otherS) - dot(this.toward(timeS), weights)
  }
}
