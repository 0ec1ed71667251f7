/**
 * The stages of one member's cook, from meat-on to the cut slice and the peak of the core: what is done when, and the
 * instants of it. They ask for the march leg by leg and go on when a leg is done, so that one kernel can take a roast
 * through them alone and another eight at once.
 */
import { seconds } from '../units'
import type { Until } from './cook'
import type { Cooker } from './cooker-path'
import { type CourseStage, needsFire } from './course'
import { hasMet, toward, type Watch } from './crossing'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import { type Leg, type MemberFire, meanOf, type Roast } from './roast'
import { LONGEST_S, type Note, type Run, SEAR_NEAR_K, type Setting, STEP_S, type State } from './simulate'
import type { Member } from './spread'
import { type Stand, standOf } from './stand'

/** A sear that names no limit of its own. */
const SEAR_LIMIT_S = 3600
/** How long an uncut roast is followed for its peak. */
const PEAK_WITHIN_S = 4 * 3600
/** The core has stalled for good when it has gained less than this in this time; looked at on whole minutes. */
const STALL = { gainK: 0.1, overS: 3 * 3600, onS: 60 }
/** The roast left whole, for its peak. */
const LEFT_WHOLE: CourseStage = { do: 'rest', until: { after: seconds(PEAK_WITHIN_S) } }

/** What asks for legs of the march, is told of each whether its level was met, and comes to a value. */
export type Marching<T> = Generator<Leg, T, boolean>

/** One member's cook before its first leg. */
export const stagesOf = (setting: Setting, member: Member, fire: MemberFire, roast: Roast): Marching<Run> =>
  new Stages(setting, member, fire, roast).run()

class Stages {
  private readonly moments = Object.fromEntries(MOMENT_IDS.map((id) => [id, Infinity])) as Record<MomentId, number>
  private readonly notes = new Set<Note>()
  /** How the fire did until the meat left it for good. */
  private fire: ReturnType<Cooker['fireUntil']> | undefined
  private readonly cooker: Cooker
  private readonly litKg: number
  private stand: Stand
  private resting = false
  private stepS: number
  private nextLid = 0
  private searLevelC: number | undefined
  private stallCheck = { timeS: 0, coreC: -Infinity }
  private settlesS: number

  constructor(
    private readonly setting: Setting,
    private readonly member: Member,
    fire: MemberFire,
    private readonly roast: Roast,
  ) {
    this.cooker = fire.cooker
    this.litKg = fire.litKg
    this.stand = standOf(setting.course.stages[0] ?? LEFT_WHOLE, setting, member, this.warm)
    this.stepS = setting.stepS ?? STEP_S
    this.settlesS = member.settles?.atS ?? Infinity
  }

  *run(): Marching<Run> {
    const { course } = this.setting
    this.moments['meat-on'] = 0
    let offHeat: State | undefined
    let unfinished: number | undefined
    for (const [i, stage] of course.stages.entries()) {
      if (!(yield* this.runStage(stage, i))) {
        unfinished = i
        break
      }
      if (i === course.pullStage) this.moments.pull = this.t
      if (i === course.fireStage) this.fire = this.cooker.fireUntil(this.t)
      if (i === course.offHeatStage) {
        this.moments['off-heat'] = this.t
        offHeat = this.state()
        this.roast.seekPeak()
      }
    }
    const fire = this.fire ?? this.cooker.fireUntil(this.t)
    const done = unfinished === undefined
    if (done) this.moments['first-slice'] = this.t
    const slice = this.roast.slice()
    const atSlice = this.state()
    if (done && !this.setting.endsAtSlice) yield* this.followToPeak()
    const peak = this.roast.peak ?? { timeS: this.t, tempC: this.roast.coreC }
    if (done) this.moments['carryover-peak'] = Math.max(this.moments['off-heat'], peak.timeS)
    return {
      moments: this.moments,
      trace: this.roast.trace(),
      offHeat: offHeat ?? atSlice,
      atSlice,
      peakCoreC: peak.tempC,
      notes: this.notes,
      fuelKg: this.setting.habits.fuel === undefined ? 0 : this.litKg + fire.burntKg,
      ranOutS: fire.ranOutS,
      fuelLimited: fire.limited,
      unfinished,
      ...slice,
    }
  }

  /** Runs a stage to its end; false where the cook never gets there. */
  private *runStage(stage: CourseStage, index: number): Marching<boolean> {
    const startS = this.t
    this.resting = stage.do === 'rest' || (stage.do === 'hold' && stage.in === 'box')
    this.stepS = (this.setting.stepS ?? STEP_S) / (stage.do === 'sear' ? 2 : 1)
    if (stage.do === 'sear') return yield* this.sear(stage, startS)
    this.tend(index)
    this.standIn(stage)
    const limitS = startS + (stage.max ?? Infinity)
    if (stage.do === 'roast') return yield* this.roastStage(stage, index, startS, limitS)
    return yield* this.runUntil(stage.until, startS, limitS, stage.do === 'hold' ? stage.at : undefined)
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
    const { mesh, radiusM } = this.roast.body
    const { massKg, matter } = this.setting
    const areaM2 = ((mesh.exponent + 1) * massKg) / (matter.rhoKgpM3 * radiusM)
    return { meanC: meanOf(mesh, this.roast.nodesC()), massKg, areaM2 }
  }
  private *roastStage(
    stage: CourseStage & { do: 'roast' },
    index: number,
    startS: number,
    limitS: number,
  ): Marching<boolean> {
    const { course } = this.setting
    const probeInS = course.probeInS
    const ends = index === course.pullStage
    if (ends && probeInS !== undefined && probeInS > this.t) {
      const fixedS = 'after' in stage.until ? startS + stage.until.after : Infinity
      yield* this.march(Math.min(probeInS, limitS, fixedS))
    }
    if (probeInS !== undefined && (ends || probeInS <= this.t)) this.markProbe(probeInS)
    if (ends && 'core' in stage.until && this.roast.probeC >= stage.until.core) this.notes.add('probe-read-more')
    const done = yield* this.runUntil(stage.until, startS, limitS)
    if (probeInS !== undefined && probeInS <= this.t) this.markProbe(probeInS)
    if (done && !('after' in stage.until) && this.t >= limitS) this.notes.add('roast-limit')
    if (course.turnS !== undefined && course.turnS <= this.t) this.moments.turn = course.turnS
    return done
  }

  private markProbe(plannedS: number) {
    if (this.moments['probe-in'] === Infinity) this.moments['probe-in'] = Math.min(plannedS, this.t)
  }

  /** The meat stays on while the fire climbs; the sear's limit counts from its beginning, which is pull. */
  private *sear(stage: CourseStage & { do: 'sear' }, startS: number): Marching<boolean> {
    const limitS = startS + (stage.max ?? SEAR_LIMIT_S)
    const moved = stage.over === 'direct'
    if (this.setting.habits.vents || moved) yield* this.march(Math.min(limitS, startS + this.member.ventDelayS))
    if (this.setting.habits.vents && !moved) this.moments['vents-open'] = this.t
    this.standIn(stage)
    if (!moved) this.cooker.aim(stage.at, this.t, true)
    this.searLevelC = stage.at - SEAR_NEAR_K
    if (moved || this.cooker.readingC(this.t) >= this.searLevelC) this.moments['sear-start'] = this.t
    const forS = 'after' in stage.until ? stage.until.after : this.setting.course.searForS
    if (forS !== undefined) {
      if (!moved) yield* this.march(limitS, { signal: 'cooker', levelC: this.searLevelC, rising: true })
      yield* this.march(Math.min(limitS, this.t + forS))
    } else yield* this.march(limitS, this.watchFor(stage.until))
    this.searLevelC = undefined
    if (this.t >= limitS) this.notes.add('sear-limit')
    if (this.moments['sear-start'] === Infinity) {
      this.moments['sear-start'] = this.t
      this.notes.add(this.cooker.mostC(this.t) < stage.at - SEAR_NEAR_K ? 'sear-fuel-short' : 'sear-not-hot')
    }
    return true
  }

  private *runUntil(until: Until, startS: number, limitS: number, heldC?: number): Marching<boolean> {
    if ('after' in until) return (yield* this.march(Math.min(limitS, startS + until.after))) || this.t < LONGEST_S
    return (yield* this.march(limitS, this.watchFor(until, heldC))) || this.t >= limitS
  }

  /** Where it is not heated, or held cooler than its target, the meat may come down to it. */
  private watchFor(until: Until, heldC = Infinity): Watch | undefined {
    if ('core' in until)
      return this.resting || heldC < until.core
        ? toward('probe', until.core, this.roast.probeC)
        : { signal: 'probe', levelC: until.core, rising: true }
    if ('cooker' in until) return toward('cooker', until.cooker, this.cooker.readingC(this.t))
    return undefined
  }

  /** Marches to a time, or to the instant a signal passes its level; true where it did. */
  private *march(untilS: number, watch?: Watch): Marching<boolean> {
    const goalS = Math.min(untilS, LONGEST_S)
    if (this.met(watch)) return true
    // a stage with a time limit is waited out; only one that waits for a reading alone can be given up
    const forever = watch !== undefined && untilS === Infinity
    while (this.t < goalS && !(forever && this.stalled())) {
      if (this.settled() && this.met(watch)) return true
      const endS = Math.min(goalS, this.nextLidS(), forever ? this.nextStallS() : Infinity, this.settlesS)
      if (yield* this.leg(endS, this.isOpen(watch) ? watch : undefined)) return true
    }
    return false
  }
  private met(watch: Watch | undefined): boolean {
    if (!watch || !this.isOpen(watch)) return false
    return hasMet(watch, watch.signal === 'probe' ? this.roast.probeC : this.cooker.readingC(this.t))
  }
  /** Until it is settled what the probe is off by, readings alone say what it has come to. */
  private isOpen = (watch: Watch | undefined) => watch?.signal !== 'probe' || this.settlesS === Infinity

  /** Settles what the probe is off by as soon as it is time; true where it just was. */
  private settled(): boolean {
    if (this.t < this.settlesS) return false
    this.settlesS = Infinity
    this.roast.offProbe(this.member.settles?.offK(this.roast.readAt) ?? 0)
    return true
  }
  /** As far as nothing is done to the cooker; true where the watch is met. The cooker's own path says when it meets one. */
  private *leg(endS: number, watch: Watch | undefined, toPeak = false): Marching<boolean> {
    const searS = this.searS(endS)
    const cookerS = watch?.signal === 'cooker' ? this.cooker.whenMet(watch, this.t, endS) : Infinity
    const probe = watch?.signal === 'probe' ? watch : undefined
    const met = yield { untilS: Math.min(endS, cookerS), gridS: this.stepS, stand: this.stand, probe, toPeak }
    if (searS <= this.t) this.moments['sear-start'] = searS
    return met || cookerS <= this.t
  }

  /** When the lid is next opened or shut; what is due is done. */
  private nextLidS(): number {
    const opening = this.setting.course.lid[this.nextLid >> 1]
    const lidS = opening?.[this.nextLid % 2 === 0 ? 0 : 1] ?? Infinity
    if (lidS > this.t) return lidS
    this.cooker.lid(this.nextLid % 2 === 0, this.t)
    this.nextLid++
    return this.nextLidS()
  }

  /** When the cooker comes near the sear's heat, before a time; Infinity where it does not, or has before. */
  private searS(beforeS: number): number {
    if (this.searLevelC === undefined || this.moments['sear-start'] < Infinity) return Infinity
    return this.cooker.whenMet({ signal: 'cooker', levelC: this.searLevelC, rising: true }, this.t, beforeS)
  }

  private *followToPeak(): Marching<void> {
    // a plan that ends in the cooker is taken out of it all the same: carryover is what follows the heat
    this.resting = true
    if (this.setting.course.stages.at(-1)?.do !== 'rest') this.standIn(LEFT_WHOLE)
    this.cooker.douse(this.t)
    const lastS = Math.min(LONGEST_S, this.t + PEAK_WITHIN_S)
    this.stepS = 2 * (this.setting.stepS ?? STEP_S)
    while (this.roast.peak === undefined && this.t < lastS)
      yield* this.leg(Math.min(lastS, this.nextLidS()), undefined, true)
  }

  private nextStallS = () => Math.ceil((this.stallCheck.timeS + STALL.overS) / STALL.onS) * STALL.onS
  private stalled(): boolean {
    if (this.t < this.nextStallS()) return false
    const { coreC } = this.roast
    const gained = Math.abs(coreC - this.stallCheck.coreC)
    this.stallCheck = { timeS: this.t, coreC }
    return gained < STALL.gainK && !this.resting
  }

  private get t() {
    return this.roast.timeS
  }
  private state = (): State => ({ coreC: this.roast.coreC, probeC: this.roast.probeC })
}
