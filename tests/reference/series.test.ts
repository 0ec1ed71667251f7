import { expect, test } from 'vitest'
import { interior, radialMesh, type SkinSide, stepInterior } from '../../lib/model/conduction'

/**
 * The interior against the full series of slab, cylinder and sphere (constant properties, convection to 160 °C from 5 °C).
 * The truth is computed here from the eigenvalues, with as many terms as it takes; nothing is shared with the model.
 */
const START_C = 5
const AROUND_C = 160
const RADIUS_M = 0.05
const K = 0.45
const RHO_C = 3.5e6
const ALPHA = K / RHO_C
const STEP_S = 10
const FOURIER = [0.02, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2]
const BIOT = [0.1, 1, 10, 100]

/** J_order(z) by Bessel's integral; the periodic trapezoid rule converges faster than any power. */
function bessel(order: number, z: number) {
  const points = 400
  let sum = 0
  for (let i = 0; i < points; i++) {
    const angle = (2 * Math.PI * (i + 0.5)) / points
    sum += Math.cos(order * angle - z * Math.sin(angle))
  }
  return sum / points
}

interface Shape {
  readonly name: string
  readonly exponent: 0 | 1 | 2
  /** Zero at the eigenvalues; each interval of length π from `from` holds one. */
  readonly condition: (z: number, Bi: number) => number
  readonly from: number
  readonly weight: (z: number) => number
  /** The eigenfunction at r/R. */
  readonly mode: (z: number, place: number) => number
}
const sinc = (x: number) => (x === 0 ? 1 : Math.sin(x) / x)
const SHAPES: readonly Shape[] = [
  {
    name: 'slab',
    exponent: 0,
    condition: (z, Bi) => z * Math.sin(z) - Bi * Math.cos(z),
    from: 0,
    weight: (z) => (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z)),
    mode: (z, place) => Math.cos(z * place),
  },
  {
    name: 'cylinder',
    exponent: 1,
    condition: (z, Bi) => z * bessel(1, z) - Bi * bessel(0, z),
    from: 0,
    weight: (z) => (2 / z) * (bessel(1, z) / (bessel(0, z) ** 2 + bessel(1, z) ** 2)),
    mode: (z, place) => bessel(0, z * place),
  },
  {
    name: 'sphere',
    exponent: 2,
    condition: (z, Bi) => (1 - Bi) * Math.sin(z) - z * Math.cos(z),
    from: 0,
    weight: (z) => (4 * (Math.sin(z) - z * Math.cos(z))) / (2 * z - Math.sin(2 * z)),
    mode: (z, place) => sinc(z * place),
  },
]

/** The first positive roots, found by sign changes on a fine grid and bisection. */
function eigenvalues({ condition }: Shape, Bi: number, count: number): number[] {
  const roots: number[] = []
  const pace = 0.02
  for (let z = 1e-6; roots.length < count; z += pace) {
    let [low, high] = [z, z + pace]
    if (condition(low, Bi) * condition(high, Bi) > 0) continue
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (condition(low, Bi) * condition(middle, Bi) <= 0) high = middle
      else low = middle
    }
    roots.push((low + high) / 2)
  }
  return roots
}

function series(shape: Shape, Bi: number) {
  const zetas = eigenvalues(shape, Bi, 24)
  const weights = zetas.map(shape.weight)
  return (place: number, Fo: number) => {
    const excess = zetas.reduce(
      (sum, z, i) => sum + (weights[i] as number) * Math.exp(-z * z * Fo) * shape.mode(z, place),
      0,
    )
    return AROUND_C + (START_C - AROUND_C) * excess
  }
}

/** The model's interior with a linear skin; temperatures at the asked Fourier numbers. */
function simulated(exponent: number, Bi: number): { centreC: number; skinC: number }[] {
  const h = (Bi * K) / RADIUS_M
  const inside = interior(radialMesh(exponent), RADIUS_M)
  inside.k.fill(K)
  inside.c.fill(RHO_C)
  const skin: SkinSide = {
    net_WpM2: 0,
    slope_WpM2K: -h,
    at(skinC) {
      this.net_WpM2 = h * (AROUND_C - skinC)
    },
  }
  let nodesC = new Float64Array(inside.mesh.count).fill(START_C)
  let nextC = nodesC.slice()
  let timeS = 0
  return FOURIER.map((Fo) => {
    const untilS = (Fo * RADIUS_M ** 2) / ALPHA
    const steps = Math.ceil((untilS - timeS) / STEP_S)
    for (let i = 0; i < steps; i++) {
      stepInterior(inside, nextC, nodesC, skin, (untilS - timeS) / steps)
      ;[nodesC, nextC] = [nextC, nodesC]
    }
    timeS = untilS
    return { centreC: nodesC[0] as number, skinC: nodesC.at(-1) as number }
  })
}

for (const shape of SHAPES)
  for (const Bi of BIOT)
    test(`series: ${shape.name} at Bi ${Bi}, centre and skin at ${FOURIER.length} times, within 0.1 °C`, () => {
      const truth = series(shape, Bi)
      const worst = simulated(shape.exponent, Bi).map(({ centreC, skinC }, i) => {
        const Fo = FOURIER[i] as number
        return Math.max(Math.abs(centreC - truth(0, Fo)), Math.abs(skinC - truth(1, Fo)))
      })
      for (const error of worst) expect(error).toBeLessThan(0.1)
    })
