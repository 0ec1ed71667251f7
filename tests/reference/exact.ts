/**
 * Exact solutions of conduction in slab, cylinder and sphere, from the eigenvalues with as many terms as it takes, and of
 * finite solids as their products. [exact-series] Nothing is shared with the model.
 */

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

export interface Shape {
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
export const SHAPES: readonly Shape[] = [
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

/** Enough for Fo 0.02: the last term is below 1e-40. */
const TERMS = 24
/** Share of the first excess over the surroundings that is left at r/R and Fo, for surroundings at 0. */
export function excessOf(shape: Shape, Bi: number) {
  const zetas = eigenvalues(shape, Bi, TERMS)
  const weights = zetas.map(shape.weight)
  return (place: number, Fo: number) =>
    zetas.reduce((sum, z, i) => sum + (weights[i] as number) * Math.exp(-z * z * Fo) * shape.mode(z, place), 0)
}

export const [SLAB, CYLINDER, SPHERE] = SHAPES as [Shape, Shape, Shape]
export type Part = readonly [shape: Shape, halfM: number]
/** The same at the centre of a solid that is the meeting of several, each with its own half side, at slip = k/h (m). */
export function centreOfProduct(parts: readonly Part[], slipM: number) {
  const each = parts.map(([shape, halfM]) => [excessOf(shape, halfM / slipM), halfM] as const)
  return (timeAlphaM2: number) =>
    each.reduce((product, [excess, halfM]) => product * excess(0, timeAlphaM2 / halfM ** 2), 1)
}
