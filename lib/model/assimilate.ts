/**
 * The forecast given readings and marks. What has happened is taken from them; the cooker's drift is smoothed from its
 * sensor; the member that fits the probe best is found; members drawn about it cook on, each with the model's own
 * discrepancy as its readings leave it.
 */

import { type AsItWent, asItWent, endedAt } from './as-it-went'
import type { CookPlan } from './cook'
import { type CookerFit, fitCooker } from './cooker-fit'
import type { Drift } from './cooker-path'
import type { Course } from './course'
import { dot } from './dense'
import { Discrepancy } from './discrepancy'
import { exponentialPast } from './extrapolate'
import { ALWAYS_FITTED, type FittedName, MIDDLE, valuesOf, withValues } from './fitted'
import type { Forecast } from './forecast'
import { DEFAULT_MEMBERS, forecastFrom, type Prepared, prepared } from './forecast-cook'
import type { KernelName } from './kernels'
import { cookAllBy } from './kernels'
import { drawnAbout, fitMap, type MapFit } from './map-fit'
import { habitsOf, type Prior, priorOf } from './memory-prior'
import type { MomentId } from './moment-ids'
import { momentsGiven } from './moments-given'
import { type Chance, chanceOf } from './random'
import { insideMeat } from './reading-watch'
import { type Bin, binsOf, type Mark, type Reading, type Sample, samplesOf } from './readings'
import { windAtCookerMpS } from './setting'
import { type Run, SAMPLE_S, type Setting } from './simulate'
import { drawLatents, driftOf, type Latents, type Member, type MemberInput, memberOf } from './spread'

export interface Observed {
  readonly readings: readonly Reading[]
  readonly marks?: readonly Mark[]
  /** Later than all of them where the probe is dead. */
  readonly nowS?: number
}
export interface AssimilateOptions {
  readonly members?: number
  readonly seed: number
  readonly kernel?: KernelName
  /** The last fit of this cook, to begin from. */
  readonly last?: Fit | undefined
  /** What `prepared` made of the same plan, seed and kernel. */
  readonly of?: Prepared | undefined
  /** The members' cooks end at the slice: nobody asks for the peak of a roast left whole. */
  readonly endsAtSlice?: boolean
}
/** What the fit has found, for the words about it and for the next one. */
export interface Fit {
  readonly names: readonly FittedName[]
  /** Shifts in standard deviations before any reading, and what is left of each standard deviation. */
  readonly shift: readonly number[]
  readonly left: readonly number[]
  readonly best: Latents
  readonly u: Float64Array
  /** At the meat against the dial, and how the cooker has drifted in the mean, K. */
  readonly levelK: number
  readonly driftK: number
  /** Root mean square of readings less the best member, K. */
  readonly leftK: number
  readonly rounds: number
}
export interface Assimilated {
  readonly forecast: Forecast
  readonly nowS: number
  readonly pastS: Readonly<Partial<Record<MomentId, number>>>
  /** The course as it went so far. */
  readonly went: AsItWent
  /** None where no reading of the probe counts. */
  readonly fit: Fit | undefined
  readonly cooker: Pick<CookerFit, 'seen' | 'biasK' | 'biasVarianceK2' | 'pastK'>
}

const DISCREPANCY_STREAM = 11
/** Beyond now a fit's run goes on a little, so that the last reading lies within its samples. */
const BEYOND_S = 90

export function assimilate(plan: CookPlan, observed: Observed, options: AssimilateOptions): Assimilated {
  const of = options.of ?? prepared(plan, options.seed, cookAllBy(options.kernel ?? 'plain'))
  return new Assimilation(plan, of, observed, options).run()
}

class Assimilation {
  private readonly kernel: KernelName
  private readonly nowS: number
  private readonly went: AsItWent
  private readonly core
  private readonly cookerSamples
  private readonly input: MemberInput
  private readonly prior: Prior
  private readonly middle: Latents
  private readonly members: number

  constructor(
    private readonly plan: CookPlan,
    private readonly of: Prepared,
    { readings, marks = [], nowS }: Observed,
    private readonly options: AssimilateOptions,
  ) {
    this.kernel = options.kernel ?? 'plain'
    this.members = options.members ?? DEFAULT_MEMBERS
    const last = [...readings, ...marks].reduce((latest, { t }) => Math.max(latest, t), 0)
    this.nowS = Math.max(last, nowS ?? 0)
    const core = insideMeat(samplesOf(readings, 'core'))
    this.cookerSamples = samplesOf(readings, 'cooker')
    this.went = asItWent(of.course, { marks, core, cooker: this.cookerSamples, nowS: this.nowS })
    const inS = this.went.course.probeInS ?? 0
    const outS = this.went.course.searForS === undefined ? Infinity : (this.went.pastS.pull ?? Infinity)
    this.core = core.filter(({ timeS }) => timeS >= inS && timeS <= outS && timeS >= 0)
    this.input = {
      startC: plan.roast.start,
      thicknessSpread: of.geometry.thicknessSpread,
      habits: habitsOf(plan.cooker),
    }
    this.prior = priorOf(plan.cooker)
    this.middle = this.prior.of(MIDDLE)
  }

  run(): Assimilated {
    const cooker = this.fitCooker()
    const bins = binsOf(this.core, this.nowS)
    const names = this.names()
    const fitted = bins.length > 0 ? this.fitProbe(bins, names, cooker) : undefined
    const forecast = this.ensemble(names, cooker, bins, fitted)
    return {
      forecast,
      nowS: this.nowS,
      pastS: this.went.pastS,
      went: this.went,
      fit: fitted && this.told(fitted.fit, names, cooker, fitted.at),
      cooker,
    }
  }

  private names(): FittedName[] {
    const { course, stage, pastS } = this.went
    const names = [...ALWAYS_FITTED]
    const now = course.stages[stage]
    if (pastS.pull !== undefined && course.stages.some(({ do: what }) => what === 'sear')) names.push('climb')
    if (pastS.pull !== undefined && pastS['vents-open'] === undefined) names.push('ventDelay')
    if (now?.do === 'rest' || stage === course.stages.length) names.push('restAir')
    if (this.of.setting.site.fuelKg < Infinity) names.push('loss')
    return names
  }

  /** The likely member's dial is the trend that the sensor's drift is measured from. */
  private fitCooker(): CookerFit {
    const { habits, windMpS } = { habits: this.input.habits, windMpS: windAtCookerMpS(this.plan) }
    const inside = this.cookerSamples.filter(
      ({ timeS }) => timeS >= 0 && timeS <= (this.went.pastS['off-heat'] ?? Infinity),
    )
    const still: Chance = { normal: () => 0, uniform: () => 0.5 }
    const [run] =
      inside.length > 0 ? this.cookAll(this.settingUntilNow(), [memberOf(this.middle, this.input, still)]) : []
    const trendC = (timeS: number) => (run ? between(run.trace.cookerC, timeS) : 0)
    return fitCooker(inside, trendC, { habits, windMpS, nowS: this.nowS, level: this.prior.at('level') })
  }

  private cookAll(setting: Setting, members: readonly Member[]) {
    return cookAllBy(this.kernel)(setting, members)
  }
  private settingUntilNow(): Setting {
    const { course, stage, stageFromS } = this.went
    const endS = this.nowS + BEYOND_S
    const done = course.stages.slice(0, stage)
    const now = course.stages[stage] ?? course.stages.at(-1)
    const stages = now === undefined ? done : [...done, endedAt(now, endS - stageFromS)]
    const short: Course = { ...course, stages, pullStage: Math.min(course.pullStage, stages.length - 1) }
    return { ...this.of.setting, course: short, endsAtSlice: true }
  }

  private fitProbe(bins: readonly Bin[], names: readonly FittedName[], cooker: CookerFit) {
    const setting = this.settingUntilNow()
    const at = names.map((name) => (name === 'level' ? cooker.level : this.prior.at(name)))
    const centre = Float64Array.from(at, ({ mean }) => mean)
    const spread = Float64Array.from(at, ({ sd }) => sd)
    const discrepancy = new Discrepancy(bins.map(({ timeS }) => timeS))
    const simulate = (sets: readonly Float64Array[]) => {
      const members = sets.map((set) => this.member(withValues(this.middle, names, set), cooker.drift(undefined)))
      return this.cookAll(setting, members).map((run) =>
        Float64Array.from(bins, ({ timeS }) => between(run.trace.probeC, timeS)),
      )
    }
    const readC = Float64Array.from(bins, ({ tempC }) => tempC)
    const { last } = this.options
    const from = last && last.names.join() === names.join() ? last.u : undefined
    const fit = fitMap({ centre, spread, readC, discrepancy, simulate, from })
    return { fit, centre, spread, discrepancy, at }
  }

  private member(latents: Latents, drift: Drift): Member {
    const member = memberOf(this.prior.tied(latents), this.input, drift)
    const { ventDelayS } = this.went
    return ventDelayS === undefined ? member : { ...member, ventDelayS }
  }

  /** Members about the best one, cooked to the end. */
  private ensemble(
    names: readonly FittedName[],
    cooker: CookerFit,
    bins: readonly Bin[],
    fitted: Fitted | undefined,
  ): Forecast {
    const { seed } = this.options
    const own = Array.from({ length: this.members }, (_, m) => drawLatents(seed, m))
    const latents = own.map((z) => (fitted ? this.drawn(z, names, fitted) : this.leveled(z, cooker)))
    const drift = (m: number) => (this.nowS > 0 ? cooker.drift(driftOf(seed, m)) : driftOf(seed, m))
    const plain = (m: number) => this.member(latents[m] as Latents, drift(m))
    const setting: Setting = { ...this.of.setting, course: this.went.course, endsAtSlice: this.options.endsAtSlice }
    const shifts = fitted ? this.shifts(bins, fitted, names, cooker, setting) : undefined
    const lastS = this.core.at(-1)?.timeS ?? 0
    const settles = (m: number) => shifts && { atS: lastS, offK: shifts.settle(m) }
    const draw = (m: number): Member => ({ ...plain(m), settles: settles(m) })
    const drawn = latents.map((_, m) => draw(m))
    const runs = this.cookAll(setting, drawn)
    const of = { ...this.of, setting, course: this.went.course, draw }
    const forecast = forecastFrom(this.plan, of, drawn, runs, { seed, kernel: this.kernel })
    return this.happened(shifts ? bent(forecast, shifts, lastS) : forecast, fitted?.fit)
  }

  private leveled(z: Latents, { level }: CookerFit): Latents {
    return { ...this.prior.of(z), level: level.mean + level.sd * z.level }
  }
  private drawn(z: Latents, names: readonly FittedName[], fitted: Fitted): Latents {
    return withValues(this.prior.of(z), names, setOf(fitted, drawnAbout(fitted.fit, valuesOf(z, names))))
  }

  /**
   * Each member's discrepancy: as the readings leave it at the time ahead that counts next, the likely pull or the next
   * instant that hangs on the probe; and its mean on the way. It is settled as the member comes to now, from what its probe
   * has read by then.
   */
  private shifts(
    bins: readonly Bin[],
    fitted: Fitted,
    names: readonly FittedName[],
    cooker: CookerFit,
    setting: Setting,
  ): Shifts {
    const { discrepancy, fit } = fitted
    const best = this.member(withValues(this.middle, names, setOf(fitted, fit.u)), cooker.drift(undefined))
    const [likely] = this.cookAll({ ...setting, endsAtSlice: true }, [best])
    const aheadS = this.aheadS(likely as Run)
    const ahead = discrepancy.at(aheadS)
    const knots = Array.from({ length: Math.ceil((this.nowS + LATER_S) / PATH_KNOT_S) + 1 }, (_, i) => {
      const knot = discrepancy.at(i * PATH_KNOT_S)
      const shared =
        ahead.varianceK2 > 1e-9 ? discrepancy.between(i * PATH_KNOT_S, ahead, aheadS) / ahead.varianceK2 : 0
      return { weights: knot.weights, shared }
    })
    const aheadK = new Float64Array(this.members)
    const pathK: Float64Array[] = []
    const settle = (m: number) => (readAt: (timeS: number) => number) => {
      const leftK = Float64Array.from(bins, ({ timeS, tempC }) => tempC - readAt(timeS))
      const own = Math.sqrt(ahead.varianceK2) * chanceOf(this.options.seed, m, DISCREPANCY_STREAM).normal()
      pathK[m] = Float64Array.from(knots, ({ weights, shared }) => dot(weights, leftK) + shared * own)
      aheadK[m] = dot(ahead.weights, leftK) + own
      return aheadK[m]
    }
    return { aheadK, pathK, settle }
  }
  private aheadS({ moments }: Run): number {
    const next = (['pull', 'off-heat', 'first-slice'] as const).find((id) => this.went.pastS[id] === undefined)
    const timeS = next === undefined ? this.nowS : moments[next]
    return Number.isFinite(timeS) ? Math.max(this.nowS, timeS) : this.nowS + 6 * 3600
  }

  /** Moments as marks, readings and going on as lately leave them. */
  private happened(forecast: Forecast, fit: MapFit | undefined): Forecast {
    const { pastS, course } = this.went
    const { nowS } = this
    const until = course.stages[course.pullStage]?.until
    const level = until && 'core' in until ? until.core : undefined
    const alive = level !== undefined && this.core.some(({ timeS }) => timeS > nowS - ALIVE_S)
    const extrapolatedS = alive && pastS.pull === undefined ? asLately(this.core, level, nowS) : undefined
    const left = fit && { leftK: rms(fit.leftK), count: fit.leftK.length }
    return withMoments(forecast, momentsGiven(forecast, { pastS, nowS, alive, extrapolatedS, left }))
  }

  private told(
    fit: MapFit,
    names: readonly FittedName[],
    { pastK }: CookerFit,
    at: readonly { mean: number; sd: number }[],
  ): Fit {
    const n = names.length
    const shift = names.map((_, i) => (at[i]?.mean ?? 0) + (at[i]?.sd ?? 1) * (fit.u[i] as number))
    const left = names.map((_, i) => {
      const row = fit.root.subarray(i * n, i * n + n)
      return (at[i]?.sd ?? 1) * Math.sqrt(dot(row, row))
    })
    return {
      names,
      shift,
      left,
      best: withValues(this.middle, names, Float64Array.from(shift)),
      u: fit.u,
      levelK: this.input.habits.levelSdK * (shift[names.indexOf('level')] ?? 0),
      driftK: pastK.reduce((sum, x) => sum + x, 0) / (pastK.length || 1),
      leftK: rms(fit.leftK),
      rounds: fit.rounds,
    }
  }
}

/** Pull as an exponential over the last 20 minutes has it; where that says nothing, over 45. */
const asLately = (core: readonly Sample[], levelC: number, nowS: number) =>
  exponentialPast(core, levelC, nowS, 1200) ?? exponentialPast(core, levelC, nowS, 2700)
/** A probe that has read within this time is alive. */
const ALIVE_S = 240
/** The discrepancy is followed this far ahead, on knots so far apart; then it has faded. */
const LATER_S = 7200
const PATH_KNOT_S = 300
type Fitted = ReturnType<Assimilation['fitProbe']>
interface Shifts {
  readonly aheadK: Float64Array
  readonly pathK: readonly Float64Array[]
  /** Of a member, when it has come to now. */
  readonly settle: (m: number) => (readAt: (timeS: number) => number) => number
}
const setOf = ({ centre, spread }: Fitted, u: Float64Array) =>
  u.map((x, i) => (centre[i] as number) + (spread[i] as number) * x)

const rms = (xs: Float64Array) => Math.sqrt(dot(xs, xs) / xs.length)

/** A sampled signal between its minutes. */
function between(samples: ArrayLike<number>, timeS: number): number {
  const place = Math.min(samples.length - 1, Math.max(0, timeS / SAMPLE_S))
  const i = Math.min(samples.length - 2, Math.floor(place))
  if (i < 0) return samples[0] as number
  const a = samples[i] as number
  return a + (place - i) * ((samples[i + 1] as number) - a)
}

/** The discrepancy's path between its knots, 0 beyond. */
function along(path: Float64Array, timeS: number): number {
  const place = timeS / PATH_KNOT_S
  const i = Math.floor(place)
  if (i + 1 >= path.length) return 0
  const a = path[i] as number
  return a + (place - i) * ((path[i + 1] as number) - a)
}
/** The trace's probe with the discrepancy as it goes, in place of that at the time ahead. */
function bent(forecast: Forecast, { aheadK, pathK }: Shifts, settledS: number): Forecast {
  const { trace } = forecast
  const probeC = trace.probeC.slice()
  const before = Math.round(-trace.startS / trace.stepS)
  pathK.forEach((path, m) => {
    for (let i = before; i < trace.count; i++) {
      const place = m * trace.count + i
      const timeS = (i - before) * trace.stepS
      const offK = timeS > settledS ? (aheadK[m] as number) : 0
      probeC[place] = (probeC[place] as number) - offK + along(path, timeS)
    }
  })
  return Object.defineProperties({} as Forecast, {
    ...Object.getOwnPropertyDescriptors(forecast),
    trace: { value: { ...trace, probeC }, enumerable: true },
  })
}
const withMoments = (forecast: Forecast, moments: Forecast['moments']): Forecast =>
  Object.defineProperties({} as Forecast, {
    ...Object.getOwnPropertyDescriptors(forecast),
    moments: { value: moments, enumerable: true },
  })
