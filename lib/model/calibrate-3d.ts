/** One 3-D run per roast finds the 1-D radial model whose core warms like the real solid's. */
import { cutCells, type Solid } from './cut-cells'
import { coreTimes3d, crossings } from './run-3d'

export type { Solid } from './cut-cells'

export interface Calibration {
  /** The 1-D model: layers of area ~ r^exponent from the core out to radiusM. A little more than half the thickness. */
  readonly radiusM: number
  readonly exponent: number
  /** Root mean square of ln(1-D time / 3-D time) over the levels below: what the two numbers cannot match. */
  readonly residual: number
  readonly areaM2: number
}

/**
 * Surroundings of the calibration run: wet meat stands near 100 °C for most of a roast whatever the oven's dial,
 * and is heated at about 3 kW/m² when cold. [estimate] ± 50 % on h moves n by less than 0.1.
 */
const DRIVE_C = 100
const START_C = 4
const H_WPM2K = 30
const K_WPMK = 0.45
/** k/h of the calibration run, m. */
export const SLIP_M = K_WPMK / H_WPM2K
/** Core temperatures at which the two models are compared; cooks pull between them. */
const LEVELS_C = [40, 50, 60, 70, 80, 90]
const LEVELS = LEVELS_C.map((c) => (DRIVE_C - c) / (DRIVE_C - START_C))

const RINGS = 48
/** Times as run-3d.ts gives them, of the 1-D radial model of exponent n (implicit middle rule; 48 rings, error below 0.2 %). */
export function coreTimes1d(radiusM: number, exponent: number, slipM: number, levels: readonly number[]): number[] {
  const width = radiusM / RINGS
  const step = radiusM ** 2 / 600
  const capacity = new Float64Array(RINGS)
  const link = new Float64Array(RINGS + 1)
  for (let i = 0; i < RINGS; i++) {
    capacity[i] = ((i + 1) ** (exponent + 1) - i ** (exponent + 1)) / (exponent + 1)
    link[i + 1] = (i + 1) ** exponent / width ** 2
  }
  link[RINGS] = RINGS ** exponent / width / (width / 2 + slipM)
  link[0] = 0
  // nothing changes from step to step but the temperatures: the elimination is done once
  const inner = link.map((g) => g * (step / 2))
  const upper = new Float64Array(RINGS)
  const inverse = new Float64Array(RINGS)
  for (let i = 0; i < RINGS; i++) {
    const both = (inner[i] as number) + (inner[i + 1] as number)
    const before = i > 0 ? (inner[i] as number) * (upper[i - 1] as number) : 0
    inverse[i] = 1 / ((capacity[i] as number) + both - before)
    upper[i] = (inner[i + 1] as number) * (inverse[i] as number)
  }
  const now = new Float64Array(RINGS + 1).fill(1)
  now[RINGS] = 0
  const right = new Float64Array(RINGS)
  const atCore = () => (now[0] as number) + ((now[0] as number) - (now[1] as number)) / 8
  return crossings(levels, step, atCore, () => {
    let left = now[0] as number
    let carried = 0
    for (let i = 0; i < RINGS; i++) {
      const here = now[i] as number
      const below = inner[i] as number
      const above = (inner[i + 1] as number) * ((now[i + 1] as number) - here)
      carried = ((capacity[i] as number) * here + below * (left - here + carried) + above) * (inverse[i] as number)
      right[i] = carried
      left = here
    }
    // the surroundings stand at 0 behind the last ring
    let next = 0
    for (let i = RINGS - 1; i >= 0; i--) {
      next = (right[i] as number) + (upper[i] as number) * next
      now[i] = next
    }
  })
}

/** Where the search stops: a slab is 0, a sphere 2; the radius is never less than half the thickness. */
const EXPONENT_RANGE = [0, 4] as const
const RADIUS_RANGE = [1, 2] as const
const clamp = (x: number, [low, high]: readonly [number, number]) => Math.max(low, Math.min(high, x))
const squares = (xs: readonly number[]) => xs.reduce((s, x) => s + x * x, 0)

/** Rounds that find their slopes anew; near the answer they hardly change, and a round without costs a third. */
const FRESH_SLOPES = 3
/**
 * Radius (as a factor on half the thickness) and exponent whose 1-D times are nearest the 3-D ones, in logarithms.
 * Gauss-Newton from a finite difference. The exponent alone leaves 3 to 6 % in the times and a skin 15 to 30 % too small
 * for the volume; with the radius it is below 1 % and the skin comes out within 5 % for compact roasts.
 */
function matchShape(halfM: number, target: readonly number[]) {
  const logsAt = (factor: number, n: number) =>
    coreTimes1d(halfM * factor, n, SLIP_M, LEVELS).map((t, i) => Math.log(t / (target[i] as number)))
  let factor = 1.2
  let n = 1.5
  let logs = logsAt(factor, n)
  let byRadius: readonly number[] = []
  let byExponent: readonly number[] = []
  for (let round = 0; round < 12; round++) {
    if (round < FRESH_SLOPES) {
      byRadius = logsAt(factor + 0.01, n).map((x, i) => (x - (logs[i] as number)) / 0.01)
      byExponent = logsAt(factor, n + 0.01).map((x, i) => (x - (logs[i] as number)) / 0.01)
    }
    const [dFactor, dN] = leastSquares(byRadius, byExponent, logs)
    const nextFactor = clamp(factor - clamp(dFactor, [-0.2, 0.2]), RADIUS_RANGE)
    const nextN = clamp(n - clamp(dN, [-0.7, 0.7]), EXPONENT_RANGE)
    const settled = Math.abs(nextFactor - factor) + Math.abs(nextN - n) < 1e-4
    factor = nextFactor
    n = nextN
    logs = logsAt(factor, n)
    if (settled) break
  }
  return { radiusM: halfM * factor, exponent: n, residual: Math.sqrt(squares(logs) / logs.length) }
}

/** The two steps whose sum of columns is nearest the misfit. */
function leastSquares(a: readonly number[], b: readonly number[], misfit: readonly number[]): [number, number] {
  const dot = (x: readonly number[], y: readonly number[]) => x.reduce((s, v, i) => s + v * (y[i] as number), 0)
  const aa = dot(a, a)
  const bb = dot(b, b)
  const ab = dot(a, b)
  const det = aa * bb - ab * ab
  return [(bb * dot(a, misfit) - ab * dot(b, misfit)) / det, (aa * dot(b, misfit) - ab * dot(a, misfit)) / det]
}

/** Cell size of the run: 6 to 10 mm, and at least seven cells across the smallest half. */
const cellFor = (solid: Solid) => Math.min(0.01, Math.min(...solid.half) / 7)

/** Times of the 3-D run with cells of 10 mm, for the bench; the caller holds the clock. */
export const run3d10mm = (solid: Solid) => coreTimes3d(cutCells(solid, 0.01), SLIP_M, LEVELS)

const memo = new Map<string, Calibration>()
const MEMO_MOST = 512

/**
 * Calibrates a solid. Sides are rounded to 0.1 mm first, so that equal roasts give equal numbers whether remembered or not.
 * Accuracy: `residual`, gated in tests/reference/conduction-3d.test.ts.
 */
export function calibrate(solid: Solid): Calibration {
  const half = solid.half.map((h) => Math.round(h * 1e4) / 1e4) as [number, number, number]
  if (!half.every((h) => h > 0)) throw new RangeError(`half sides must be above 0 m, got ${solid.half.join(' x ')}`)
  const key = `${half.join()}|${solid.exponents.join()}`
  const known = memo.get(key)
  if (known) return known
  const rounded: Solid = { half, exponents: solid.exponents }
  const cells = cutCells(rounded, cellFor(rounded))
  const match = matchShape(Math.min(...half), coreTimes3d(cells, SLIP_M, LEVELS))
  const found = { ...match, areaM2: cells.areaM2 }
  if (memo.size >= MEMO_MOST) memo.clear()
  memo.set(key, found)
  return found
}
