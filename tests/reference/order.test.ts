import { describe, expect, test } from 'vitest'
import { interior, radialMesh, type SkinSide, stepInterior } from '../../lib/model/conduction'

/**
 * Order of convergence on a manufactured solution that is smooth in space and time, the skin's heat changing with time:
 *
 *   T(r, t) = T0 + A e^(st) g(r),  g'' + (n/r) g' = (s/α) g,  g(0) = 1,  so  g = Σ c_k x^2k,  c_k = c_(k-1) / (2k (2k - 1 + n))
 *
 * with x = r √(s/α): cosh, I0 and sinh(x)/x for n = 0, 1 and 2, and as smooth for the real n of a roast.
 */
const RADIUS_M = 0.05
const K = 0.45
const RHO_C = 3.5e6
const S = (3 * K) / RHO_C / RADIUS_M ** 2
const START_C = 5
const RISE_K = 20
const END_S = 3600

function modeAt(n: number, rM: number): { value: number; slopePerM: number } {
  const root = Math.sqrt((S * RHO_C) / K)
  const x = rM * root
  let [c, value, slope] = [1, 1, 0]
  for (let k = 1; k < 40; k++) {
    c /= 2 * k * (2 * k - 1 + n)
    value += c * x ** (2 * k)
    slope += 2 * k * c * x ** (2 * k - 1)
  }
  return { value, slopePerM: slope * root }
}
const exactC = (n: number, rM: number, timeS: number) => START_C + RISE_K * Math.exp(S * timeS) * modeAt(n, rM).value

/** The interior after an hour of the manufactured heat, with a film beside it whose slope the solver must follow. */
function simulated(n: number, nodes: number, steps: number): Float64Array {
  const inside = interior(radialMesh(n, nodes), RADIUS_M)
  inside.k.fill(K)
  inside.c.fill(RHO_C)
  const stepS = END_S / steps
  let startS = 0
  const h = 10
  const skin: SkinSide = {
    net_WpM2: 0,
    slope_WpM2K: -h,
    at(skinC, end) {
      const timeS = startS + end * stepS
      const flux = K * RISE_K * Math.exp(S * timeS) * modeAt(n, RADIUS_M).slopePerM
      this.net_WpM2 = flux + h * (exactC(n, RADIUS_M, timeS) - skinC)
    },
  }
  let nodesC = inside.mesh.place.map((place) => exactC(n, place * RADIUS_M, 0))
  let nextC = nodesC.slice()
  for (let i = 0; i < steps; i++) {
    stepInterior(inside, nextC, nodesC, skin, stepS)
    startS += stepS
    ;[nodesC, nextC] = [nextC, nodesC]
  }
  return nodesC
}
const centreErrorK = (n: number, nodes: number, steps: number) =>
  Math.abs((simulated(n, nodes, steps)[0] as number) - exactC(n, 0, END_S))

const EXPONENTS = [0, 0.6, 1, 1.4, 2]
const slope = (coarse: number, fine: number) => Math.log2(coarse / fine)

/** Steps of a second leave the error of space; against the same nodes at steps of a second only that of time is left. */
const IN_SPACE = EXPONENTS.map((n) => {
  // one node less is one interval: 10, 20 and 40 of them
  const [a, b, c] = [11, 21, 41].map((nodes) => centreErrorK(n, nodes, 3600)) as [number, number, number]
  return { n, errors: [a, b, c], order: Math.min(slope(a, b), slope(b, c)) }
})
const IN_TIME = EXPONENTS.map((n) => {
  const settled = simulated(n, 41, 3600)[0] as number
  const [a, b, c] = [30, 60, 120].map((steps) => Math.abs((simulated(n, 41, steps)[0] as number) - settled)) as [
    number,
    number,
    number,
  ]
  return { n, errors: [a, b, c], order: Math.min(slope(a, b), slope(b, c)) }
})
const told = (list: typeof IN_SPACE) =>
  list.map(
    (e) =>
      [
        `n ${e.n}: order ${e.order.toFixed(2)}, errors ${e.errors.map((x) => x.toExponential(1)).join(' ')} °C`,
        e,
      ] as const,
  )

describe('order in space, 10 to 20 to 40 intervals', () => {
  test.each(told(IN_SPACE))('%s', (_, { order }) => expect(order).toBeGreaterThanOrEqual(1.9))
})
describe('order in time, steps of 120 to 60 to 30 s', () => {
  test.each(told(IN_TIME))('%s', (_, { order }) => expect(order).toBeGreaterThanOrEqual(1.9))
})
