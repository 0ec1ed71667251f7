/**
 * One member's cook once more in 3-D: the cells of the real solid, driven by the member's own history at its wet front.
 *
 * The 1-D model was matched to the solid behind a slip of k/h against surroundings that do not change. Heat conducts nearly
 * linearly, so the two go on matching when those surroundings are whatever, behind the same slip, gives the member's own
 * skin its temperature and its heat:
 *
 *   drive = T + (slip + depth) ∂T/∂r        T at the outermost node that does not boil, `depth` below the skin
 */
import { SLIP_M } from './calibrate-3d'
import type { Mesh } from './conduction'
import type { CutCells } from './cut-cells'
import type { Matter } from './meat'
import { myoglobinLossPerS } from './myoglobin'
import { capacityLeft, conductionLeft, JUICE_TIME_S } from './yield'

/** A member's history on whole minutes from meat-on, and where it ends between them. */
export interface DriveHistory {
  readonly driveC: Float64Array
  readonly coreC: Float64Array
  readonly minuteS: number
  /** The first slice, or the last minute of a cook that is never done. */
  readonly endS: number
}
export function driveOf(mesh: Mesh, radiusM: number, nodesC: Float64Array, boilingC: number): number {
  let i = mesh.count - 1
  while (i > 1 && (nodesC[i] as number) >= boilingC) i--
  return driveAt(mesh, radiusM, i, nodesC[i] as number, nodesC[i - 1] as number)
}
/** The same from that node's number, its temperature and that of the node below it. */
export function driveAt({ place }: Mesh, radiusM: number, i: number, tempC: number, belowC: number): number {
  const here = place[i] as number
  const apartM = (here - (place[i - 1] as number)) * radiusM
  return tempC + ((SLIP_M + (1 - here) * radiusM) * (tempC - belowC)) / apartM
}

/** What each cell has been through. */
export interface CellHistory {
  readonly peakC: Float64Array
  readonly slicedC: Float64Array
  /** Share of the myoglobin denatured. */
  readonly greyed: Float64Array
  readonly logKill: Float64Array
  /** Of the innermost point, on the whole minutes of the history. */
  readonly coreC: Float64Array
  /** Of the skin over each cell that has one. */
  readonly skinPeakC: Float64Array
  readonly skinSlicedC: Float64Array
  readonly skinGreyed: Float64Array
}

/** Properties by whole degrees, packed: k W/mK, ρc J/m³K, juice in the end, log reduction per s, myoglobin lost per s. */
const COLUMNS = 5
const packed = new WeakMap<Matter, Float64Array>()
function tableOf(matter: Matter): Float64Array {
  const known = packed.get(matter)
  if (known) return known
  const table = new Float64Array(COLUMNS * matter.rows)
  for (let row = 0; row < matter.rows; row++) {
    for (let j = 0; j < 4; j++) table[COLUMNS * row + j] = matter.columns[4 * row + j] as number
    table[COLUMNS * row + 4] = myoglobinLossPerS(matter.fromC + row)
  }
  packed.set(matter, table)
  return table
}

/** Explicit steps at this share of the stability limit of the links; the skin's own link is implicit and limits nothing. */
const SAFE = 0.9
/** No step is longer, so that a sear is followed. */
const LONGEST_STEP_S = 60
/** Wet meat nowhere conducts faster for its heat capacity, m²/s, juice gone and all: an upper bound for the step. */
function fastest(matter: Matter): number {
  let most = 0
  for (let row = 0; row < matter.rows; row++) {
    const tempC = matter.fromC + row
    if (tempC < 0 || tempC > 100) continue
    const left = capacityLeft(matter.columns[4 * row + 2] as number)
    most = Math.max(most, (matter.columns[4 * row] as number) / (matter.columns[4 * row + 1] as number) / left)
  }
  return most
}

/**
 * Marches the cells through the history; `speed` multiplies the diffusivity. Forward Euler, the link to the skin implicit.
 * Valid: conduction behind a wet front whose temperature is known; bone and meat as one.
 * Accuracy: core within 1 °C of the 1-D member; round within 1 °C, in the two outermost cells 3 °C: tests/reference/cut-face.test.ts.
 */
export function cookCells(
  cells: CutCells,
  matter: Matter,
  history: DriveHistory,
  member: { readonly startC: number; readonly boilingC: number; readonly speed: number },
): CellHistory {
  const state = new Cells(cells, matter, member)
  const { minuteS, endS, driveC } = history
  const limitS = Math.min(LONGEST_STEP_S, state.stableStepS())
  const minutes = Math.floor(endS / minuteS)
  const coreC = new Float64Array(minutes + 1)
  coreC[0] = state.coreC()
  for (let minute = 0; minute * minuteS < endS; minute++) {
    const spanS = Math.min(minuteS, endS - minute * minuteS)
    // at meat-on nothing drives yet; a moment later all does
    const from = driveC[Math.max(1, minute)] as number
    const to = driveC[Math.min(driveC.length - 1, minute + 1)] as number
    const steps = Math.ceil(spanS / limitS)
    for (let n = 0; n < steps; n++) {
      const share = ((n + 0.5) * spanS) / steps / minuteS
      state.step(spanS / steps, from + share * (to - from))
    }
    if (spanS === minuteS) coreC[minute + 1] = state.coreC()
  }
  return state.told(coreC)
}

class Cells {
  private readonly table: Float64Array
  private readonly tempC: Float64Array
  private readonly flow: Float64Array
  private readonly k: Float64Array
  private readonly c: Float64Array
  private readonly juice: Float64Array
  private readonly peakC: Float64Array
  private readonly logKill: Float64Array
  /** ln of what is left of the myoglobin, negated. */
  private readonly lost: Float64Array
  /** Cells with skin; to the skin, and from there to what drives it: conductances over k, m. */
  private readonly outer: Int32Array
  private readonly toSkinM: Float64Array
  private readonly slipM: Float64Array
  private readonly skinPeakC: Float64Array
  private readonly skinLost: Float64Array
  private readonly skinNowC: Float64Array

  constructor(
    private readonly cells: CutCells,
    private readonly matter: Matter,
    private readonly member: { readonly startC: number; readonly boilingC: number; readonly speed: number },
  ) {
    const { startC } = member
    const row = (value: number) => new Float64Array(cells.count).fill(value)
    this.table = tableOf(matter)
    this.tempC = row(startC)
    this.peakC = row(startC)
    this.skinPeakC = row(startC)
    this.skinNowC = row(startC)
    this.skinLost = row(0)
    this.flow = row(0)
    this.k = row(0)
    this.c = row(0)
    this.juice = row(0)
    this.logKill = row(0)
    this.lost = row(0)
    this.outer = Int32Array.from(cells.skinM2.keys()).filter((i) => (cells.skinM2[i] as number) > 0)
    this.toSkinM = cells.skinM2.map((area, i) => (area > 0 ? area / (cells.depthM[i] as number) : 0))
    this.slipM = cells.skinM2.map((area) => area / SLIP_M)
    this.age(0)
  }

  stableStepS(): number {
    const { from, to, areaPerM, volumeM3, count } = this.cells
    const out = new Float64Array(count)
    for (let n = 0; n < from.length; n++) {
      const g = areaPerM[n] as number
      out[from[n] as number] = (out[from[n] as number] as number) + g
      out[to[n] as number] = (out[to[n] as number] as number) + g
    }
    const perS = this.member.speed * fastest(this.matter)
    return out.reduce((least, g, i) => Math.min(least, (SAFE * (volumeM3[i] as number)) / (g * perS)), Infinity)
  }

  step(stepS: number, driveC: number) {
    const { cells, tempC, flow, k, c } = this
    const { from, to, areaPerM, volumeM3, count } = cells
    flow.fill(0)
    for (let n = 0; n < from.length; n++) {
      const a = from[n] as number
      const b = to[n] as number
      const kBoth = 0.5 * ((k[a] as number) + (k[b] as number))
      const heat = kBoth * (areaPerM[n] as number) * ((tempC[b] as number) - (tempC[a] as number))
      flow[a] = (flow[a] as number) + heat
      flow[b] = (flow[b] as number) - heat
    }
    for (let i = 0; i < count; i++) {
      const perK = stepS / ((c[i] as number) * (volumeM3[i] as number))
      tempC[i] = (tempC[i] as number) + perK * (flow[i] as number)
    }
    this.heatSkin(stepS, driveC)
    this.age(stepS)
  }

  /** Heat through the skin, implicit: behind the slip, or from a skin that boils and gets no hotter. */
  private heatSkin(stepS: number, driveC: number) {
    const { tempC, k, c, toSkinM, slipM, skinPeakC, skinLost, skinNowC } = this
    const { boilingC } = this.member
    for (const i of this.outer) {
      const inward = toSkinM[i] as number
      const slip = slipM[i] as number
      const perK = (stepS * (k[i] as number)) / ((c[i] as number) * (this.cells.volumeM3[i] as number))
      const before = tempC[i] as number
      const through = (perK * inward * slip) / (inward + slip)
      let after = (before + through * driveC) / (1 + through)
      let skinC = (inward * after + slip * driveC) / (inward + slip)
      if (skinC > boilingC) {
        skinC = boilingC
        after = (before + perK * inward * boilingC) / (1 + perK * inward)
      }
      tempC[i] = after
      skinNowC[i] = skinC
      if (skinC > (skinPeakC[i] as number)) skinPeakC[i] = skinC
      skinLost[i] = (skinLost[i] as number) + stepS * myoglobinLossPerS(skinC)
    }
  }

  /** What a step at the temperatures now does to every cell, and its properties for the next. */
  private age(stepS: number) {
    const { table, tempC, k, c, juice, peakC, logKill, lost } = this
    const { speed } = this.member
    const { fromC, rows } = this.matter
    const gain = 1 - Math.exp(-stepS / JUICE_TIME_S)
    for (let i = 0; i < tempC.length; i++) {
      const temp = tempC[i] as number
      if (temp > (peakC[i] as number)) peakC[i] = temp
      const row = Math.min(rows - 1.001, Math.max(0, temp - fromC))
      const low = Math.floor(row)
      const part = row - low
      const j = COLUMNS * low
      const above = j + COLUMNS
      const rest = 1 - part
      const still = rest * (table[j + 2] as number) + part * (table[above + 2] as number)
      let gone = juice[i] as number
      if (still > gone) {
        gone += gain * (still - gone)
        juice[i] = gone
      }
      k[i] = speed * conductionLeft(gone) * (rest * (table[j] as number) + part * (table[above] as number))
      c[i] = capacityLeft(gone) * (rest * (table[j + 1] as number) + part * (table[above + 1] as number))
      logKill[i] =
        (logKill[i] as number) + stepS * (rest * (table[j + 3] as number) + part * (table[above + 3] as number))
      lost[i] = (lost[i] as number) + stepS * (rest * (table[j + 4] as number) + part * (table[above + 4] as number))
    }
  }

  /** A parabola through the innermost cell and its neighbours, at the middle itself. */
  coreC(): number {
    const [c, ...beside] = this.cells.core
    const middle = this.tempC[c] as number
    return beside.reduce((t, b) => t + (middle - (this.tempC[b] as number)) / 8, middle)
  }

  told(coreC: Float64Array): CellHistory {
    const greyed = (lost: number) => 1 - Math.exp(-lost)
    return {
      peakC: this.peakC,
      slicedC: this.tempC,
      greyed: this.lost.map(greyed),
      logKill: this.logKill,
      coreC,
      skinPeakC: this.skinPeakC,
      skinSlicedC: this.skinNowC,
      skinGreyed: this.skinLost.map(greyed),
    }
  }
}
