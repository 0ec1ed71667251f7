/** The plain kernel: one roast, step by step, in double precision. */

import { driveOf } from './cook-cells'
import type { Cooker } from './cooker-path'
import { crossing, hasMet, peakAt } from './crossing'
import { Meat, tempAt } from './meat'
import { type Body, bodyOf, type Leg, type Peak, type Roast, readBetween, slicedOf } from './roast'
import { LEAST_STEP_S, SAMPLE_S, type Setting, SKIN_ERROR_K, SLOW_AFTER_S } from './simulate'
import type { Member } from './spread'
import type { Stand } from './stand'
import { type Around, skinLaw } from './surface'
import { boilingC } from './vapour'

type Samples = Record<'cookerC' | 'surfaceC' | 'driveC' | 'coreC' | 'probeC', number[]>

export class PlainRoast implements Roast {
  timeS = 0
  peak: Peak | undefined
  readonly body: Body
  private readonly meat: Meat
  private readonly samples = { cookerC: [], surfaceC: [], driveC: [], coreC: [], probeC: [] } as Samples
  private readonly start: Around = { airC: 0, radiantC: 0, h_WpM2K: 0, vapourPa: 0, sealed: false }
  private readonly end: Around = { airC: 0, radiantC: 0, h_WpM2K: 0, vapourPa: 0, sealed: false }
  private readonly boilingC: number
  private cores: [number, number] | undefined
  private lastStepS = 0
  private beforeS = 0
  private offK = 0

  constructor(
    setting: Setting,
    private readonly member: Member,
    private readonly cooker: Cooker,
  ) {
    this.body = bodyOf(setting, member)
    const { mesh, radiusM, skin } = this.body
    this.boilingC = boilingC(setting.pressurePa)
    const { kFactor, rhoCFactor, juiceFactor, feedShare } = member
    const scale = { k: kFactor, c: rhoCFactor, juice: juiceFactor, feed: feedShare, boilingC: this.boilingC }
    this.meat = new Meat(setting.matter, mesh, radiusM, member.startC, skinLaw(skin, setting.pressurePa), scale)
    this.sample()
  }

  get coreC() {
    return this.meat.nodesC[0] as number
  }
  get probeC() {
    return this.read(this.meat.nodesC)
  }
  private read = (nodesC: Float64Array) => tempAt(this.body.probe, nodesC) + this.member.probeBiasK + this.offK
  nodesC = () => this.meat.nodesC.slice()
  slice = () => slicedOf(this.body, this.nodesC(), this.meat.peakC.slice(), this.meat.logKill, this.meat.lossFrac())
  trace = () => this.samples
  readAt = (timeS: number) => {
    const { probeC } = this.samples
    return readBetween((n) => probeC[n] as number, probeC.length, this.timeS, this.probeC, timeS)
  }
  offProbe(byK: number) {
    this.offK = byK
  }
  seekPeak() {
    this.cores = [this.coreC, this.coreC]
  }

  /** Takes a leg to its end, its level or its peak; true where it was the level. */
  march({ untilS, gridS, stand, probe, toPeak }: Leg): boolean {
    while (this.timeS < untilS && !(toPeak && this.peak)) {
      const endS = this.tryUpTo(Math.min(untilS, this.gridAfter(gridS)), stand)
      const after = this.read(this.meat.nextC)
      if (probe && hasMet(probe, after)) {
        this.stepTo(this.timeS + crossing(this.probeC, after, probe.levelC) * (endS - this.timeS), stand)
        return true
      }
      this.accept(endS)
    }
    return false
  }
  private stepTo(endS: number, stand: Stand) {
    while (this.timeS < endS) this.accept(this.tryUpTo(endS, stand))
  }

  /** Tries a step toward a time, halved until the skin follows its law; gives the time it ends at. */
  private tryUpTo(goalS: number, stand: Stand): number {
    let endS = goalS
    while (!(this.try(endS, stand) <= SKIN_ERROR_K) && endS - this.timeS > LEAST_STEP_S)
      endS = this.timeS + (endS - this.timeS) / 2
    return endS
  }
  private try(endS: number, stand: Stand): number {
    this.around(this.start, this.timeS, stand)
    this.around(this.end, endS, stand)
    return this.meat.try((endS - this.timeS) / this.member.timeFactor, this.start, this.end)
  }
  private around(out: Around, timeS: number, stand: Stand) {
    this.cooker.surround(out, timeS)
    out.h_WpM2K = stand.h_WpM2K
    out.vapourPa = stand.vapourPa
    out.sealed = stand.sealed
  }
  /** Steps end on whole multiples of their length and none skips a sample, so that samples do not depend on when stages begin. */
  private gridAfter(gridS: number): number {
    const stepS = this.timeS < SLOW_AFTER_S ? gridS : Math.min(SAMPLE_S, 2 * gridS)
    return (Math.floor(this.timeS / stepS + 1e-9) + 1) * stepS
  }

  private accept(endS: number) {
    this.meat.accept()
    this.lastStepS = endS - this.timeS
    this.timeS = endS
    this.notePeak()
    if (endS % SAMPLE_S === 0) this.sample()
  }

  /** The coldest point is the centre until its temperature turns: then it has peaked. */
  private notePeak() {
    if (this.cores === undefined || this.peak !== undefined) return
    const [before, top] = this.cores
    const now = this.coreC
    if (now < top) this.peak = peakAt(before, top, now, this.beforeS, this.lastStepS, this.timeS)
    this.cores = [top, now]
    this.beforeS = this.lastStepS
  }

  private sample() {
    const { nodesC } = this.meat
    this.samples.cookerC.push(this.cooker.readingC(this.timeS))
    this.samples.surfaceC.push(this.meat.outerC)
    this.samples.driveC.push(driveOf(this.body.mesh, this.body.radiusM, nodesC, this.boilingC))
    this.samples.coreC.push(this.coreC)
    this.samples.probeC.push(this.probeC)
  }
}
