/**
 * The member that fits the readings best, and how far others may lie from it:
 *
 *   min over u of |L⁻¹ (y - f(z0 + D u))|² + |u|²       u: standard normal before the readings; L Lᵀ: discrepancy and noise
 *
 * by Gauss-Newton, slopes from one member beside another, all at once. About the least the members are Gaussian:
 * covariance (I + JᵀS⁻¹J)⁻¹ (Laplace). Where readings tell nothing a member stays as it was drawn.
 */
import { cholesky, dot, inverseRootOnePlus, solve, times } from './dense'
import type { Discrepancy } from './discrepancy'

export interface Problem {
  /** Centre and spread of each parameter before the readings. */
  readonly centre: Float64Array
  readonly spread: Float64Array
  readonly readC: Float64Array
  readonly discrepancy: Discrepancy
  /** What the probe reads at the readings' times, for each of some parameter sets. */
  readonly simulate: (sets: readonly Float64Array[]) => readonly Float64Array[]
  /** Where to begin: the last fit. */
  readonly from?: Float64Array | undefined
}
export interface MapFit {
  /** In standard deviations before the readings. */
  readonly u: Float64Array
  /** Root of the covariance that is left, symmetric. */
  readonly root: Float64Array
  /** Readings less the best member's, K. */
  readonly leftK: Float64Array
  /** d probe / d u at the readings, a row for each parameter. */
  readonly slopes: readonly Float64Array[]
  readonly rounds: number
  /** Least of the sum above, over the readings. */
  readonly misfit: number
}

const SLOPE_STEP = 0.3
const MOST_ROUNDS = 6
/** No parameter goes further in one round, nor ever further out. */
const MOST_STEP = 2
const FURTHEST = 4
const SETTLED = 0.05
/** Levenberg's: the whole step, and shorter ones that turn toward steepest descent, side by side. */
const DAMPINGS = [0, 1, 4, 16, 64, 256, 1024]

export function fitMap(problem: Problem): MapFit {
  const n = problem.centre.length
  let u: Float64Array = problem.from?.length === n ? problem.from.slice() : new Float64Array(n)
  let around = lookAround(problem, u)
  let cost = costOf(problem, u, around.leftK)
  let rounds = 0
  let root = rootOf(around.white, n)
  while (rounds < MOST_ROUNDS) {
    rounds++
    const tries = DAMPINGS.map((damping) => {
      const step = stepOf(u, around, n, damping)
      return u.map((x, i) => clamp(x + (step[i] as number), FURTHEST))
    })
    const lefts = simulated(problem, tries)
    const costs = lefts.map((left, i) => costOf(problem, tries[i] as Float64Array, left))
    const best = costs.indexOf(Math.min(...costs))
    if (!((costs[best] as number) < cost)) break
    const next = tries[best] as Float64Array
    const moved = next.reduce((most, x, i) => Math.max(most, Math.abs(x - (u[i] as number))), 0)
    u = next
    const gained = cost - (costs[best] as number)
    cost = costs[best] as number
    around = lookAround(problem, u)
    root = rootOf(around.white, n)
    if (moved < SETTLED || gained < SETTLED) break
  }
  return { u, root, leftK: around.leftK, slopes: around.slopes, rounds, misfit: cost }
}

const clamp = (x: number, most: number) => Math.max(-most, Math.min(most, x))
const setOf = ({ centre, spread }: Problem, u: Float64Array) =>
  u.map((x, i) => (centre[i] as number) + (spread[i] as number) * x)
const simulated = (problem: Problem, us: readonly Float64Array[]) =>
  problem.simulate(us.map((u) => setOf(problem, u))).map((f) => problem.readC.map((y, j) => y - (f[j] as number)))

interface Around {
  readonly leftK: Float64Array
  readonly slopes: readonly Float64Array[]
  /** Slopes and what is left over, whitened. */
  readonly white: readonly Float64Array[]
  readonly whiteLeft: Float64Array
}
/** The best member so far and one beside it in each direction. */
function lookAround(problem: Problem, u: Float64Array): Around {
  const beside = Array.from(u, (_, i) => {
    const moved = u.slice()
    // toward the middle, so that no parameter is looked at beyond where it may go
    moved[i] = (u[i] as number) + sideOf(u[i] as number)
    return moved
  })
  const [leftK, ...others] = simulated(problem, [u, ...beside]) as [Float64Array, ...Float64Array[]]
  const slopes = others.map((other, i) => {
    const by = sideOf(u[i] as number)
    return other.map((left, j) => ((leftK[j] as number) - left) / by)
  })
  const { discrepancy } = problem
  return { leftK, slopes, white: slopes.map(discrepancy.whiten), whiteLeft: discrepancy.whiten(leftK) }
}
const sideOf = (u: number) => (u > 0 ? -SLOPE_STEP : SLOPE_STEP)

const costOf = ({ discrepancy }: Problem, u: Float64Array, leftK: Float64Array) => {
  const white = discrepancy.whiten(leftK)
  return dot(white, white) + dot(u, u)
}
const gramOf = (white: readonly Float64Array[], n: number) => {
  const gram = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) gram[i * n + j] = dot(white[i] as Float64Array, white[j] as Float64Array)
  return gram
}
const rootOf = (white: readonly Float64Array[], n: number) => inverseRootOnePlus(gramOf(white, n), n)

function stepOf(u: Float64Array, { white, whiteLeft }: Around, n: number, damping: number): Float64Array {
  const normal = gramOf(white, n)
  for (let i = 0; i < n; i++) normal[i * n + i] = (normal[i * n + i] as number) + 1 + damping
  const right = Float64Array.from(white, (row, i) => dot(row, whiteLeft) - (u[i] as number))
  const step = solve(cholesky(normal, n), n, right)
  // shortened as a whole: cut short one by one, a step goes astray
  const longest = step.reduce((most, x) => Math.max(most, Math.abs(x)), 0)
  return step.map((x) => x * Math.min(1, MOST_STEP / longest))
}

/** A member drawn anew: near the best one where the readings tell, as it was drawn where they do not. */
export const drawnAbout = ({ u, root }: MapFit, own: Float64Array): Float64Array => {
  const off = times(root, u.length, own)
  return u.map((x, i) => clamp(x + (off[i] as number), FURTHEST + 1))
}
