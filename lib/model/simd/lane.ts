/** One lane of the kernel as a roast on its march: a member written into the kernel's memory, and read out of it. */
import { driveAt } from '../cook-cells'
import { KNOT_S } from '../cooker-path'
import { peakAt } from '../crossing'
import { boilableOf, lossFracOf, rawAt } from '../meat'
import { type Body, bodyOf, type Leg, type MemberFire, type Peak, type Roast, readBetween, slicedOf } from '../roast'
import { SAMPLE_S, type Setting } from '../simulate'
import type { Member } from '../spread'
import type { Stand } from '../stand'
import { STEFAN_BOLTZMANN, TRANSFER } from '../surface'
import type { Kernel } from './kernel'
import * as at from './layout'

/** Knots of the cooker written ahead: half an hour of them, so that few are written that no march comes to. */
const AHEAD = 121

export class Lane implements Roast {
  readonly body: Body
  private offK = 0

  constructor(
    private readonly kernel: Kernel,
    private readonly lane: number,
    private readonly setting: Setting,
    private readonly member: Member,
    private readonly fire: MemberFire,
  ) {
    this.body = bodyOf(setting, member)
    this.loadMember()
    this.loadColumn()
    this.loadMarch()
  }

  get timeS() {
    return this.wide(at.NOW)
  }
  get coreC() {
    return this.row(at.NODES_AT + at.TEMP)
  }
  get probeC() {
    const { below, part } = this.body.probe
    const a = this.row(at.NODES_AT + below * at.NODE + at.TEMP)
    const b = this.row(at.NODES_AT + (below + 1) * at.NODE + at.TEMP)
    return a + part * (b - a) + this.member.probeBiasK + this.offK
  }
  readAt = (timeS: number) => {
    const sampleAt = (n: number) =>
      this.kernel.f32[(at.SAMPLES_AT + this.lane * at.LANE_SAMPLES + n * at.SAMPLE + 12) >> 2] as number
    return readBetween(sampleAt, this.state(at.SAMPLES), this.timeS, this.probeC, timeS)
  }
  offProbe(byK: number) {
    this.offK = byK
    this.setWide(at.PROBE_BIAS, this.member.probeBiasK + byK)
  }
  nodesC() {
    return this.column(at.TEMP)
  }
  slice() {
    const { setting, body } = this
    const lossFrac = lossFracOf(setting.matter, body.mesh, body.radiusM, this.row(at.LOST))
    return slicedOf(body, this.nodesC(), this.column(at.PEAK_C), this.column(at.KILL), lossFrac)
  }
  trace() {
    const { f32 } = this.kernel
    const { mesh, radiusM } = this.body
    const count = this.state(at.SAMPLES)
    const row = () => new Float32Array(count)
    const trace = { cookerC: row(), surfaceC: row(), driveC: row(), coreC: row(), probeC: row() }
    for (let n = 0; n < count; n++) {
      const place = (at.SAMPLES_AT + this.lane * at.LANE_SAMPLES + n * at.SAMPLE) >> 2
      trace.cookerC[n] = f32[place] as number
      trace.surfaceC[n] = f32[place + 1] as number
      trace.coreC[n] = f32[place + 2] as number
      trace.probeC[n] = f32[place + 3] as number
      const wet = f32[place + 4] as number
      trace.driveC[n] = driveAt(mesh, radiusM, wet, f32[place + 5] as number, f32[place + 6] as number)
    }
    return trace
  }

  seekPeak() {
    this.setWide(at.CORE_BEFORE, this.coreC)
    this.setWide(at.CORE_TOP, this.coreC)
    this.setWide(at.BEFORE_S, 0)
    this.setState(at.PEAK, at.PEAK_SOUGHT)
  }
  get peak(): Peak | undefined {
    if (this.state(at.PEAK) !== at.PEAK_FOUND) return undefined
    const [before, top, after] = [this.wide(at.CORE_BEFORE), this.wide(at.CORE_TOP), this.wide(at.CORE_AFTER)]
    return peakAt(before, top, after, this.wide(at.BEFORE_S), this.wide(at.AFTER_S), this.wide(at.PEAK_NOW))
  }

  /** Sets the lane off on a leg; false where it stands at the end of it already. */
  start({ untilS, gridS, stand, probe, toPeak }: Leg): boolean {
    if (this.timeS >= untilS || (toPeak && this.peak)) return false
    this.setStand(stand)
    this.setWide(at.GOAL, untilS)
    this.setWide(at.GRID_S, gridS)
    this.setState(at.MET, 0)
    this.setState(at.WATCH, probe === undefined ? 0 : probe.rising ? at.RISING : at.FALLING)
    if (probe) this.setWide(at.LEVEL, probe.levelC)
    if (this.state(at.PEAK) !== at.PEAK_FOUND && this.state(at.PEAK) !== 0)
      this.setState(at.PEAK, toPeak ? at.PEAK_STOPS : at.PEAK_SOUGHT)
    this.setState(at.MODE, at.MARCHING)
    this.writePath()
    return true
  }
  /** After a stop: whether the leg is done; else the cooker's path goes on. */
  arrived(): boolean {
    const { timeS } = this
    if (timeS >= this.wide(at.GOAL) || this.state(at.PEAK) === at.PEAK_FOUND) return true
    this.setState(at.MODE, at.MARCHING)
    this.writePath()
    return false
  }
  /** Whether the leg ended at its level. */
  get met() {
    return this.state(at.MET) === 1
  }
  rest() {
    this.setState(at.MODE, at.IDLE)
  }

  /** The cooker's knots about now and for a while ahead; the march stops where they end, on a whole minute. */
  private writePath() {
    const { cooker } = this.fire
    const { timeS } = this
    const needed = Math.ceil((this.wide(at.GOAL) - timeS) / KNOT_S) + 2
    const count = Math.min(AHEAD, needed)
    const fromS = cooker.copyKnots(this.kernel.f32, (at.PATHS_AT + this.lane * at.PATH) >> 2, timeS, count)
    this.setWide(at.PATH_FROM, fromS)
    this.setWide(at.PATH_PER_S, 1 / KNOT_S)
    this.setState(at.PATH_LAST, count - 1)
    const endS = Math.floor((fromS + (count - 1) * KNOT_S) / SAMPLE_S) * SAMPLE_S
    this.setWide(at.EVENT, count === needed ? Infinity : endS)
  }

  private setStand({ h_WpM2K, vapourPa, sealed }: Stand) {
    this.setRow(at.H_WPM2K, h_WpM2K)
    this.setRow(at.FILM_HOLDS, 1 / (h_WpM2K * TRANSFER))
    this.setRow(at.OPEN, sealed ? 0 : 1)
    this.setRow(at.DEFICIT_PA, this.setting.pressurePa - vapourPa)
  }

  private loadMember() {
    const { member } = this
    const { matter } = this.setting
    const { skin } = this.body
    this.setRow(at.K_FACTOR, member.kFactor)
    this.setRow(at.C_FACTOR, member.rhoCFactor)
    this.setRow(at.RADIANCE, skin.emissivity * STEFAN_BOLTZMANN)
    this.setRow(at.CRUST_HEAT, skin.crustHeat_M4KpWKg)
    this.setRow(at.CRUST_VAPOUR, skin.crustVapour_M4SpKg2)
    this.setRow(at.PER_DRYABLE, 1 / skin.dryableKgpM2)
    this.setRow(at.FEED, member.feedShare * matter.juiceShare)
    this.setRow(at.JUICE_FACTOR, member.juiceFactor)
    this.setRow(at.DRY, 0)
    this.setRow(at.LOST, 0)
    this.setRow(at.LET_GO_RATE, 0)
    this.setRow(at.OUTER_C, member.startC)
    this.setRow(at.LAST_STEP_S, 0)
  }

  private loadColumn() {
    const { mesh, radiusM } = this.body
    const { matter } = this.setting
    const { startC, kFactor, rhoCFactor } = this.member
    const raw = rawAt(matter, startC)
    const boilable = boilableOf(matter, mesh, radiusM)
    for (let i = 0; i < mesh.count; i++) {
      const node = at.NODES_AT + i * at.NODE
      const cellM = (mesh.cell[i] as number) * radiusM
      this.setRow(node + at.TEMP, startC)
      this.setRow(node + at.NEXT, startC)
      this.setRow(node + at.K_NOW, kFactor * raw.k)
      this.setRow(node + at.C_NOW, rhoCFactor * raw.c)
      this.setRow(node + at.K_BEFORE, 0)
      this.setRow(node + at.C_BEFORE, 0)
      this.setRow(node + at.PEAK_C, startC)
      this.setRow(node + at.JUICE, 0)
      this.setRow(node + at.KILL, 0)
      this.setRow(node + at.BOILABLE, boilable[i] as number)
      this.setRow(node + at.HELD, 0)
      this.setRow(node + at.UNIT_LINK, ((mesh.link[i] as number) * 0.5) / radiusM)
      this.setRow(node + at.CELL, cellM)
      this.setRow(node + at.UNIT_SHARED, (mesh.shared[i] as number) * radiusM)
    }
  }

  private loadMarch() {
    const { below, part } = this.body.probe
    const { timeFactor, probeBiasK } = this.member
    this.setWide(at.NOW, 0)
    this.setWide(at.PER_CLOCK, 1 / timeFactor)
    this.setWide(at.PROBE_PART, part)
    this.setWide(at.PROBE_BIAS, probeBiasK)
    this.setState(at.PROBE_BELOW, below)
    this.setState(at.KEEP, 0)
    this.setState(at.PEAK, 0)
    this.setState(at.SAMPLES, 1)
    const place = (at.SAMPLES_AT + this.lane * at.LANE_SAMPLES) >> 2
    const { startC } = this.member
    const { f32 } = this.kernel
    f32[place] = this.fire.cooker.readingC(0)
    f32[place + 3] = this.probeC
    f32[place + 4] = this.body.mesh.count - 1
    for (const column of [1, 2, 5, 6]) f32[place + column] = startC
  }

  private row(row: number) {
    return this.kernel.f32[(row >> 2) + this.lane] as number
  }
  private setRow(row: number, value: number) {
    this.kernel.f32[(row >> 2) + this.lane] = value
  }
  private wide(row: number) {
    return this.kernel.f64[(row >> 3) + this.lane] as number
  }
  private setWide(row: number, value: number) {
    this.kernel.f64[(row >> 3) + this.lane] = value
  }
  private state(row: number) {
    return this.kernel.i32[(row >> 2) + this.lane] as number
  }
  private setState(row: number, value: number) {
    this.kernel.i32[(row >> 2) + this.lane] = value
  }
  private column(row: number) {
    const { count } = this.body.mesh
    const column = new Float64Array(count)
    for (let i = 0; i < count; i++) column[i] = this.row(at.NODES_AT + i * at.NODE + row)
    return column
  }
}
