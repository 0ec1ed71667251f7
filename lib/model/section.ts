/** The slice through the thickest place, read from the cells as a field on rays from the middle to the skin. */
import type { CellHistory } from './cook-cells'
import type { CutCells, Solid } from './cut-cells'

/** What can be asked of every point of the slice. */
export const FIELDS = ['peakC', 'slicedC', 'greyed'] as const
export type Field = (typeof FIELDS)[number]

/**
 * A quarter of the slice, the other three being its mirror images; y across the thickness, x across the width, m.
 * Ray 0 goes to the thin side, the last to the end; on each `LAYERS` points from the middle to the skin, ray by ray.
 */
export interface Section extends Readonly<Record<Field, Float64Array>> {
  readonly halfThicknessM: number
  readonly halfWidthM: number
  /** Of the outline |y/a|^p + |x/b|^q = 1. */
  readonly exponents: readonly [number, number]
}
export const RAYS = 25
export const LAYERS = 25

/** Where a ray meets the skin; `turn` runs from 0 at the thin side to 1 at the end. */
export function skinPoint({ halfThicknessM, halfWidthM, exponents }: Shape, turn: number): readonly [number, number] {
  const angle = (turn * Math.PI) / 2
  const power = (x: number, p: number) => Math.max(0, x) ** (2 / p)
  return [halfThicknessM * power(Math.cos(angle), exponents[0]), halfWidthM * power(Math.sin(angle), exponents[1])]
}
type Shape = Pick<Section, 'halfThicknessM' | 'halfWidthM' | 'exponents'>

/** Values at the points of one quarter: the cells' middles, the skin's points, and the mirror images of both. */
interface Samples {
  readonly y: number[]
  readonly x: number[]
  readonly values: Record<Field, number[]>
}

/** The section of a solid, drawn at `scale` times its size. */
export function sectionOf(solid: Solid, cells: CutCells, told: CellHistory, scale: number): Section {
  const shape: Shape = {
    halfThicknessM: solid.half[0],
    halfWidthM: solid.half[1],
    exponents: [solid.exponents[0], solid.exponents[1]],
  }
  const near = firstLayer(cells)
  const samples: Samples = { y: [], x: [], values: { peakC: [], slicedC: [], greyed: [] } }
  for (const i of near) addMirrored(samples, cells.middleM[0][i] as number, cells.middleM[1][i] as number, told, i)
  const skin = skinRays(shape, cells, told, near)
  for (let ray = 0; ray < RAYS; ray++) addSkin(samples, shape, ray, skin)
  const rows: Record<Field, Float64Array> = { peakC: grid(), slicedC: grid(), greyed: grid() }
  const reach = spacing(cells, near)
  for (let ray = 0; ray < RAYS; ray++) fillRay(rows, samples, shape, skin, ray, reach)
  return { ...shape, halfThicknessM: scale * shape.halfThicknessM, halfWidthM: scale * shape.halfWidthM, ...rows }
}
const grid = () => new Float64Array(RAYS * LAYERS)

/** Cells that touch the plane of the slice. */
function firstLayer({ count, middleM }: CutCells): number[] {
  const z = middleM[2]
  const lowest = z.reduce((least, at) => Math.min(least, at), Infinity)
  return Array.from({ length: count }, (_, i) => i).filter((i) => (z[i] as number) < 1.9 * lowest)
}
/** Distances between neighbours across thickness and width. */
function spacing({ middleM }: CutCells, near: readonly number[]): readonly [number, number] {
  const least = (axis: 0 | 1) => 2 * near.reduce((low, i) => Math.min(low, middleM[axis][i] as number), Infinity)
  return [least(0), least(1)]
}

function addMirrored(samples: Samples, y: number, x: number, told: CellHistory, cell: number) {
  for (const [up, along] of [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const) {
    samples.y.push(up * y)
    samples.x.push(along * x)
    for (const field of FIELDS) samples.values[field].push(told[field][cell] as number)
  }
}

type SkinRays = Record<Field, Float64Array>
/** Skin cells near a ray in angle count for its end. */
const SKIN_TURN = 0.06
function skinRays(shape: Shape, { middleM, skinM2 }: CutCells, told: CellHistory, near: readonly number[]): SkinRays {
  const cells = near.filter((i) => (skinM2[i] as number) > 0)
  const turns = cells.map((i) => turnOf(shape, middleM[0][i] as number, middleM[1][i] as number))
  const own = { peakC: told.skinPeakC, slicedC: told.skinSlicedC, greyed: told.skinGreyed }
  const mean = (field: Field, turn: number) => {
    let sum = 0
    let weight = 0
    cells.forEach((cell, n) => {
      const near = Math.exp(-(((turn - (turns[n] as number)) / SKIN_TURN) ** 2)) + 1e-9
      sum += near * (own[field][cell] as number)
      weight += near
    })
    return sum / weight
  }
  const row = (field: Field) => Float64Array.from({ length: RAYS }, (_, ray) => mean(field, ray / (RAYS - 1)))
  return { peakC: row('peakC'), slicedC: row('slicedC'), greyed: row('greyed') }
}
/** Which ray a point lies on, 0 to 1. */
function turnOf({ halfThicknessM, halfWidthM, exponents }: Shape, y: number, x: number): number {
  const down = (y / halfThicknessM) ** (exponents[0] / 2)
  const along = (x / halfWidthM) ** (exponents[1] / 2)
  return Math.atan2(along, down) / (Math.PI / 2)
}

function addSkin(samples: Samples, shape: Shape, ray: number, skin: SkinRays) {
  const [y, x] = skinPoint(shape, ray / (RAYS - 1))
  for (const [up, along] of [
    [1, 1],
    [-1, 1],
    [1, -1],
  ] as const) {
    samples.y.push(up * y)
    samples.x.push(along * x)
    for (const field of FIELDS) samples.values[field].push(skin[field][ray] as number)
  }
}

/** A point hotter than one further out is a wiggle of the reading: what has been hotter has been so from outside. */
const OUTWARD: readonly Field[] = ['peakC', 'greyed']
function fillRay(
  rows: Record<Field, Float64Array>,
  samples: Samples,
  shape: Shape,
  skin: SkinRays,
  ray: number,
  reach: readonly [number, number],
) {
  const [y, x] = skinPoint(shape, ray / (RAYS - 1))
  for (let layer = 0; layer < LAYERS - 1; layer++) {
    const share = layer / (LAYERS - 1)
    const weights = fitWeights(samples, share * y, share * x, reach)
    for (const field of FIELDS) {
      const values = samples.values[field]
      rows[field][ray * LAYERS + layer] = weights.reduce((sum, [n, w]) => sum + w * (values[n] as number), 0)
    }
  }
  for (const field of FIELDS) rows[field][ray * LAYERS + LAYERS - 1] = skin[field][ray] as number
  for (const field of OUTWARD) {
    const row = rows[field].subarray(ray * LAYERS, (ray + 1) * LAYERS)
    for (let n = LAYERS - 2; n >= 0; n--) row[n] = Math.min(row[n] as number, row[n + 1] as number)
  }
}

/** Neighbours count by a Gaussian of this many spacings; beyond three of them not at all. */
const NEAR = 1.1
/**
 * Weights of the samples in the value at a point: the constant of a parabola fitted to those around it, so that neither the
 * bend of the profile nor the uneven middles of merged cells are smoothed away.
 */
function fitWeights(samples: Samples, y: number, x: number, [stepY, stepX]: readonly [number, number]) {
  const found: { n: number; weight: number; terms: number[] }[] = []
  const normal = Array.from({ length: TERMS }, () => new Float64Array(TERMS + 1))
  for (let n = 0; n < samples.y.length; n++) {
    const v = ((samples.y[n] as number) - y) / stepY / NEAR
    const u = ((samples.x[n] as number) - x) / stepX / NEAR
    const off = u * u + v * v
    if (off > 9) continue
    const terms = [1, v, u, v * v, v * u, u * u]
    const weight = Math.exp(-off)
    found.push({ n, weight, terms })
    for (let i = 0; i < TERMS; i++)
      for (let j = 0; j < TERMS; j++)
        (normal[i] as Float64Array)[j] =
          ((normal[i] as Float64Array)[j] as number) + weight * (terms[i] as number) * (terms[j] as number)
  }
  const first = firstRow(normal)
  return found.map(({ n, weight, terms }) => {
    const w = weight * terms.reduce((sum, term, i) => sum + term * (first[i] as number), 0)
    return [n, w] as const
  })
}

const TERMS = 6
/** First row of the inverse of the normal matrix, by elimination; a little on the diagonal keeps thin places solvable. */
function firstRow(normal: Float64Array[]): number[] {
  const at = (i: number, j: number) => normal[i]?.[j] as number
  const put = (i: number, j: number, value: number) => {
    ;(normal[i] as Float64Array)[j] = value
  }
  put(0, TERMS, 1)
  for (let i = 0; i < TERMS; i++) put(i, i, at(i, i) + 1e-9)
  for (let p = 0; p < TERMS; p++) {
    for (let i = p + 1; i < TERMS; i++) {
      const factor = at(i, p) / at(p, p)
      for (let j = p; j <= TERMS; j++) put(i, j, at(i, j) - factor * at(p, j))
    }
  }
  const row = new Array<number>(TERMS).fill(0)
  for (let p = TERMS - 1; p >= 0; p--) {
    let sum = at(p, TERMS)
    for (let j = p + 1; j < TERMS; j++) sum -= at(p, j) * (row[j] as number)
    row[p] = sum / at(p, p)
  }
  return row
}

/** How far out along each ray a field passes a level, share of the way from the middle: 0 where all is above, 1 where none. */
export function contour(section: Section, field: Field, level: number): number[] {
  return Array.from({ length: RAYS }, (_, ray) => {
    const row = section[field].subarray(ray * LAYERS, (ray + 1) * LAYERS)
    const above = row.findIndex((value) => value >= level)
    if (above < 0) return 1
    if (above === 0) return 0
    const [a, b] = [row[above - 1] as number, row[above] as number]
    return (above - 1 + (level - a) / (b - a)) / (LAYERS - 1)
  })
}
/** Share of the face that lies within a contour. */
export function shareWithin(section: Section, shares: readonly number[]): number {
  const area = (at: readonly number[]) => {
    const points = at.map((share, ray) => {
      const [y, x] = skinPoint(section, ray / (RAYS - 1))
      return [share * y, share * x] as const
    })
    return points.slice(1).reduce((sum, [y, x], i) => {
      const [before, beforeX] = points[i] as readonly [number, number]
      return sum + before * x - y * beforeX
    }, 0)
  }
  return area(shares) / area(shares.map(() => 1))
}
/** Depth of a level below the skin, m: on the thin side and at the end; half the thickness or width where all is above. */
export function depthOf(section: Section, field: Field, level: number): { thinM: number; endM: number } {
  const shares = contour(section, field, level)
  return {
    thinM: (1 - (shares[0] as number)) * section.halfThicknessM,
    endM: (1 - (shares[RAYS - 1] as number)) * section.halfWidthM,
  }
}
