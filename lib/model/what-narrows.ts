/** What would be worth measuring: the window at pull as it is, and as it would be with one more thing measured, or one less. */
import type { CookPlan, Roast } from './cook'
import { COOKERS } from './cooker'
import { courseOf } from './course'
import { knownCutOf } from './custom-cut'
import type { Forecast } from './forecast'
import { medianOf, windowOf } from './quantiles'
import { settingOf } from './setting'
import { boxShare, type Geometry, geometryOf } from './shape'
import { sidesOf } from './sides'
import { simulate } from './simulate'
import { drawMember, type Member, PRIORS } from './spread'

export const MEASURABLES = ['thickness', 'width-and-length', 'start', 'cooker'] as const
export type Measurable = (typeof MEASURABLES)[number]

/** Seconds after meat-on between which 9 of 10 cooks are pulled. */
export interface PullWindow {
  readonly earlyS: number
  readonly lateS: number
}
export interface Narrowing {
  readonly what: Measurable
  /** It is measured already; `other` is the window without. */
  readonly measured: boolean
  readonly other: PullWindow
  /** How much narrower the window is with it than without, s. */
  readonly gainS: number
}
export interface Narrowings {
  readonly now: PullWindow
  /** The greatest gain first. */
  readonly each: readonly Narrowing[]
}

/** Members whose pull is run anew with one thing moved: each is compared with itself, so a few tell. */
const MEMBERS = 24
/** Middles of as many equal slices of the normal distribution: what is moved takes each once, so that its spread is not left to chance. */
const SLICES = Array.from({ length: MEMBERS }, (_, m) => normalQuantile((m + 0.5) / MEMBERS))
/** [estimate] what is left once a thermometer has been in the middle before meat-on, and one at meat level in the cooker. */
const MEASURED_START_SD_K = 0.5
const MEASURED_LEVEL_SD_K = 3
/** From the middle to the 95 % quantile, in standard deviations. */
const TO_95 = 1.645

type Side = 'thickness' | 'width' | 'length'
const SIDES: readonly (readonly [Measurable, readonly Side[]])[] = [
  ['thickness', ['thickness']],
  ['width-and-length', ['width', 'length']],
]

/**
 * The window of a forecast and its other windows. None where too few cooks come to pull, or where pull goes by the clock.
 *
 * Nothing is resampled: the variance of ln(pull) loses (or gains) the difference between what the one draw puts into it at its
 * two spreads, found by moving that draw alone. Two ensembles' quantiles would differ by chance by 5 min in 90.
 */
export function whatNarrows(forecast: Pick<Forecast, 'cook' | 'seed' | 'moments'>): Narrowings | undefined {
  const window = forecast.moments.pull && windowOf(forecast.moments.pull)
  if (!window || window.early === null || window.likely === null || window.late === null) return undefined
  const now = { earlyS: window.early, lateS: window.late }
  if (widthOf(now) < 1 || now.earlyS <= 0) return undefined
  const cooks = new Cooks(forecast.cook, forecast.seed, window.likely)
  const variance = (Math.log(now.lateS / now.earlyS) / (2 * TO_95)) ** 2
  const likely = Math.log(window.likely)
  const other = (added: number, later = 0): PullWindow => {
    const scale = Math.sqrt(Math.max(0, 1 + added / variance))
    const at = (edge: number) => Math.exp(likely + later + scale * (Math.log(edge) - likely))
    return { earlyS: at(now.earlyS), lateS: at(now.lateS) }
  }
  const narrowing = (what: Measurable, measured: boolean, found: PullWindow): Narrowing => {
    const narrower = widthOf(now) - widthOf(found)
    return { what, measured, other: found, gainS: measured ? -narrower : narrower }
  }
  const sizes = SIDES.flatMap(([what, names]) => {
    const change = cooks.sized(names)
    return change ? [narrowing(what, change.measured, other(change.added, change.later))] : []
  })
  const each = [
    ...sizes,
    narrowing('start', false, other(cooks.startAdded())),
    narrowing('cooker', false, other(cooks.cookerAdded())),
  ]
  return { now, each: each.sort((a, b) => b.gainS - a.gainS) }
}

export const widthOf = ({ earlyS, lateS }: PullWindow) => lateS - earlyS
type Move = (member: Member, z: number) => Partial<Member>

function varianceOf(values: readonly number[]) {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  return values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length
}

/** The first few members of the forecast, cooked to pull again and again. */
class Cooks {
  private readonly geometry: Geometry
  private readonly base: readonly number[]
  private readonly thicknessPart: (spread: number) => number
  constructor(
    private readonly plan: CookPlan,
    private readonly seed: number,
    private readonly likelyPullS: number,
  ) {
    this.geometry = geometryFor(plan)
    this.base = this.lnPulls(plan, this.geometry)
    this.thicknessPart = (spread) => this.part((_, z) => ({ thicknessFactor: Math.exp(spread * z) }))
  }

  /** What is added to the variance of ln(pull) (it is taken away) by measuring how warm the middle starts, … */
  startAdded() {
    const { sd } = PRIORS.startC
    const part = this.part(({ startC }, z) => ({ startC: startC + sd * z }))
    return part * ((MEASURED_START_SD_K / sd) ** 2 - 1)
  }
  /** … and how hot it is at meat level. */
  cookerAdded() {
    const { levelSdK } = COOKERS[this.plan.cooker.kind]
    const part = this.part((_, z) => ({ levelK: levelSdK * z }))
    return part * Math.min(0, (MEASURED_LEVEL_SD_K / levelSdK) ** 2 - 1)
  }

  /** Sides that are measured already are left out again; the others are measured as they are expected to be. */
  sized(names: readonly Side[]): { measured: boolean; added: number; later: number } | undefined {
    const { roast } = this.plan
    const measured = names.every((name) => roast[name] !== undefined)
    if (!measured) {
      const expected = {
        thickness: this.geometry.thicknessM,
        width: this.geometry.widthM,
        length: this.geometry.lengthM,
      }
      const more = Object.fromEntries(names.map((name) => [name, roast[name] ?? expected[name]]))
      const cut = knownCutOf(roast)
      const volume = this.geometry.volumeM3
      const { spread } = sidesOf(cut, volume, boxShare(cut.exponents), roast.mass, { ...roast, ...more })
      return { measured, added: this.addedBy(spread), later: 0 }
    }
    // a cut of one's own has no typical thickness to fall back on
    if (roast.custom && names.includes('thickness')) return undefined
    const plan = { ...this.plan, roast: without(roast, names) }
    const geometry = geometryFor(plan)
    const shifts = this.lnPulls(plan, geometry).map((ln, m) => ln - (this.base[m] as number))
    const later = medianOf(Float64Array.from(shifts.filter(Number.isFinite)))
    return { measured, added: this.addedBy(geometry.thicknessSpread), later: Number.isFinite(later) ? later : 0 }
  }
  private addedBy(spread: number) {
    return this.thicknessPart(spread) - this.thicknessPart(this.geometry.thicknessSpread)
  }

  /** Variance that one thing moved through its slices puts into ln(pull). */
  private part(move: Move) {
    const moved = this.lnPulls(this.plan, this.geometry, move).map((ln, m) => ln - (this.base[m] as number))
    const known = moved.filter(Number.isFinite)
    return known.length < 2 ? 0 : varianceOf(known)
  }

  /** With thickness, start and cooker at their middles unless moved. */
  private lnPulls(plan: CookPlan, geometry: Geometry, move?: Move): number[] {
    const setting = settingOf(plan, knownCutOf(plan.roast), geometry)
    // a turn at half time stays where the forecast has it
    const course = courseOf(plan, { pullS: this.likelyPullS, searS: 0 })
    const startC = plan.roast.start
    const input = { startC, thicknessSpread: 0, habits: COOKERS[plan.cooker.kind] }
    return SLICES.map((z, m) => {
      const middle = { ...drawMember(this.seed, m, input), startC, levelK: 0 }
      return Math.log(simulate({ ...setting, course }, { ...middle, ...move?.(middle, z) }).moments.pull)
    })
  }
}

const geometryFor = ({ roast }: CookPlan) => geometryOf(knownCutOf(roast), roast.mass, roast)
function without(roast: Roast, names: readonly Side[]): Roast {
  const left = Object.entries(roast).filter(([key]) => !names.some((name) => name === key))
  // Entries lose which keys they had.
  return Object.fromEntries(left) as unknown as Roast
}

/** Quantile of the standard normal distribution, 0 < p < 1. */
function normalQuantile(p: number): number {
  // Hastings' rational approximation (Abramowitz and Stegun 26.2.23), error below 0.00045
  const t = Math.sqrt(-2 * Math.log(Math.min(p, 1 - p)))
  const z = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3)
  return p < 0.5 ? -z : z
}
