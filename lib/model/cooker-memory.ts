/** What logged cooks have taught of one cooker. What it does to the next forecast: `memory-prior.ts`; how it is learnt: `memory.ts`. */

/** A middle and a standard deviation. */
export interface Belief {
  readonly mean: number
  readonly sd: number
}
export interface CookerMemory {
  /** How many logged cooks it is from. */
  readonly cooks: number
  /** At the meat against the dial, K. */
  readonly level: Belief
  /** Logarithm of how much longer a roast takes in it than elsewhere at the same heat. */
  readonly pace: Belief
  /** Correlation of the two: a hotter level and a slower pace stand for each other. */
  readonly tie?: number | undefined
  /** From the match to steady, s. */
  readonly warmUp?: Belief | undefined
}
