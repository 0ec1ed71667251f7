/** A roast in 3-D with its bone where it lies, beside the same with bone and meat mixed as the model has them. */
import { boneBody, isBone } from '../../lib/model/bone'
import type { Cut } from '../../lib/model/cut'
import { type CutCells, cutCells, type Solid } from '../../lib/model/cut-cells'
import { BONE } from '../../lib/model/materials'
import { crossings } from '../../lib/model/run-3d'
import { geometryOf } from '../../lib/model/shape'
import { kilograms } from '../../lib/units'

interface Stuff {
  readonly k: number
  readonly rhoC: number
}
const MEAT: Stuff = { k: 0.45, rhoC: 3.5e6 }
/** The model's bone, the two measured ends, and one that conducts half as well as meat. */
export const BONES = {
  'as the model has it': { k: BONE.k_WpMK, rhoC: BONE.rho_KgpM3 * BONE.cp_JpKgK },
  'spongy, 0.29 W/mK': { k: 0.29, rhoC: 3.05e6 },
  'compact, 0.55 W/mK': { k: 0.55, rhoC: BONE.rho_KgpM3 * BONE.cp_JpKgK },
  'half of meat, 0.225 W/mK': { k: 0.225, rhoC: BONE.rho_KgpM3 * BONE.cp_JpKgK },
} as const satisfies Record<string, Stuff>
const H_WPM2K = 30

/** Four mirrored quarters of the octant's cells: bone lies neither in the middle of the thickness nor of the width. */
export interface Quarters {
  readonly count: number
  readonly from: number[]
  readonly to: number[]
  readonly areaPerM: number[]
  readonly cells: CutCells
  /** Middle of each unknown, in half sides. */
  readonly place: readonly (readonly [number, number, number])[]
}
export function quarters(solid: Solid, cellM: number): Quarters {
  const cells = cutCells(solid, cellM)
  const { count } = cells
  const q: Quarters = { count: 4 * count, from: [], to: [], areaPerM: [], cells, place: [] }
  const signs = [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const
  const middle = (u: number, axis: 0 | 1 | 2) => cells.middleM[axis]?.[u] as number
  const place = signs.flatMap(([sx, sy]) =>
    Array.from(
      { length: count },
      (_, u) =>
        [
          (sx * middle(u, 0)) / solid.half[0],
          (sy * middle(u, 1)) / solid.half[1],
          middle(u, 2) / solid.half[2],
        ] as const,
    ),
  )
  signs.forEach((_, s) => {
    for (let n = 0; n < cells.from.length; n++) {
      q.from.push(s * count + (cells.from[n] as number))
      q.to.push(s * count + (cells.to[n] as number))
      q.areaPerM.push(cells.areaPerM[n] as number)
    }
  })
  // across the two middle planes: a cell that touches one meets its own image
  for (const [axis, a, b] of [
    [0, 0, 1],
    [0, 2, 3],
    [1, 0, 2],
    [1, 1, 3],
  ] as const) {
    const step = solid.half[axis] / Math.max(3, Math.round(solid.half[axis] / cellM))
    for (let u = 0; u < count; u++) {
      const from = middle(u, axis)
      if (from > 0.75 * step) continue
      q.from.push(a * count + u)
      q.to.push(b * count + u)
      q.areaPerM.push((cells.volumeM3[u] as number) / (2 * from) / (2 * from))
    }
  }
  return { ...q, place }
}

/** Times (s) at which the coldest cell comes to each temperature, from 4 °C in 100 °C. */
function coldestTimes(q: Quarters, stuff: readonly Stuff[], levelsC: readonly number[]): number[] {
  const { count, from, to, areaPerM, cells } = q
  const one = cells.count
  const store = stuff.map(({ rhoC }, i) => rhoC * (cells.volumeM3[i % one] as number))
  const skin = stuff.map(
    ({ k }, i) => (cells.skinM2[i % one] as number) / ((cells.depthM[i % one] as number) / k + 1 / H_WPM2K),
  )
  const link = areaPerM.map((g, n) => {
    const [a, b] = [stuff[from[n] as number]?.k as number, stuff[to[n] as number]?.k as number]
    return (g * 2 * a * b) / (a + b)
  })
  const total = [...skin]
  link.forEach((g, n) => {
    for (const end of [from[n] as number, to[n] as number]) total[end] = (total[end] as number) + g
  })
  const step = 0.9 / total.reduce((worst, g, i) => Math.max(worst, g / (store[i] as number)), 0)
  const now = new Float64Array(count).fill(1)
  const flow = new Float64Array(count)
  const levels = levelsC.map((c) => (100 - c) / 96)
  return crossings(
    levels,
    step,
    () => now.reduce((most, x) => Math.max(most, x), 0),
    () => {
      for (let i = 0; i < count; i++) flow[i] = -(skin[i] as number) * (now[i] as number)
      for (let n = 0; n < link.length; n++) {
        const [a, b] = [from[n] as number, to[n] as number]
        const f = (link[n] as number) * ((now[b] as number) - (now[a] as number))
        flow[a] = (flow[a] as number) + f
        flow[b] = (flow[b] as number) - f
      }
      for (let i = 0; i < count; i++) now[i] = (now[i] as number) + (step * (flow[i] as number)) / (store[i] as number)
    },
  )
}

/** Time with the bone in its place over the time of the mixture, at each core temperature. */
export function boneRatios(cut: Cut, bone: Stuff, levelsC: readonly number[]): number[] {
  const g = geometryOf(cut, kilograms(cut.atMassKg))
  const half = [g.thicknessM / 2, g.widthM / 2, g.lengthM / 2] as const
  const body = boneBody(cut, half)
  if (!body) throw new RangeError(`${cut.id} has no bone`)
  const q = quarters({ half, exponents: cut.exponents }, 0.01)
  const inBone = q.place.map(([x, y, z]) => shareIn(body, x, y, z, half))
  const mix = (share: number): Stuff => ({
    k: (1 - share) * MEAT.k + share * bone.k,
    rhoC: (1 - share) * MEAT.rhoC + share * bone.rhoC,
  })
  const volume = (i: number) => q.cells.volumeM3[i % q.cells.count] as number
  const whole = inBone.reduce((sum, _, i) => sum + volume(i), 0)
  const share = inBone.reduce((sum, s, i) => sum + s * volume(i), 0) / whole
  const placed = coldestTimes(q, inBone.map(mix), levelsC)
  const mixed = coldestTimes(
    q,
    inBone.map(() => mix(share)),
    levelsC,
  )
  return placed.map((t, i) => t / (mixed[i] as number))
}

/** Share of a cell of 10 mm about a point that is bone, by 4 points a side. */
export function shareIn(
  body: NonNullable<ReturnType<typeof boneBody>>,
  x: number,
  y: number,
  z: number,
  half: readonly number[],
) {
  let inside = 0
  for (const i of [-3, -1, 1, 3])
    for (const j of [-3, -1, 1, 3])
      for (const k of [-3, -1, 1, 3]) {
        const [dx, dy, dz] = [i, j, k].map((s, m) => (s * 0.00125) / (half[m] as number)) as [number, number, number]
        if (isBone(body, x + dx, y + dy, z + dz)) inside++
      }
  return inside / 64
}
