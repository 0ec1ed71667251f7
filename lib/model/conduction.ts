/**
 * Heat in the interior of one roast: conduction along r, layers of area ~ r^n (n = 0 slab, 1 cylinder, 2 sphere, real
 * between), on nodes that crowd toward the skin. All quantities are per m² of skin.
 *
 * Time stepping is ROS2 [verwer-1999]: two linear solves with one factorisation, order 2 for any Jacobian and L-stable, so
 * that neither the jump at meat-on nor the stiff skin nodes ring. The skin's non-linear law enters through its slope.
 */

export const NODES = 20
/** Node spacing: 1 - r/R = (1 - s)^CROWDING. 1.6 serves the core and the first millimetres alike. */
const CROWDING = 1.6
const GAMMA = 1 - Math.SQRT1_2

/** A column of nodes of unit half thickness, centre first, skin last. */
export interface Mesh {
  readonly count: number
  readonly exponent: number
  /** r/R of each node. */
  readonly place: Float64Array
  /** Area over distance of the face above each node, with unit half thickness; the last is 0. */
  readonly link: Float64Array
  /** Volume of each node's cell, with unit half thickness; they sum to 1/(n + 1). */
  readonly cell: Float64Array
}

export function radialMesh(exponent: number, count = NODES): Mesh {
  const place = new Float64Array(count)
  for (let i = 0; i < count; i++) place[i] = 1 - (1 - i / (count - 1)) ** CROWDING
  const link = new Float64Array(count)
  const cell = new Float64Array(count)
  let inner = 0
  for (let i = 0; i < count; i++) {
    const here = place[i] as number
    const next = place[i + 1] ?? 1
    const face = i === count - 1 ? 1 : (here + next) / 2
    const outer = face ** (exponent + 1) / (exponent + 1)
    if (i < count - 1) link[i] = face ** exponent / (next - here)
    cell[i] = outer - inner
    inner = outer
  }
  return { count, exponent, place, link, cell }
}

/** Properties for one step and the scratch of the solver. The caller fills `k` and `c`; the rest is overwritten. */
export interface Interior {
  readonly mesh: Mesh
  readonly halfThicknessM: number
  /** Conductivity, W/mK, and volumetric heat capacity, J/m³K, at each node. */
  readonly k: Float64Array
  readonly c: Float64Array
  readonly flow: Float64Array
  readonly heat: Float64Array
  readonly pivot: Float64Array
  readonly lift: Float64Array
  readonly first: Float64Array
  readonly second: Float64Array
}
export function interior(mesh: Mesh, halfThicknessM: number): Interior {
  const row = () => new Float64Array(mesh.count)
  return {
    mesh,
    halfThicknessM,
    k: row(),
    c: row(),
    flow: row(),
    heat: row(),
    pivot: row(),
    lift: row(),
    first: row(),
    second: row(),
  }
}

/** Net heat into the skin, W/m², at a skin temperature, at the start (0) or the end (1) of the step, with its slope. */
export interface SkinSide {
  net_WpM2: number
  slope_WpM2K: number
  at(skinC: number, end: 0 | 1): void
}

/**
 * Advances the interior by one time step.
 *
 * @param nextC   length N, °C, centre first. Overwritten; the caller owns both rows.
 * @param nodesC  length N, °C. Read only.
 * @param stepS   s; any size is stable.
 *
 * Valid: conduction only, properties constant over the step (evaluate them at its middle for order 2).
 * Accuracy: gates `series/*` in tests/reference/series.test.ts.
 */
export function stepInterior(
  inside: Interior,
  nextC: Float64Array,
  nodesC: Float64Array,
  skin: SkinSide,
  stepS: number,
) {
  const { first, second } = inside
  const count = inside.mesh.count
  const last = count - 1
  skin.at(nodesC[last] as number, 0)
  factorise(inside, stepS, skin.slope_WpM2K)
  netHeat(inside, first, nodesC, skin.net_WpM2)
  solve(inside, first)
  for (let i = 0; i < count; i++) nextC[i] = (nodesC[i] as number) + stepS * (first[i] as number)
  skin.at(nextC[last] as number, 1)
  netHeat(inside, second, nextC, skin.net_WpM2)
  const { heat } = inside
  for (let i = 0; i < count; i++) second[i] = (second[i] as number) - 2 * (heat[i] as number) * (first[i] as number)
  solve(inside, second)
  for (let i = 0; i < count; i++)
    nextC[i] = (nodesC[i] as number) + stepS * (1.5 * (first[i] as number) + 0.5 * (second[i] as number))
}

/** Thomas factorisation of C - γ dt J; also fills the links (W/m²K) and heat capacities (J/m²K) of this step. */
function factorise(inside: Interior, stepS: number, skinSlope: number) {
  const { mesh, halfThicknessM, k, c, flow, heat, pivot, lift } = inside
  const last = mesh.count - 1
  const damp = GAMMA * stepS
  let below = 0
  let carried = 0
  for (let i = 0; i <= last; i++) {
    const capacity = (c[i] as number) * (mesh.cell[i] as number) * halfThicknessM
    const above =
      i === last ? 0 : (((k[i] as number) + (k[i + 1] as number)) * (mesh.link[i] as number)) / (2 * halfThicknessM)
    const diagonal = capacity + damp * (below + above - (i === last ? skinSlope : 0)) - carried
    const inverse = 1 / diagonal
    pivot[i] = inverse
    lift[i] = damp * above * inverse
    carried = damp * above * damp * above * inverse
    flow[i] = above
    heat[i] = capacity
    below = above
  }
}

/** Heat flowing into each cell, W/m², at the given temperatures. */
function netHeat(inside: Interior, out: Float64Array, tempC: Float64Array, skinHeat: number) {
  const { flow } = inside
  const last = inside.mesh.count - 1
  let fromBelow = 0
  for (let i = 0; i < last; i++) {
    const toAbove = (flow[i] as number) * ((tempC[i] as number) - (tempC[i + 1] as number))
    out[i] = fromBelow - toAbove
    fromBelow = toAbove
  }
  out[last] = fromBelow + skinHeat
}

/** Solves in place with the current factorisation. */
function solve(inside: Interior, row: Float64Array) {
  const { pivot, lift } = inside
  const last = inside.mesh.count - 1
  for (let i = 1; i <= last; i++) row[i] = (row[i] as number) + (lift[i - 1] as number) * (row[i - 1] as number)
  let above = (row[last] as number) * (pivot[last] as number)
  row[last] = above
  for (let i = last - 1; i >= 0; i--) {
    above = (row[i] as number) * (pivot[i] as number) + (lift[i] as number) * above
    row[i] = above
  }
}
