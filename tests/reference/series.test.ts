import { expect, test } from 'vitest'
import { interior, NODES, radialMesh, type SkinSide, stepInterior } from '../../lib/model/conduction'
import { STEP_S } from '../../lib/model/simulate'
import { excessOf, SHAPES } from './exact'

/**
 * The interior as a cook runs it (20 nodes, steps of 30 s halved while the skin's error passes 2 °C) against the full series:
 * constant properties, convection to 160 °C from 5 °C, three sizes of roast.
 */
const START_C = 5
const AROUND_C = 160
const K = 0.45
const RHO_C = 3.5e6
const ALPHA = K / RHO_C
const RADII_M = [0.03, 0.05, 0.08]
const FOURIER = [0.05, 0.1, 0.2, 0.5, 1, 2]
const BIOT = [0.1, 0.3, 1, 3, 10, 30, 100]
/** As `lib/model/simulate.ts` has them. */
const SKIN_ERROR_K = 2
const LEAST_STEP_S = 0.5

/** Centre and skin temperatures of the model's interior with a linear skin, at the asked Fourier numbers. */
function simulated(exponent: number, Bi: number, radiusM: number): { centreC: number; skinC: number }[] {
  const h = (Bi * K) / radiusM
  const inside = interior(radialMesh(exponent, NODES), radiusM)
  inside.k.fill(K)
  inside.c.fill(RHO_C)
  const skin: SkinSide = {
    net_WpM2: 0,
    slope_WpM2K: -h,
    at(skinC) {
      this.net_WpM2 = h * (AROUND_C - skinC)
    },
  }
  let nodesC = new Float64Array(NODES).fill(START_C)
  let nextC = nodesC.slice()
  let timeS = 0
  return FOURIER.map((Fo) => {
    const untilS = (Fo * radiusM ** 2) / ALPHA
    while (timeS < untilS) {
      let stepS = Math.min(STEP_S, untilS - timeS)
      while (stepInterior(inside, nextC, nodesC, skin, stepS) > SKIN_ERROR_K && stepS > LEAST_STEP_S) stepS /= 2
      timeS = untilS - timeS - stepS < 1e-6 ? untilS : timeS + stepS
      ;[nodesC, nextC] = [nextC, nodesC]
    }
    return { centreC: nodesC[0] as number, skinC: nodesC[NODES - 1] as number }
  })
}

const ERRORS = SHAPES.flatMap((shape) => {
  const truths = BIOT.map((Bi) => excessOf(shape, Bi))
  return RADII_M.map((radiusM) => {
    const each = BIOT.flatMap((Bi, b) =>
      simulated(shape.exponent, Bi, radiusM).map(({ centreC, skinC }, i) => {
        const Fo = FOURIER[i] as number
        const exactC = (place: number) => AROUND_C + (START_C - AROUND_C) * (truths[b]?.(place, Fo) as number)
        const skinK = Math.abs(skinC - exactC(1))
        return { errorK: Math.abs(centreC - exactC(0)), skinK, where: `Bi ${Bi}, Fo ${Fo}` }
      }),
    )
    const worst = each.reduce((a, b) => (b.errorK > a.errorK ? b : a))
    const mean = each.reduce((sum, { errorK }) => sum + errorK, 0) / each.length
    const skin = Math.max(...each.map(({ skinK }) => skinK))
    const words = `${shape.name} of half thickness ${100 * radiusM} cm: worst ${worst.errorK.toFixed(4)} °C (${worst.where}), mean ${mean.toFixed(4)}, skin ${skin.toFixed(3)}`
    return { words, radiusM, count: each.length, worst: worst.errorK, skin }
  })
})

/** The thinner the roast, the fewer steps to a Fourier number: Fo 0.1 of 3 cm is twelve. */
test.each(ERRORS.map((e) => [e.words, e] as const))('%s', (_, { count, worst, skin, radiusM }) => {
  expect(count).toBe(BIOT.length * FOURIER.length)
  expect(worst).toBeLessThan(radiusM < 0.05 ? 0.035 : 0.03)
  expect(skin).toBeLessThan(0.1)
})
