/**
 * Heat in the interior of one roast: conduction along r, layers of area ~ r^n (n = 0 slab, 1 cylinder, 2 sphere, real
 * between), on nodes that crowd toward the skin. All quantities are per m² of skin.
 *
 * Time stepping is ROS2 [verwer-1999]: two linear solves with one factorisation, order 2 for any Jacobian and L-stable, so
 * that neither the jump at meat-on nor the stiff skin nodes ring. The skin's non-linear law enters through its slope.
 */

export const NODES = 20
/** Node spacing: 1 - r/R = (1 - s)^CROWDING, finer toward the skin. */
const CROWDING = 1.35
/**
 * Between storing heat at nodes (0, errors +h²/12) and by linear elements (1/6, -h²/12) the two errors cancel: at 1/12 where
 * nodes are evenly spaced, a little below where they crowd. Chosen with the spacing for the least error against
 * [exact-series]; 20 nodes then follow a sphere's core five times closer than at 0.
 */
const SHARE = 0.075
/** Of a cell's own volume: the tiny centre of a solid rounder than a sphere could not share more and stay stable. */
const MOST_SHARED = 0.8
export const GAMMA = 1 - Math.SQRT1_2

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
  /** SHARE of the volume between each node and the next: what neighbours share in storing heat. */
  readonly shared: Float64Array
}

export function radialMesh(exponent: number, count = NODES): Mesh {
  const place = new Float64Array(count)
  for (let i = 0; i < count; i++) place[i] = 1 - (1 - i / (count - 1)) ** CROWDING
  const link = new Float64Array(count)
  const cell = new Float64Array(count)
  const shared = new Float64Array(count)
  const within = (r: number) => r ** (exponent + 1) / (exponent + 1)
  let inner = 0
  for (let i = 0; i < count; i++) {
    const here = place[i] as number
    const next = place[i + 1] ?? 1
    const face = i === count - 1 ? 1 : (here + next) / 2
    const outer = within(face)
    if (i < count - 1) link[i] = face ** exponent / (next - here)
    shared[i] = (within(next) - within(here)) * SHARE
    cell[i] = outer - inner
    shared[i] = Math.min(shared[i] as number, MOST_SHARED * (cell[i] as number))
    inner = outer
  }
  return { count, exponent, place, link, cell, shared }
}

/** Properties for one step and the scratch of the solver. The caller fills `k` and `c`; the rest is overwritten. */
export interface Interior {
  readonly mesh: Mesh
  readonly halfThicknessM: number
  /** Conductivity, W/mK, and volumetric heat capacity, J/m³K, at each node. */
  readonly k: Float64Array
  readonly c: Float64Array
  /** Of the last step: links between neighbours, W/m²K, heat capacities and what neighbours share of them, J/m²K. */
  readonly link: Float64Array
  readonly heat: Float64Array
  readonly shared: Float64Array
  readonly pivot: Float64Array
  readonly lift: Float64Array
  readonly first: Float64Array
  readonly second: Float64Array
}
export function interior(mesh: Mesh, halfThicknessM: number): Interior {
  const row = () => new Float64Array(mesh.count)
  const properties = { k: row(), c: row(), link: row(), heat: row(), shared: row() }
  return { mesh, halfThicknessM, ...properties, pivot: row(), lift: row(), first: row(), second: row() }
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
 *   (M - γ dt J) a = heat(T)                M: heat capacity, neighbours sharing; J: links and the skin's slope
 *   (M - γ dt J) b = heat(T + dt a) - 2 M a
 *   T' = T + dt (3 a + b) / 2
 *
 * @param nextC   length N, °C, centre first. Overwritten; the caller owns both rows.
 * @param nodesC  length N, °C. Read only.
 * @param stepS   s; any size is stable for conduction. A skin law that bends sharply within the step shows in the error.
 *
 * Returns how far the skin is from the first-order answer, K: the embedded error estimate.
 *
 * Valid: conduction only, properties constant over the step (evaluate them at its middle for order 2).
 * Accuracy: within 0.03 °C of the full series from 5 cm of half thickness on, order 2: tests/reference/{series,order}.test.ts.
 */
export function stepInterior(
  inside: Interior,
  nextC: Float64Array,
  nodesC: Float64Array,
  skin: SkinSide,
  stepS: number,
): number {
  const last = inside.mesh.count - 1
  skin.at(nodesC[last] as number, 0)
  sweepUp(inside, nodesC, skin, stepS)
  sweepDown(inside, inside.first, nextC, nodesC, stepS)
  const firstOrderC = nextC[last] as number
  skin.at(firstOrderC, 1)
  sweepUpAgain(inside, nextC, skin.net_WpM2)
  sweepDown(inside, inside.second, nextC, nodesC, 0.5 * stepS)
  for (let i = 0; i <= last; i++) nextC[i] = (nextC[i] as number) + 1.5 * stepS * (inside.first[i] as number)
  return Math.abs((nextC[last] as number) - firstOrderC)
}

/** First stage, centre to skin: links and capacities, factorisation of M - γ dt J, elimination of heat(T). */
function sweepUp(inside: Interior, tempC: Float64Array, skin: SkinSide, stepS: number) {
  const { halfThicknessM, k, c, link, heat, shared, pivot, lift, first } = inside
  const { link: unitLink, cell, shared: unitShared } = inside.mesh
  const last = inside.mesh.count - 1
  const damp = GAMMA * stepS
  const perThickness = 0.5 / halfThicknessM
  let coupledBelow = 0
  let fromBelow = 0
  let eliminated = 0
  let carried = 0
  let kHere = k[0] as number
  let cHere = c[0] as number
  let tHere = tempC[0] as number
  for (let i = 0; i < last; i++) {
    const cAbove = c[i + 1] as number
    const kAbove = k[i + 1] as number
    const tAbove = tempC[i + 1] as number
    const above = (kHere + kAbove) * (unitLink[i] as number) * perThickness
    const toAbove = above * (tHere - tAbove)
    const capacity = cHere * (cell[i] as number) * halfThicknessM
    const share = Math.min(cHere, cAbove) * (unitShared[i] as number) * halfThicknessM
    const coupled = damp * above - share
    const inverse = 1 / (capacity + coupledBelow + coupled - eliminated)
    const ratio = coupled * inverse
    const right = fromBelow - toAbove + carried
    link[i] = above
    heat[i] = capacity
    shared[i] = share
    pivot[i] = inverse
    lift[i] = ratio
    first[i] = right
    eliminated = coupled * ratio
    carried = ratio * right
    coupledBelow = coupled
    fromBelow = toAbove
    kHere = kAbove
    cHere = cAbove
    tHere = tAbove
  }
  const capacity = cHere * (cell[last] as number) * halfThicknessM
  heat[last] = capacity
  pivot[last] = 1 / (capacity + coupledBelow - damp * skin.slope_WpM2K - eliminated)
  first[last] = fromBelow + skin.net_WpM2 + carried
}

/** Second stage, centre to skin, with the factorisation of the first. */
function sweepUpAgain(inside: Interior, tempC: Float64Array, skinHeat: number) {
  const { link, heat, shared, lift, first, second } = inside
  const last = inside.mesh.count - 1
  let fromBelow = 0
  let carried = 0
  let tHere = tempC[0] as number
  let rateHere = first[0] as number
  for (let i = 0; i < last; i++) {
    const tAbove = tempC[i + 1] as number
    const rateAbove = first[i + 1] as number
    const toAbove = (link[i] as number) * (tHere - tAbove) + 2 * (shared[i] as number) * (rateAbove - rateHere)
    const right = fromBelow - toAbove - 2 * (heat[i] as number) * rateHere + carried
    second[i] = right
    carried = (lift[i] as number) * right
    fromBelow = toAbove
    tHere = tAbove
    rateHere = rateAbove
  }
  second[last] = fromBelow + skinHeat - 2 * (heat[last] as number) * rateHere + carried
}

/** Skin to centre: substitutes `rates` back in place, and adds `stepS` of them to the temperatures. */
function sweepDown(inside: Interior, rates: Float64Array, nextC: Float64Array, nodesC: Float64Array, stepS: number) {
  const { pivot, lift } = inside
  const last = inside.mesh.count - 1
  let above = 0
  for (let i = last; i >= 0; i--) {
    above = (rates[i] as number) * (pivot[i] as number) + (i === last ? 0 : (lift[i] as number) * above)
    rates[i] = above
    nextC[i] = (nodesC[i] as number) + stepS * above
  }
}
