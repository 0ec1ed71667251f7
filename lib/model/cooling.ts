/** How cooked meat cools: a whole roast or a slab of it, in a refrigerator or an ice bath, by the same conduction as the roast's. */
import { type Interior, interior, radialMesh, type SkinSide, stepInterior } from './conduction'
import type { PropertyTable } from './materials'
import type { Radial } from './shape'
import { PRIORS } from './spread'

export interface Chill {
  readonly id: 'fridge' | 'ice-bath'
  readonly airC: number
  /** Convection and radiation together, W/m²K. */
  readonly h_WpM2K: number
}
/**
 * [estimate] still air of a home refrigerator at 4 °C, air all round the piece; ± 2 W/m²K. Nothing evaporates: it lies
 * covered, which is the slower side.
 */
export const FRIDGE: Chill = { id: 'fridge', airC: 4, h_WpM2K: 8 }
/** [estimate] a bag in ice and water, stirred now and then; ± 50 W/m²K. */
export const ICE_BATH: Chill = { id: 'ice-bath', airC: 0, h_WpM2K: 100 }

/** The 1-D stand-in of what cools and its temperatures, evenly spaced or not: `placeC` gives °C at r/R. */
export interface Piece {
  readonly radial: Radial
  readonly table: PropertyTable
  readonly atPlaceC: (place: number) => number
}
/** A slab that loses heat on both faces. */
export const slab = (table: PropertyTable, thicknessM: number, tempC: number): Piece => ({
  radial: { radiusM: thicknessM / 2, exponent: 0 },
  table,
  atPlaceC: () => tempC,
})

/** Steps of a cooling run. L-stable, and nothing in it is faster than minutes. */
const STEP_S = 240
const LONGEST_S = 96 * 3600

/** The hottest point's temperatures, STEP_S apart, from the moment it is put to cool until it has come to `downToC`. */
export interface CoolingCourse {
  readonly hottestC: readonly number[]
  readonly stepS: number
}
/** A run may be given up `withinS` after the hottest point has come to `fromC`. */
export interface Stop {
  readonly downToC: number
  readonly giveUp?: { readonly fromC: number; readonly withinS: number }
}
export function coolingCourse({ radial, table, atPlaceC }: Piece, chill: Chill, stop: Stop): CoolingCourse {
  const mesh = radialMesh(radial.exponent)
  const inside = interior(mesh, radial.radiusM)
  let nodesC = mesh.place.map(atPlaceC)
  let nextC = new Float64Array(mesh.count)
  const skin = coolSide(chill)
  const hottestC = [hottest(nodesC)]
  const { downToC, giveUp } = stop
  let leftS = LONGEST_S
  while ((hottestC.at(-1) as number) > downToC && leftS > 0) {
    fill(inside, table, nodesC)
    stepInterior(inside, nextC, nodesC, skin, STEP_S)
    ;[nodesC, nextC] = [nextC, nodesC]
    hottestC.push(hottest(nodesC))
    leftS -= STEP_S
    if (giveUp && (hottestC.at(-1) as number) <= giveUp.fromC) leftS = Math.min(leftS, giveUp.withinS)
  }
  return { hottestC, stepS: STEP_S }
}
function hottest(row: Float64Array) {
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < row.length; i++) most = Math.max(most, row[i] as number)
  return most
}

function coolSide({ airC, h_WpM2K }: Chill): SkinSide {
  return {
    net_WpM2: 0,
    slope_WpM2K: -h_WpM2K,
    at(skinC) {
      this.net_WpM2 = h_WpM2K * (airC - skinC)
    },
  }
}
function fill({ k, c }: Interior, { fromC, k_WpMK, rhoCp_JpM3K }: PropertyTable, nodesC: Float64Array) {
  for (let i = 0; i < nodesC.length; i++) {
    const row = Math.min(k_WpMK.length - 1, Math.max(0, Math.round((nodesC[i] as number) - fromC)))
    k[i] = PRIORS.k.centre * (k_WpMK[row] as number)
    c[i] = rhoCp_JpM3K[row] as number
  }
}

/** When the hottest point falls to a level, s from the start; 0 where it is there already, undefined where it never is. */
export function whenAtS({ hottestC, stepS }: CoolingCourse, levelC: number): number | undefined {
  const i = hottestC.findIndex((c) => c <= levelC)
  if (i <= 0) return i === 0 ? 0 : undefined
  const [before, after] = [hottestC[i - 1] as number, hottestC[i] as number]
  return (i - 1 + (before - levelC) / (before - after)) * stepS
}
