/** The cooker over time: warming up, holding its set point with drift, lid openings, the climb to a sear. */
import type { CookerKind } from './cook'
import type { Chance } from './random'

/**
 * How a kind of cooker behaves. Warm-up is from the match (or the switch) to within 8 °C of the set point.
 * All are common practice or estimates of ours; no published source is held. [estimate]
 */
export interface CookerHabits {
  readonly fuelled: boolean
  readonly warmUpMin: number
  /** Time constants of the climb toward OVERDRIVE above the set point, and of cooling toward it. */
  readonly climbMin: number
  readonly coolMin: number
  readonly hottestC: number
  /** Air movement over that of a still oven. */
  readonly hFactor: number
  /** Meat level against the dial, and drift of the whole cooker: standard deviations, K, and the drift's memory. */
  readonly levelSdK: number
  readonly driftSdK: number
  readonly driftMin: number
}
export const COOKERS: Readonly<Record<CookerKind, CookerHabits>> = {
  oven: {
    fuelled: false,
    warmUpMin: 18,
    climbMin: 10,
    coolMin: 15,
    hottestC: 275,
    hFactor: 1,
    levelSdK: 7,
    driftSdK: 3,
    driftMin: 10,
  },
  'convection-oven': {
    fuelled: false,
    warmUpMin: 14,
    climbMin: 9,
    coolMin: 12,
    hottestC: 275,
    hFactor: 1.9,
    levelSdK: 5,
    driftSdK: 2,
    driftMin: 10,
  },
  'ceramic-charcoal': {
    fuelled: true,
    warmUpMin: 55,
    climbMin: 8,
    coolMin: 45,
    hottestC: 400,
    hFactor: 1,
    levelSdK: 12,
    driftSdK: 7,
    driftMin: 15,
  },
  'kettle-charcoal': {
    fuelled: true,
    warmUpMin: 45,
    climbMin: 7,
    coolMin: 20,
    hottestC: 370,
    hFactor: 1,
    levelSdK: 12,
    driftSdK: 7,
    driftMin: 15,
  },
}

/** A cooker counts as steady within this of its set point, once it has stayed so for ten minutes. */
export const STEADY_K = 8
export const STEADY_FOR_S = 600
/** A climbing cooker heads this far above its set point until it is there. [estimate] */
const OVERDRIVE_K = 60
/** With the lid off the meat stands in rising air between the fire's and the day's. [estimate] */
const OPEN_SHARE = 0.3
const OPEN_TIME_S = 45
/** Drift is of the fire, and fades as the cooker nears the day's air. Layers of heat grow with the excess over that air. */
const DRIFT_EXCESS_K = 100
const LEVEL_EXCESS_K = 135
const LEVEL_MOST = 1.5
const KNOT_S = 60

/** What one member's cooker is like. */
export interface CookerMember {
  readonly levelK: number
  readonly warmUpS: number
  /** Over the habits' time constant of the climb. */
  readonly climbFactor: number
  readonly chance: Chance
}

/**
 * One member's cooker from meat-on. The drift is an Ornstein-Uhlenbeck path on knots one minute apart, drawn from the
 * member's own stream, so that it does not depend on the steps taken. It starts at 0: the fire is tended until meat-on.
 */
export class Cooker {
  private baseC: number
  private setC: number
  private lidOpen = false
  private readonly drift: number[] = [0]
  private readonly keep: number
  private readonly kick: number

  constructor(
    private readonly habits: CookerHabits,
    private readonly member: CookerMember,
    private readonly airC: number,
    setC: number,
    private warming: boolean,
  ) {
    this.setC = Math.min(setC, habits.hottestC)
    this.baseC = warming ? airC : this.setC
    this.keep = Math.exp(-KNOT_S / (habits.driftMin * 60))
    this.kick = habits.driftSdK * Math.sqrt(1 - this.keep ** 2)
  }

  aim(setC: number) {
    this.warming = false
    this.setC = Math.min(setC, this.habits.hottestC)
  }
  /** The fire goes out, or the oven is switched off. */
  douse() {
    this.warming = false
    this.setC = this.airC
  }
  lid(open: boolean) {
    this.lidOpen = open
  }

  /** The base temperature after a step; `settle` makes it so. */
  baseAfter(stepS: number): number {
    const { baseC, setC } = this
    const tend = (goalC: number, timeS: number) => goalC + (baseC - goalC) * Math.exp(-stepS / timeS)
    if (this.lidOpen) return tend(this.airC + OPEN_SHARE * (setC - this.airC), OPEN_TIME_S)
    if (this.warming) return tend(setC, warmUpTimeS(this.member.warmUpS, setC - this.airC))
    if (baseC > setC) return tend(setC, this.habits.coolMin * 60)
    return Math.min(setC, tend(setC + OVERDRIVE_K, this.habits.climbMin * this.member.climbFactor * 60))
  }
  settle(baseC: number) {
    this.baseC = baseC
  }

  /** The dial's reading with the given base at a time after meat-on. */
  readingC(timeS: number, baseC = this.baseC): number {
    return baseC + this.driftAt(timeS) * within(0, (baseC - this.airC) / DRIFT_EXCESS_K, 1)
  }
  /** The temperature that the meat meets. */
  atMeatC(timeS: number, baseC = this.baseC): number {
    const layers = within(0, (baseC - this.airC) / LEVEL_EXCESS_K, LEVEL_MOST)
    return this.readingC(timeS, baseC) + this.member.levelK * layers
  }

  private driftAt(timeS: number): number {
    const knot = Math.floor(timeS / KNOT_S)
    while (this.drift.length < knot + 2)
      this.drift.push(
        this.keep * (this.drift[this.drift.length - 1] as number) + this.kick * this.member.chance.normal(),
      )
    const a = this.drift[knot] as number
    return a + (timeS / KNOT_S - knot) * ((this.drift[knot + 1] as number) - a)
  }
}

const within = (least: number, x: number, most: number) => Math.min(most, Math.max(least, x))

const warmUpTimeS = (warmUpS: number, riseK: number) => warmUpS / Math.log(Math.max(1.5, riseK / STEADY_K))

/** The reading `sinceLitS` after the match was struck, before any meat is in. */
export function warmingC(airC: number, setC: number, warmUpS: number, sinceLitS: number): number {
  if (sinceLitS <= 0) return airC
  return setC - (setC - airC) * Math.exp(-sinceLitS / warmUpTimeS(warmUpS, setC - airC))
}
/** Time from the match to within 8 °C of the set point; a warmer day, a little less. */
export const steadyAfterS = (airC: number, setC: number, warmUpS: number) => (setC - airC > STEADY_K ? warmUpS : 0)
