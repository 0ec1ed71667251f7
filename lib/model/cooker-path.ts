/**
 * One member's cooker as a path: knots 15 s apart, straight between them, started anew at each event (aim, lid, douse,
 * moved to another heat). It depends on the events and the member's own streams, never on the meat's steps, and is
 * extended as far as it is asked for. Whoever copies its knots from one event to the next needs nothing else of the cooker.
 */
import { type CookerHabits, USUAL_WIND_MPS, warmingTimeS } from './cooker'
import { crossing, hasMet, type Watch } from './crossing'
import {
  type CookerWeather,
  chargeShare,
  DRAUGHT_SHARE,
  HEATING_VALUE_JPKG,
  IDLE_SHARE,
  lossOutside_WpK,
  most_W,
} from './fuel'
import type { Chance } from './random'

export const KNOT_S = 15
/**
 * Columns of a knot: what the dial reads, what the air about the meat is, and the radiant temperature it sees; then what a
 * path is started anew from: the cooker without the lid's dip, the dip, fuel burnt.
 */
const COLUMNS = 6
const BASE = 3
const DIP = 4
const BURNT = 5
const FIRST_KNOTS = 128

const OPEN_TIME_S = 45
/** With the lid off the walls cool this much faster than shut down, toward what is left about the meat. [estimate] */
const OPEN_COOLS = 2
/** Of the dip in the air, the share that the walls do not show: half of what the meat sees is still hot. [estimate] */
const WALLS_KEEP = 0.3
/** Without a deflector the meat's underside sees the fire: more radiant heat for each degree above the day's air. [estimate] */
const DIRECT_SHARE = 0.25
/** Drift is of the fire, and fades as the cooker nears the day's air. Layers of heat grow with the excess over that air. */
const DRIFT_EXCESS_K = 100
const LEVEL_EXCESS_K = 135
const LEVEL_MOST = 1.5
export const DRIFT_KNOT_S = 60
/** What a m/s of wind above the usual adds to the drift outdoors, and the least that is left of it. [estimate] */
const DRIFT_PER_MPS = 0.1
const DRIFT_LEAST = 0.7
/** The fire no longer holds its set point when the most it has would leave the cooker this far below. */
const SHORT_K = 15

/** Where a cooker's drift comes from: kicks by chance, or a path that is asked for minute by minute, in order, K. */
export type Drift = Chance & { readonly path?: (minute: number) => number }
/** What one member's cooker is like. */
export interface CookerMember {
  readonly levelK: number
  readonly warmUpS: number
  /** Over the habits' time constant of the climb. */
  readonly climbFactor: number
  /** Over the habits' loss of heat. */
  readonly lossFactor: number
  /** Where in its swing the thermostat stands at meat-on, share of a period. */
  readonly cyclePhase: number
  readonly chance: Drift
}
/** Where the cooker stands, and with what. */
export interface CookerSite extends CookerWeather {
  readonly airC: number
  /** Share of the direct radiation that reaches the skin: 0 behind a deflector, less where bones shield. */
  readonly direct: number
  /** Fuel left at meat-on, kg; Infinity where the fire is fed enough. */
  readonly fuelKg: number
  /** Fuel that counts from a time on, s after meat-on, in order. */
  readonly refuels: readonly { readonly atS: number; readonly addKg: number }[]
}

/** A place outside this cooker: as warm as `nowC`, tending to `goalC`. */
export interface Elsewhere {
  readonly nowC: number
  readonly goalC: number
  readonly timeConstantS: number
}

/** The drift from one whole minute to the next: so much is kept, and so much a standard normal kicks it. */
export function driftStep(habits: CookerHabits, windMpS: number) {
  const keep = Math.exp(-DRIFT_KNOT_S / (habits.driftMin * 60))
  const windy = habits.indoors ? 1 : Math.max(DRIFT_LEAST, 1 + DRIFT_PER_MPS * (windMpS - USUAL_WIND_MPS))
  return { keep, kickK: habits.driftSdK * windy * Math.sqrt(1 - keep ** 2) }
}

export class Cooker {
  private knots = new Float64Array(FIRST_KNOTS * COLUMNS)
  /** The time of the first knot: the last event, or a knot after it. */
  private fromS = 0
  /** When the charge could not hold the set point any more, and first gave less than the fire would have taken. */
  private ranOutS = Infinity
  private limitedS = Infinity
  private count = 0
  private setC: number
  private lidOpen = false
  /** Where the meat is when it is not in this cooker, and how warm it is there at the last knot. */
  private other: (Elsewhere & { readonly fromS: number; readonly keep: number }) | undefined
  private otherC = 0
  private burns: boolean
  private searing = false
  /** Of `burn_KgpS`, for a knot: with the draught's share as it grows with the heat. */
  private readonly draughtPerW: number
  private readonly kgPerW: number
  private readonly loss_WpK: number
  private readonly most_W: number
  private readonly keep: { readonly climb: number; readonly cool: number; readonly back: number; readonly open: number }
  private readonly keepWarm: number
  private readonly keepOpen = Math.exp(-KNOT_S / OPEN_TIME_S)
  private readonly drift: number[] = [0]
  private readonly driftKeep: number
  private readonly driftKick: number
  private readonly turn: { readonly sin: number; readonly cos: number }
  private sin = 0
  private cos = 1

  constructor(
    private readonly habits: CookerHabits,
    private readonly member: CookerMember,
    private readonly site: CookerSite,
    setC: number,
    private warming: boolean,
  ) {
    const { airC, windMpS } = site
    const step = (minutes: number) => Math.exp(-KNOT_S / (60 * minutes))
    this.setC = Math.min(setC, habits.hottestC)
    this.burns = habits.fuel !== undefined
    this.loss_WpK = lossOutside_WpK(habits, site) * member.lossFactor
    this.most_W = most_W(habits) * member.lossFactor
    this.draughtPerW = DRAUGHT_SHARE / this.most_W
    this.kgPerW = habits.fuel === undefined ? 0 : KNOT_S / HEATING_VALUE_JPKG[habits.fuel]
    this.keep = {
      climb: step(habits.climbMin * member.climbFactor),
      cool: step(habits.coolMin),
      back: step(habits.recoverMin),
      open: 1 - (1 - habits.openShare) * (1 - step(habits.coolMin / OPEN_COOLS)),
    }
    this.keepWarm = Math.exp(-KNOT_S / warmingTimeS(airC, this.setC, member.warmUpS))
    const drift = driftStep(habits, windMpS)
    this.driftKeep = drift.keep
    this.driftKick = drift.kickK
    const angle = (2 * Math.PI * KNOT_S) / (60 * habits.cycleMin)
    this.turn = { sin: Math.sin(angle), cos: Math.cos(angle) }
    const mostC = airC + (this.most_W * this.charge(0, 0)) / this.loss_WpK
    this.begin(0, warming ? airC : Math.min(this.setC, mostC), 0, 0)
  }

  aim(setC: number, timeS: number, searing = false) {
    this.again(timeS)
    this.searing = searing
    this.warming = false
    this.setC = Math.min(setC, this.habits.hottestC)
  }
  /** The fire goes out, or the oven is switched off. */
  douse(timeS: number) {
    this.aim(this.site.airC, timeS)
    this.burns = false
  }
  lid(open: boolean, timeS: number) {
    this.again(timeS)
    this.lidOpen = open
  }
  /** The meat is carried elsewhere, or back into this cooker; the cooker goes on as it was told. */
  carry(to: Elsewhere | undefined, timeS: number) {
    this.other = to && { ...to, fromS: timeS, keep: Math.exp(-KNOT_S / to.timeConstantS) }
    this.again(timeS)
  }
  /** The most that the fire could heat to with the vents open, and what it has left to burn. */
  mostC(timeS: number): number {
    const charge = this.burns ? this.charge(this.burntKg(timeS), timeS) : 0
    return this.site.airC + (this.most_W * charge) / this.loss_WpK
  }

  /** The dial's reading at a time from the last event on. */
  readingC(timeS: number): number {
    return this.at(timeS, 0)
  }
  /** The first instant of a span at which the reading meets a watch; Infinity where it does not. */
  whenMet(watch: Watch, fromS: number, toS: number): number {
    let [startS, startC] = [fromS, this.readingC(fromS)]
    if (hasMet(watch, startC)) return fromS
    while (startS < toS) {
      const knotS = this.fromS + (Math.floor((startS - this.fromS) / KNOT_S + 1e-9) + 1) * KNOT_S
      const endS = Math.min(toS, knotS)
      const endC = this.readingC(endS)
      if (hasMet(watch, endC)) return startS + crossing(startC, endC, watch.levelC) * (endS - startS)
      startS = endS
      startC = endC
    }
    return Infinity
  }
  /**
   * Writes so many knots from a time on to rows of four columns, the last one spare; returns the time of the first. What was
   * before is let go.
   */
  copyKnots(rows: Float32Array, at: number, timeS: number, count: number): number {
    this.forget(Math.floor((timeS - this.fromS) / KNOT_S))
    this.reach(count)
    const { knots } = this
    for (let n = 0; n < count; n++) {
      const place = at + 4 * n
      const knot = COLUMNS * n
      rows[place] = knots[knot] as number
      rows[place + 1] = knots[knot + 1] as number
      rows[place + 2] = knots[knot + 2] as number
    }
    return this.fromS
  }
  private forget(first: number) {
    this.reach(first + 1)
    this.knots.copyWithin(0, COLUMNS * first, COLUMNS * this.count)
    this.count -= first
    this.fromS += first * KNOT_S
  }
  /** The air that the meat meets, and the radiant temperature that it sees. */
  surround(out: { airC: number; radiantC: number }, timeS: number) {
    out.airC = this.at(timeS, 1)
    out.radiantC = this.at(timeS, 2)
  }
  /** Fuel burnt since meat-on, kg. */
  burntKg(timeS: number): number {
    return this.at(timeS, BURNT)
  }
  /** How the charge did until a time from the last event on: what was burnt, when it ran out, whether it was ever short. */
  fireUntil(timeS: number) {
    const ranOutS = this.ranOutS < timeS ? this.ranOutS : Infinity
    return { burntKg: this.burntKg(timeS), ranOutS, limited: this.limitedS < timeS }
  }

  private at(timeS: number, column: number): number {
    const place = (timeS - this.fromS) / KNOT_S
    const i = Math.floor(place)
    if (this.count < i + 2) this.reach(i + 2)
    const a = this.knots[COLUMNS * i + column] as number
    return a + (place - i) * ((this.knots[COLUMNS * (i + 1) + column] as number) - a)
  }

  /** The path starts anew from where it is. */
  private again(timeS: number) {
    // knots beyond the event never come to pass, nor what was noted of them
    if (this.ranOutS > timeS) this.ranOutS = Infinity
    if (this.limitedS > timeS) this.limitedS = Infinity
    this.begin(timeS, this.at(timeS, BASE), this.at(timeS, DIP), this.at(timeS, BURNT))
  }
  private begin(timeS: number, baseC: number, dipK: number, burntKg: number) {
    this.fromS = timeS
    this.count = 0
    const angle = 2 * Math.PI * (timeS / (60 * this.habits.cycleMin) + this.member.cyclePhase)
    this.sin = Math.sin(angle)
    this.cos = Math.cos(angle)
    if (this.other) {
      const { nowC, goalC, fromS, timeConstantS } = this.other
      this.otherC = goalC + (nowC - goalC) * Math.exp((fromS - timeS) / timeConstantS)
    }
    this.put(0, baseC, dipK, burntKg, this.sin, this.otherC)
    this.count = 1
  }

  /** The path as far as so many knots: the cooker's own heat balance, its dip with the lid off, and the fuel that takes. */
  private reach(count: number) {
    while (COLUMNS * count > this.knots.length) this.knots = twice(this.knots)
    const { turn, keep, keepOpen, loss_WpK, burns, other, lidOpen } = this
    const { airC, fuelKg } = this.site
    const openK = 1 - this.habits.openShare
    const last = COLUMNS * (this.count - 1)
    let baseC = this.knots[last + BASE] as number
    let dipK = this.knots[last + DIP] as number
    let burntKg = this.knots[last + BURNT] as number
    let { sin, cos, otherC } = this
    let most_W = burns || this.habits.fuel === undefined ? this.most_W : 0
    let mostC = airC + most_W / loss_WpK
    for (let n = this.count; n < count; n++) {
      const before = sin
      sin = before * turn.cos + cos * turn.sin
      cos = cos * turn.cos - before * turn.sin
      if (other) otherC = other.goalC + (otherC - other.goalC) * other.keep
      if (burns && fuelKg < Infinity) {
        most_W = this.most_W * this.charge(burntKg, this.fromS + (n - 1) * KNOT_S)
        mostC = airC + most_W / loss_WpK
      }
      const beforeC = baseC
      baseC = this.baseAfter(beforeC, mostC)
      const goalK = openK * (baseC - airC)
      dipK = lidOpen ? goalK + (dipK - goalK) * keepOpen : dipK * keep.back
      if (burns) burntKg += this.burnt(beforeC, baseC, most_W, n)
      this.put(n, baseC, dipK, burntKg, sin, otherC)
    }
    this.sin = sin
    this.cos = cos
    this.otherC = otherC
    this.count = Math.max(this.count, count)
  }

  private charge(burntKg: number, timeS: number): number {
    let { fuelKg } = this.site
    if (fuelKg === Infinity) return 1
    for (const { atS, addKg } of this.site.refuels) if (atS <= timeS) fuelKg += addKg
    return chargeShare(fuelKg - burntKg, this.habits.chargeKg)
  }

  private baseAfter(baseC: number, mostC: number): number {
    const { setC } = this
    const { airC } = this.site
    if (this.warming) return Math.min(mostC, setC + (baseC - setC) * this.keepWarm)
    if (this.lidOpen) return airC + (baseC - airC) * this.keep.open
    if (baseC > setC) {
      const idleC = Math.min(setC, this.burns ? airC + IDLE_SHARE * (mostC - airC) : airC)
      return Math.max(setC, idleC + (baseC - idleC) * this.keep.cool)
    }
    // its walls hold heat: falling, it goes by them; climbing, it is the air and the inner face that climb
    if (baseC > mostC) return mostC + (baseC - mostC) * this.keep.cool
    return Math.min(setC, mostC + (baseC - mostC) * this.keep.climb)
  }

  /** Fuel for a knot: all the fire has while it climbs or the lid is off, what the walls lose while it holds, least while it cools. */
  private burnt(baseC: number, nextC: number, most_W: number, knot: number): number {
    const climbs = this.lidOpen || this.warming || nextC > baseC
    const lost_W = this.loss_WpK * (nextC - this.site.airC)
    if (this.site.fuelKg < Infinity) this.noteLow(most_W, climbs, this.fromS + knot * KNOT_S)
    const heat_W = baseC > this.setC ? IDLE_SHARE * most_W : climbs ? most_W : Math.min(most_W, lost_W)
    return heat_W * (1 + this.draughtPerW * heat_W) * this.kgPerW
  }
  private noteLow(most_W: number, climbs: boolean, timeS: number) {
    const mostC = this.site.airC + most_W / this.loss_WpK
    if (this.limitedS === Infinity && most_W < this.most_W && (climbs || mostC < this.setC)) this.limitedS = timeS
    if (this.ranOutS === Infinity && !this.searing && mostC <= this.setC - SHORT_K) this.ranOutS = timeS
  }

  private put(knot: number, baseC: number, dipK: number, burntKg: number, sin: number, otherC: number) {
    const { knots } = this
    const j = COLUMNS * knot
    knots[j + BASE] = baseC
    knots[j + DIP] = dipK
    knots[j + BURNT] = burntKg
    const excessK = baseC - this.site.airC
    const fade = within(0, excessK * (1 / DRIFT_EXCESS_K), 1)
    const swingK = this.driftAt(this.fromS + knot * KNOT_S) + this.habits.cycleK * sin
    const readingC = baseC - dipK + fade * swingK
    knots[j] = readingC
    if (this.other) {
      knots[j + 1] = otherC
      knots[j + 2] = otherC
      return
    }
    const meatC = readingC + this.member.levelK * within(0, excessK * (1 / LEVEL_EXCESS_K), LEVEL_MOST)
    knots[j + 1] = meatC
    knots[j + 2] = meatC + WALLS_KEEP * dipK + DIRECT_SHARE * this.site.direct * excessK
  }

  /** An Ornstein-Uhlenbeck path on knots of whole minutes. It starts at 0: the fire is tended until meat-on. */
  private driftAt(timeS: number): number {
    const place = timeS * (1 / DRIFT_KNOT_S)
    const knot = Math.floor(place)
    const { chance } = this.member
    while (this.drift.length < knot + 2) {
      const last = this.drift.length - 1
      const next = chance.path
        ? chance.path(last + 1)
        : this.driftKeep * (this.drift[last] as number) + this.driftKick * chance.normal()
      this.drift.push(next)
    }
    const a = this.drift[knot] as number
    return a + (place - knot) * ((this.drift[knot + 1] as number) - a)
  }
}

const within = (least: number, x: number, most: number) => Math.min(most, Math.max(least, x))
function twice(row: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(2 * row.length)
  longer.set(row)
  return longer
}
