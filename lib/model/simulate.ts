/** One member's cook from meat-on to the cut slice and the peak of the core: stages, switches and the instants they happen. */

import { seconds } from '../units'
import { radialMesh } from './conduction'
import type { Until } from './cook'
import { driveOf } from './cook-cells'
import type { CookerHabits } from './cooker'
import { Cooker, type CookerSite } from './cooker-path'
import { type Course, type CourseStage, needsFire } from './course'
import { crossing, hasMet, peakOf, toward, type Watch } from './crossing'
import { fireIn } from './fire'
import { warmUpFuelKg } from './fuel'
import { type Matter, Meat, type Place, tempAt } from './meat'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import type { Radial } from './shape'
import type { Member } from './spread'
import { type Stand, standOf } from './stand'
import { type Around, skinLaw } from './surface'
import { boilingC } from './vapour'

/** What every member of a cook shares. */
export interface Setting {
  readonly course: Course
  readonly matter: Matter
  readonly habits: CookerHabits
  readonly radialAt: (thicknessFactor: number) => Radial
  readonly massKg: number
  /** About the cooker, and what feeds it; about the roast where it rests. */
  readonly site: CookerSite
  readonly rest: { readonly airC: number; readonly windMpS: number; readonly humidity: number }
  readonly pressurePa: number
  readonly nodes?: number
  /** Longest step while roasting; searing takes half of it. */
  readonly stepS?: number
}

export interface State {
  readonly coreC: number
  readonly probeC: number
}
/** What one member's cook came to. Times are s after meat-on, +Infinity where it never got there. */
export interface Run {
  readonly moments: Record<MomentId, number>
  /** Samples one minute apart from meat-on; `driveC` is what drives the meat behind its wet front. */
  readonly trace: Record<'cookerC' | 'surfaceC' | 'driveC' | 'coreC' | 'probeC', number[]>
  readonly offHeat: State
  readonly atSlice: State
  readonly peakCoreC: number
  readonly lossFrac: number
  readonly lethalityLog: number
  /** r/R of the node with the least: 0 at the coldest line. */
  readonly lethalityAt: number
  /** Highest temperature of each node by the first slice, and its temperature then; r/R of the nodes. */
  readonly peakC: Float64Array
  readonly slicedC: Float64Array
  readonly place: Float64Array
  readonly exponent: number
  readonly notes: ReadonlySet<Note>
  /** Burnt from the match until the meat is done with the fire, kg; 0 where nothing burns. */
  readonly fuelKg: number
  /** When the charge could no longer hold the cooker's set point. */
  readonly ranOutS: number
  /** Whether a larger charge would have burnt more. */
  readonly fuelLimited: boolean
  /** Which of the course's stages never ends; none where the cook is done. */
  readonly unfinished: number | undefined
}
/** What somebody should know of a member's run. */
export type Note = 'probe-read-more' | 'roast-limit' | 'sear-limit' | 'sear-not-hot' | 'sear-fuel-short'

export const STEP_S = 30
export const SAMPLE_S = 60
/** The skin's error in one step, and the step that is taken whatever the error: at meat-on the film boils within seconds. */
const SKIN_ERROR_K = 0.7
const LEAST_STEP_S = 0.5
/** From then on all goes so slowly that steps of twice the length do. */
const SLOW_AFTER_S = 6 * 3600
/** A cook that is not done by then never is. */
export const LONGEST_S = 36 * 3600
/** A sear that names no limit of its own. */
const SEAR_LIMIT_S = 3600
/** The sear has begun when the cooker is this near. */
export const SEAR_NEAR_K = 15
/** A step that ends where the path passes a level has passed it. */
const LANDED_S = 1e-6
/** How long an uncut roast is followed for its peak. */
const PEAK_WITHIN_S = 4 * 3600
/** The core has stalled for good when it has gained less than this in this time. */
const STALL = { gainK: 0.1, overS: 3 * 3600 }
/** The roast left whole, for its peak. */
const LEFT_WHOLE: CourseStage = { do: 'rest', until: { after: seconds(PEAK_WITHIN_S) } }

export const simulate = (setting: Setting, member: Member): Run => new MemberRun(setting, member).run()

class MemberRun {
  private t = 0
  private readonly meat: Meat
  private readonly probe: Place
  private readonly cooker: Cooker
  private readonly moments = Object.fromEntries(MOMENT_IDS.map((id) => [id, Infinity])) as Record<MomentId, number>
  private readonly trace: Run['trace'] = { cookerC: [], surfaceC: [], driveC: [], coreC: [], probeC: [] }
  private readonly notes = new Set<Note>()
  /** Fuel burnt before meat-on, and when the meat left the fire for good. */
  private readonly litKg: number
  private fireDoneS = Infinity
  private fuelKg = 0
  private readonly start: Around = { airC: 0, radiantC: 0, h_WpM2K: 0, vapourPa: 0, sealed: false }
  private readonly end: Around = { airC: 0, radiantC: 0, h_WpM2K: 0, vapourPa: 0, sealed: false }
  private stand: Stand
  private resting = false
  private stepS: number
  private stopS = 0
  private nextLid = 0
  private searLevelC: number | undefined
  private peak: { timeS: number; tempC: number } | undefined
  private cores: [number, number] | undefined
  private lastStepS = 0
  private stallCheck = { timeS: 0, coreC: -Infinity }

  constructor(
    private readonly setting: Setting,
    private readonly member: Member,
  ) {
    const { course, habits, site, pressurePa, matter } = setting
    const radial = setting.radialAt(member.thicknessFactor)
    const dryableKgpM2 = (matter.dryableKgpM3 * radial.radiusM) / (radial.exponent + 1)
    const skin = skinLaw({ ...member, dryableKgpM2 }, pressurePa)
    this.meat = new Meat(matter, radialMesh(radial.exponent, setting.nodes), radial.radiusM, member.startC, skin, {
      k: member.kFactor,
      c: member.rhoCFactor,
      juice: member.juiceFactor,
      feed: member.feedShare,
      boilingC: boilingC(pressurePa),
    })
    this.probe = this.meat.placeOf(member.probeOffset)
    const fire = fireIn(habits, site.airC, course, member)
    this.litKg = Math.min(
      site.fuelKg,
      member.lossFactor * warmUpFuelKg(habits, site.windMpS, course.preheatC - site.airC, fire),
    )
    const left = { ...site, fuelKg: Math.max(0, site.fuelKg - this.litKg) }
    this.cooker = new Cooker(habits, { ...member, chance: member.drift }, left, course.preheatC, course.cold)
    this.stand = standOf(course.stages[0] ?? LEFT_WHOLE, setting, member, this.warm)
    this.stepS = setting.stepS ?? STEP_S
  }

  run(): Run {
    const { course } = this.setting
    this.moments['meat-on'] = 0
    this.sample()
    let offHeat: State | undefined
    let unfinished: number | undefined
    for (const [i, stage] of course.stages.entries()) {
      if (!this.runStage(stage, i)) {
        unfinished = i
        break
      }
      if (i === course.pullStage) this.moments.pull = this.t
      if (i === course.fireStage) this.endFire()
      if (i === course.offHeatStage) {
        this.moments['off-heat'] = this.t
        offHeat = this.state()
        this.cores = [offHeat.coreC, offHeat.coreC]
      }
    }
    if (this.fireDoneS === Infinity) this.endFire()
    const done = unfinished === undefined
    if (done) this.moments['first-slice'] = this.t
    const slice = this.slice()
    if (done) this.followToPeak()
    const peak = this.peak ?? { timeS: this.t, tempC: this.state().coreC }
    if (done) this.moments['carryover-peak'] = peak.timeS
    return {
      moments: this.moments,
      trace: this.trace,
      offHeat: offHeat ?? slice.atSlice,
      peakCoreC: peak.tempC,
      notes: this.notes,
      fuelKg: this.fuelKg,
      fuelLimited: this.cooker.limited,
      ranOutS: this.cooker.ranOutS < this.fireDoneS ? this.cooker.ranOutS : Infinity,
      unfinished,
      ...slice,
    }
  }

  /** Runs a stage to its end; false where the cook never gets there. */
  private runStage(stage: CourseStage, index: number): boolean {
    const startS = this.t
    this.resting = stage.do === 'rest' || (stage.do === 'hold' && stage.in === 'box')
    this.stepS = (this.setting.stepS ?? STEP_S) / (stage.do === 'sear' ? 2 : 1)
    if (stage.do === 'sear') return this.sear(stage, startS)
    this.tend(index)
    this.standIn(stage)
    const limitS = startS + (stage.max ?? Infinity)
    if (stage.do === 'roast') return this.roast(stage, index, startS, limitS)
    return this.runUntil(stage.until, startS, limitS, stage.do === 'hold' ? stage.at : undefined)
  }

  /** The fire is set for the stage; for a later hold in the cooker it is kept, else it goes out once it is done with. */
  private tend(index: number) {
    const { stages, fireStage } = this.setting.course
    const aimC = stages.slice(index, fireStage + 1).find(needsFire)?.at
    if (aimC === undefined) this.cooker.douse(this.t)
    else this.cooker.aim(aimC, this.t)
  }
  private standIn(stage: CourseStage) {
    const before = this.stand.elsewhere
    this.stand = standOf(stage, this.setting, this.member, this.warm)
    if (before !== this.stand.elsewhere) this.cooker.carry(this.stand.elsewhere, this.t)
  }
  private readonly warm = () => {
    const { cell, exponent } = this.meat.mesh
    const meanC = (exponent + 1) * this.meat.nodesC.reduce((sum, tempC, i) => sum + tempC * (cell[i] as number), 0)
    const { massKg, matter } = this.setting
    return { meanC, massKg, areaM2: ((exponent + 1) * massKg) / (matter.rhoKgpM3 * this.meat.halfThicknessM) }
  }
  private endFire() {
    this.fireDoneS = this.t
    this.fuelKg = this.setting.habits.fuel === undefined ? 0 : this.litKg + this.cooker.burntKg(this.t)
  }

  private roast(stage: CourseStage & { do: 'roast' }, index: number, startS: number, limitS: number): boolean {
    const { course } = this.setting
    const probeInS = course.probeInS
    const ends = index === course.pullStage
    if (ends && probeInS !== undefined && probeInS > this.t) {
      const fixedS = 'after' in stage.until ? startS + stage.until.after : Infinity
      this.march(Math.min(probeInS, limitS, fixedS))
    }
    if (probeInS !== undefined && (ends || probeInS <= this.t)) this.markProbe(probeInS)
    if (ends && 'core' in stage.until && this.state().probeC >= stage.until.core) this.notes.add('probe-read-more')
    const done = this.runUntil(stage.until, startS, limitS)
    if (probeInS !== undefined && probeInS <= this.t) this.markProbe(probeInS)
    if (done && !('after' in stage.until) && this.t >= limitS) this.notes.add('roast-limit')
    if (course.turnS !== undefined && course.turnS <= this.t) this.moments.turn = course.turnS
    return done
  }

  private markProbe(plannedS: number) {
    if (this.moments['probe-in'] === Infinity) this.moments['probe-in'] = Math.min(plannedS, this.t)
  }

  /** The meat stays on while the fire climbs; the sear's limit counts from its beginning, which is pull. */
  private sear(stage: CourseStage & { do: 'sear' }, startS: number): boolean {
    const limitS = startS + (stage.max ?? SEAR_LIMIT_S)
    const moved = stage.over === 'direct'
    if (this.setting.habits.vents || moved) this.march(Math.min(limitS, startS + this.member.ventDelayS))
    if (this.setting.habits.vents && !moved) this.moments['vents-open'] = this.t
    this.standIn(stage)
    if (!moved) this.cooker.aim(stage.at, this.t, true)
    this.searLevelC = stage.at - SEAR_NEAR_K
    if (moved || this.cooker.readingC(this.t) >= this.searLevelC) this.moments['sear-start'] = this.t
    const forS = 'after' in stage.until ? stage.until.after : this.setting.course.searForS
    if (forS !== undefined) {
      if (!moved) this.march(limitS, { signal: 'cooker', levelC: this.searLevelC, rising: true })
      this.march(Math.min(limitS, this.t + forS))
    } else this.march(limitS, this.watchFor(stage.until))
    this.searLevelC = undefined
    if (this.t >= limitS) this.notes.add('sear-limit')
    if (this.moments['sear-start'] === Infinity) {
      this.moments['sear-start'] = this.t
      this.notes.add(this.cooker.mostC(this.t) < stage.at - SEAR_NEAR_K ? 'sear-fuel-short' : 'sear-not-hot')
    }
    return true
  }

  private runUntil(until: Until, startS: number, limitS: number, heldC?: number): boolean {
    if ('after' in until) return this.march(Math.min(limitS, startS + until.after)) || this.t < LONGEST_S
    return this.march(limitS, this.watchFor(until, heldC)) || this.t >= limitS
  }

  /** Where it is not heated, or held cooler than its target, the meat may come down to it. */
  private watchFor(until: Until, heldC = Infinity): Watch | undefined {
    if ('core' in until)
      return this.resting || heldC < until.core
        ? toward('probe', until.core, this.state().probeC)
        : { signal: 'probe', levelC: until.core, rising: true }
    if ('cooker' in until) return toward('cooker', until.cooker, this.cooker.readingC(this.t))
    return undefined
  }

  /** Marches to a time, or to the instant a signal passes its level; true where it did. */
  private march(untilS: number, watch?: Watch): boolean {
    const goalS = Math.min(untilS, LONGEST_S)
    let before = watch ? this.signal(watch) : 0
    if (watch && hasMet(watch, before)) return true
    // a stage with a time limit is waited out; only one that waits for a reading alone can be given up
    const forever = watch !== undefined && untilS === Infinity
    while (this.t < goalS && !(forever && this.stalled())) {
      const endS = this.tryUpTo(Math.min(goalS, this.nextStop()))
      if (watch?.signal === 'cooker') {
        const metS = this.cooker.whenMet(watch, this.t, endS)
        if (metS <= endS) {
          this.stepTo(metS)
          return true
        }
      } else if (watch) {
        const after = this.probeC(this.meat.nextC)
        if (hasMet(watch, after)) {
          this.stepTo(this.t + crossing(before, after, watch.levelC) * (endS - this.t))
          return true
        }
        before = after
      }
      this.accept(endS)
    }
    return false
  }
  private stepTo(endS: number) {
    while (this.t < endS) this.accept(this.tryUpTo(endS))
  }
  /** Tries a step toward a time, halved until the skin follows its law; gives the time it ends at. */
  private tryUpTo(goalS: number): number {
    let endS = goalS
    while (!(this.try(endS) <= SKIN_ERROR_K) && endS - this.t > LEAST_STEP_S) endS = this.t + (endS - this.t) / 2
    return endS
  }

  /** Steps end on whole multiples of their length, so that samples and drift knots do not depend on when stages begin. */
  private nextStop(): number {
    const stepS = this.t < SLOW_AFTER_S ? this.stepS : 2 * this.stepS
    const grid = (Math.floor(this.t / stepS + 1e-9) + 1) * stepS
    const opening = this.setting.course.lid[this.nextLid >> 1]
    const lid = opening?.[this.nextLid % 2 === 0 ? 0 : 1] ?? Infinity
    if (lid > this.t) return Math.min(grid, lid)
    this.cooker.lid(this.nextLid % 2 === 0, this.t)
    this.nextLid++
    return this.nextStop()
  }

  private try(endS: number): number {
    this.around(this.start, this.t)
    this.around(this.end, endS)
    return this.meat.try((endS - this.t) / this.member.timeFactor, this.start, this.end)
  }

  private around(out: Around, timeS: number) {
    this.cooker.surround(out, timeS)
    out.h_WpM2K = this.stand.h_WpM2K
    out.vapourPa = this.stand.vapourPa
    out.sealed = this.stand.sealed
  }

  private accept(endS: number) {
    this.noteSear(endS)
    this.meat.accept()
    this.lastStepS = endS - this.t
    this.t = endS
    this.notePeak()
    if (endS % SAMPLE_S === 0) this.sample()
  }

  private noteSear(endS: number) {
    if (this.searLevelC === undefined || this.moments['sear-start'] < Infinity) return
    const near: Watch = { signal: 'cooker', levelC: this.searLevelC, rising: true }
    this.moments['sear-start'] = this.cooker.whenMet(near, this.t, endS + LANDED_S)
  }

  /** The coldest point is the centre until its temperature turns: then it has peaked. */
  private notePeak() {
    if (this.cores === undefined || this.peak !== undefined) return
    const [before, top] = this.cores
    const now = this.meat.nodesC[0] as number
    if (now < top) {
      const found = peakOf(before, top, now, this.stopS || this.lastStepS, this.lastStepS)
      const timeS = Math.max(this.moments['off-heat'], this.t - this.lastStepS + found.offsetS)
      this.peak = { timeS, tempC: Math.max(top, found.value) }
    }
    this.cores = [top, now]
    this.stopS = this.lastStepS
  }

  private followToPeak() {
    // a plan that ends in the cooker is taken out of it all the same: carryover is what follows the heat
    this.resting = true
    if (this.setting.course.stages.at(-1)?.do !== 'rest') this.standIn(LEFT_WHOLE)
    this.cooker.douse(this.t)
    const lastS = Math.min(LONGEST_S, this.t + PEAK_WITHIN_S)
    this.stepS = 2 * (this.setting.stepS ?? STEP_S)
    while (this.peak === undefined && this.t < lastS) {
      const endS = this.tryUpTo(Math.min(lastS, this.nextStop()))
      this.accept(endS)
    }
  }

  private stalled(): boolean {
    if (this.t < this.stallCheck.timeS + STALL.overS) return false
    const coreC = this.meat.nodesC[0] as number
    const gained = Math.abs(coreC - this.stallCheck.coreC)
    this.stallCheck = { timeS: this.t, coreC }
    return gained < STALL.gainK && !this.resting
  }

  private state(): State {
    return { coreC: this.meat.nodesC[0] as number, probeC: this.probeC(this.meat.nodesC) }
  }
  private probeC = (nodesC: Float64Array) => tempAt(this.probe, nodesC) + this.member.probeBiasK
  private signal(watch: Watch): number {
    return watch.signal === 'probe' ? this.probeC(this.meat.nodesC) : this.cooker.readingC(this.t)
  }

  private sample() {
    const { coreC, probeC } = this.state()
    this.trace.cookerC.push(this.cooker.readingC(this.t))
    this.trace.surfaceC.push(this.meat.outerC)
    this.trace.driveC.push(driveOf(this.meat, boilingC(this.setting.pressurePa)))
    this.trace.coreC.push(coreC)
    this.trace.probeC.push(probeC)
  }

  private slice() {
    const { logKill, mesh } = this.meat
    const lethalityLog = logKill.reduce((least, log) => Math.min(least, log), Infinity)
    return {
      atSlice: this.state(),
      lossFrac: this.meat.lossFrac(),
      lethalityLog,
      lethalityAt: mesh.place[logKill.indexOf(lethalityLog)] as number,
      peakC: this.meat.peakC.slice(),
      slicedC: this.meat.nodesC.slice(),
      place: this.meat.mesh.place,
      exponent: this.meat.mesh.exponent,
    }
  }
}
