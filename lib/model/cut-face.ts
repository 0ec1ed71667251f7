/** The predicted slice: the likely member cooked once more in 3-D, and how far the other members' slices differ from it. */
import { frac, metres } from '../units'
import { type CellHistory, cookCells, type DriveHistory } from './cook-cells'
import { type CutCells, cutCells, type Solid } from './cut-cells'
import type { CutFace, Spread } from './forecast'
import type { Matter } from './meat'
import { medianOf, spreadOf } from './quantiles'
import { contour, depthOf, LAYERS, type Section, sectionOf, shareWithin } from './section'
import type { Geometry } from './shape'
import { type Run, SAMPLE_S } from './simulate'
import type { Member } from './spread'

/** Peaks that decide how meat looks, °C, and those whose bands are told. */
const LIMITS_C = [58, 60, 65, 70]
const BAND_LIMITS_C = [60, 65, 70]

/** What the slice needs of a member, so that whole runs need not be kept. */
export type Layers = Pick<Run, 'peakC' | 'place'>
export interface Slice {
  /** Whose slice it is. */
  readonly member: number
  readonly cutFace: CutFace
  readonly section: Section
  readonly coldest: Coldest
  /** What the 3-D run missed of the 1-D core, K, from the first level the two were matched at. */
  readonly coreMissK: number
}
/** Where the 3-D run has been harmed least, and how that stands to the 1-D one; the lesser of the two is the one to trust. */
export interface Coldest {
  readonly inTheMiddle: boolean
  readonly lethalityLog: number
  readonly cellsLog: number
  readonly likelyLog: number
}
export interface SliceInput {
  readonly geometry: Geometry
  readonly exponents: Solid['exponents']
  readonly matter: Matter
  readonly boilingC: number
  readonly likely: { readonly m: number; readonly run: Run; readonly member: Member }
  readonly members: readonly Layers[]
}

/** The member nearest the middle in what the slice shows: core, loss, thickness and share of the face that stays below 65 °C. */
export function likelyOf(runs: readonly Run[], drawn: readonly Member[]): number {
  const rows = [
    scaled(runs.map((run) => run.atSlice.coreC)),
    scaled(runs.map((run) => run.lossFrac)),
    scaled(drawn.map((member) => member.thicknessFactor)),
    scaled(runs.map((run) => placeOf(run, 65))),
  ]
  const distance = runs.map((run, m) => {
    const d = rows.reduce((sum, row) => sum + (row[m] as number) ** 2, 0)
    // A member that is never sliced has no face.
    return Number.isFinite(d) && run.unfinished === undefined ? d : Infinity
  })
  return distance.indexOf(distance.reduce((least, d) => Math.min(least, d), Infinity))
}
function scaled(values: readonly number[]) {
  const sample = Float64Array.from(values)
  const { low, high } = spreadOf(sample)
  const middle = medianOf(sample)
  return values.map((value) => (value - middle) / (high - low || 1))
}

/** r/R at which a member's peak passes a limit. */
function placeOf({ peakC, place }: Layers, limitC: number): number {
  const outer = peakC.findIndex((peak) => peak >= limitC)
  if (outer < 0) return 1
  if (outer === 0) return 0
  const [a, b] = [peakC[outer - 1] as number, peakC[outer] as number]
  const [r, s] = [place[outer - 1] as number, place[outer] as number]
  return r + ((s - r) * (limitC - a)) / (b - a)
}
/** Valid: one solid, no bone, no fat cap, the same heat from all sides. About 20 ms; ask once per forecast. */
export function sliceOf(input: SliceInput): Slice {
  const { geometry, likely } = input
  const factor = likely.member.thicknessFactor
  const solid = thicker(geometry, input.exponents, factor)
  const cells = cutCells(solid, cellFor(solid))
  const history = historyOf(likely.run)
  const { told, missK } = cookLike(cells, input, history)
  const section = sectionOf(solid, cells, told, 1 / factor)
  return {
    member: likely.m,
    cutFace: faceOf(section, input),
    section,
    coldest: coldestOf(cells, told, likely.run),
    coreMissK: missK,
  }
}

/** The member's own solid: its thickness and width together, the length giving way, as shape.ts has it. */
function thicker({ thicknessM, widthM, lengthM }: Geometry, exponents: Solid['exponents'], factor: number): Solid {
  return {
    half: [(thicknessM / 2) * factor, (widthM / 2) * factor, lengthM / 2 / factor ** 2],
    exponents,
  }
}
/** 6 to 10 mm, eight cells across the thinnest half where they fit; a thin side is not cut finer than four. */
function cellFor({ half }: Solid): number {
  const thinnest = Math.min(...half)
  return Math.min(Math.max(0.006, Math.min(0.01, thinnest / 8)), thinnest / 4)
}

function historyOf({ trace, moments }: Run): DriveHistory {
  const lastS = (trace.coreC.length - 1) * SAMPLE_S
  return {
    driveC: Float64Array.from(trace.driveC),
    coreC: Float64Array.from(trace.coreC),
    minuteS: SAMPLE_S,
    endS: Math.min(moments['first-slice'], lastS),
  }
}

/** Cores are compared from here on, as in calibrate-3d.ts: below it the 1-D stand-in was never matched to the solid. */
const MATCHED_FROM_C = 40
/** A run off by more than this in the mean is repeated at a better speed. */
const GOOD_K = 0.2
/** On all fixtures the speed came out 1 to 2 % above the member's own. */
const FIRST_GUESS = 1.012

/** Runs the cells; where the core does not follow the member's, once more with the diffusivity at which it does. */
function cookLike(cells: CutCells, input: SliceInput, history: DriveHistory): { told: CellHistory; missK: number } {
  const { member } = input.likely
  const own = (FIRST_GUESS * member.kFactor) / member.rhoCFactor / member.timeFactor
  const run = (speed: number) =>
    cookCells(cells, input.matter, history, { startC: member.startC, boilingC: input.boilingC, speed })
  let told = run(own)
  let off = misfit(told.coreC, history.coreC)
  if (off.meanK > GOOD_K) {
    told = run(own * (1 + off.faster))
    off = misfit(told.coreC, history.coreC)
  }
  return { told, missK: off.mostK }
}

/** How far a core is from the member's, and how much faster it would have to go: time · slope is what speed changes. */
function misfit(coreC: Float64Array, likeC: Float64Array) {
  let [squares, count, mostK, wanted, slopes] = [0, 0, 0, 0, 0]
  for (let i = 1; i < coreC.length - 1; i++) {
    if ((likeC[i] as number) < MATCHED_FROM_C) continue
    const short = (likeC[i] as number) - (coreC[i] as number)
    const slope = (i * ((coreC[i + 1] as number) - (coreC[i - 1] as number))) / 2
    squares += short * short
    count++
    mostK = Math.max(mostK, Math.abs(short))
    wanted += short * slope
    slopes += slope * slope
  }
  return { meanK: Math.sqrt(squares / (count || 1)), mostK, faster: slopes > 0 ? wanted / slopes : 0 }
}

function coldestOf(cells: CutCells, { logKill }: CellHistory, run: Run): Coldest {
  const cellsLog = logKill.reduce((least, log) => Math.min(least, log), Infinity)
  const middle = logKill[cells.core[0]] as number
  return {
    inTheMiddle: middle - cellsLog < 1e-6,
    lethalityLog: Math.min(cellsLog, run.lethalityLog),
    cellsLog,
    likelyLog: run.lethalityLog,
  }
}

function faceOf(section: Section, { geometry, likely, members }: SliceInput): CutFace {
  const along = Array.from({ length: LAYERS }, (_, n) => LAYERS - 1 - n)
  const layer = layerMap(section, likely.run)
  const likelyShare = (limitC: number) => shareWithin(section, contour(section, 'peakC', limitC))
  const likelyDepth = (limitC: number) => depthOf(section, 'peakC', limitC).thinM
  const below = (limitC: number) =>
    about(
      likelyShare(limitC),
      members.map((m) => layer.shareAt(placeOf(m, limitC))),
    )
  return {
    thickness: metres(geometry.thicknessM),
    width: metres(geometry.widthM),
    depthM: along.map((n) => section.halfThicknessM * (1 - n / (LAYERS - 1))),
    peakC: along.map((n) => section.peakC[n] as number),
    slicedC: along.map((n) => section.slicedC[n] as number),
    areaBelow: LIMITS_C.map((limitC) => ({ limitC, share: mapped(below(limitC), frac) })),
    bandDepth: BAND_LIMITS_C.map((limitC) => {
      const depths = members.map((m) => layer.depthAt(placeOf(m, limitC)))
      return { limitC, depthM: mapped(about(likelyDepth(limitC), depths), metres) }
    }),
    shareAbove: BAND_LIMITS_C.map((limitC) => {
      const { low, likely, high } = below(limitC)
      return { limitC, share: { low: frac(1 - high), likely: frac(1 - likely), high: frac(1 - low) } }
    }),
  }
}
const mapped = <Q>({ low, likely, high }: Spread<number>, as: (n: number) => Q): Spread<Q> => ({
  low: as(low),
  likely: as(likely),
  high: as(high),
})
/** The spread of the members about the figure that the picture shows. */
function about(likely: number, values: readonly number[]): Spread<number> {
  const { low, high } = spreadOf(Float64Array.from(values))
  return { low: Math.min(low, likely), likely, high: Math.max(high, likely) }
}

/**
 * Which depth, and which share of the face, a layer of the 1-D model stands for: those that in the likely member's slice
 * have had its peak. Depth and share fall and rise with the layer; the middle and the skin are themselves.
 */
function layerMap(section: Section, { peakC, place }: Run) {
  const last = peakC.length - 1
  const depths = Array.from(peakC, (peak, i) =>
    i === 0 ? section.halfThicknessM : i === last ? 0 : depthOf(section, 'peakC', peak).thinM,
  )
  const shares = Array.from(peakC, (peak, i) =>
    i === 0 ? 0 : i === last ? 1 : shareWithin(section, contour(section, 'peakC', peak)),
  )
  const at = (row: readonly number[]) => (r: number) => {
    const i = Math.max(
      1,
      place.findIndex((p) => p >= r),
    )
    const part = (r - (place[i - 1] as number)) / ((place[i] as number) - (place[i - 1] as number))
    return (row[i - 1] as number) + part * ((row[i] as number) - (row[i - 1] as number))
  }
  return { depthAt: at(depths), shareAt: at(shares) }
}
