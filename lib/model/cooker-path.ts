/**
 * One member's cooker as a path: knots 15 s apart, straight between them, started anew at each event (aim, lid, douse,
 * moved to another heat). It depends on the events and the member's own streams, never on the meat's steps, and is
 * extended as far as it is asked for. Whoever copies `knots` from one event to the next needs nothing else of the cooker.
 */
import { type CookerHabits, USUAL_WIND_MPS, warmingTimeS } from './cooker'
import { crossing, hasMet, type Watch } from './crossing'
import { burn_KgpS, chargeShare, IDLE_SHARE, lossInWind_WpK, most_W } from './fuel'
import type { Chance } from './random'

export const KNOT_S = 15
/** Columns of a knot: what the dial reads, what the air about the meat is, and the radiant temperature it sees. */
export const KNOT_COLUMNS = 3
/** Columns of the state that a path is started anew from: cooker without the lid's dip, the dip, fuel burnt. */
const STATE_COLUMNS = 3

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
const DRIFT_KNOT_S = 60
/** What a m/s of wind above the usual adds to the drift outdoors, and the least that is left of it. [estimate] */
const DRIFT_PER_MPS = 0.1
const DRIFT_LEAST = 0.7
/** The fire no longer holds its set point when the most it has would leave the cooker this far below. */
const SHORT_K = 15

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
  readonly chance: Chance
}
/** Where the cooker stands, and with what. */
export interface CookerSite {
  readonly airC: number
  readonly windMpS: number
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

export class Cooker {
  /** Knots from the last event on, `KNOT_COLUMNS` to each. */
  knots = new Float64Array(1024 * KNOT_COLUMNS)
  /** When the last event was: the time of the first knot. */
  fromS = 0
  /** The first time at which the charge could not hold the set point any more. */
  ranOutS = Infinity
  /** Whether the charge ever gave less than the fire would have taken. */
  limited = false
  private states = new Float64Array(1024 * STATE_COLUMNS)
  private count = 0
  private setC: number
  private lidOpen = false
  /** Where the meat is when it is not in this cooker, and how warm it is there at the last knot. */
  private other: (Elsewhere & { readonly fromS: number; readonly keep: number }) | undefined
  private otherC = 0
  private burns: boolean
  private searing = false
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
    this.loss_WpK = lossInWind_WpK(habits, windMpS) * member.lossFactor
    this.most_W = most_W(habits) * member.lossFactor
    this.keep = {
      climb: step(habits.climbMin * member.climbFactor),
      cool: step(habits.coolMin),
      back: step(habits.recoverMin),
      open: 1 - (1 - habits.openShare) * (1 - step(habits.coolMin / OPEN_COOLS)),
    }
    this.keepWarm = Math.exp(-KNOT_S / warmingTimeS(airC, this.setC, member.warmUpS))
    this.driftKeep = Math.exp(-DRIFT_KNOT_S / (habits.driftMin * 60))
    const windy = habits.indoors ? 1 : Math.max(DRIFT_LEAST, 1 + DRIFT_PER_MPS * (windMpS - USUAL_WIND_MPS))
    this.driftKick = habits.driftSdK * windy * Math.sqrt(1 - this.driftKeep ** 2)
    const angle = (2 * Math.PI * KNOT_S) / (60 * habits.cycleMin)
    this.turn = { sin: Math.sin(angle), cos: Math.cos(angle) }
    const mostC = airC + (this.most_W * this.charge(0)) / this.loss_WpK
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
  mostC = (timeS: number) =>
    this.site.airC + (this.most_W * (this.burns ? this.charge(this.burntKg(timeS)) : 0)) / this.loss_WpK

  /** The dial's reading at a time from the last event on. */
  readingC = (timeS: number) => this.at(timeS, 0)
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
  /** Writes knots from one on to rows of four columns, the last one spare. */
  copyKnots(rows: Float32Array, at: number, first: number, count: number) {
    while (this.count < first + count) this.extend()
    const { knots } = this
    for (let i = 0; i < count; i++) {
      const knot = KNOT_COLUMNS * (first + i)
      const place = at + 4 * i
      rows[place] = knots[knot] as number
      rows[place + 1] = knots[knot + 1] as number
      rows[place + 2] = knots[knot + 2] as number
    }
  }
  /** The air that the meat meets, and the radiant temperature that it sees. */
  surround(out: { airC: number; radiantC: number }, timeS: number) {
    out.airC = this.at(timeS, 1)
    out.radiantC = this.at(timeS, 2)
  }
  /** Fuel burnt since meat-on, kg. */
  burntKg = (timeS: number) => this.stateAt(timeS, 2)

  private at(timeS: number, column: number): number {
    const place = (timeS - this.fromS) / KNOT_S
    const i = Math.floor(place)
    while (this.count < i + 2) this.extend()
    const a = this.knots[KNOT_COLUMNS * i + column] as number
    return a + (place - i) * ((this.knots[KNOT_COLUMNS * (i + 1) + column] as number) - a)
  }
  private stateAt(timeS: number, column: number): number {
    const place = (timeS - this.fromS) / KNOT_S
    const i = Math.floor(place)
    while (this.count < i + 2) this.extend()
    const a = this.states[STATE_COLUMNS * i + column] as number
    return a + (place - i) * ((this.states[STATE_COLUMNS * (i + 1) + column] as number) - a)
  }

  /** The path starts anew from where it is. */
  private again(timeS: number) {
    this.begin(timeS, this.stateAt(timeS, 0), this.stateAt(timeS, 1), this.stateAt(timeS, 2))
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
    this.push(baseC, dipK, burntKg)
  }

  /** One more knot: the cooker's own heat balance, its dip with the lid off, and the fuel that took. */
  private extend() {
    const { airC } = this.site
    const last = STATE_COLUMNS * (this.count - 1)
    const baseC = this.states[last] as number
    const dipK = this.states[last + 1] as number
    const burntKg = this.states[last + 2] as number
    const sin = this.sin
    this.sin = sin * this.turn.cos + this.cos * this.turn.sin
    this.cos = this.cos * this.turn.cos - sin * this.turn.sin
    if (this.other) this.otherC = this.other.goalC + (this.otherC - this.other.goalC) * this.other.keep
    const most_W = this.burns ? this.most_W * this.charge(burntKg) : this.habits.fuel ? 0 : this.most_W
    const nextC = this.baseAfter(baseC, airC + most_W / this.loss_WpK)
    const goalK = (1 - this.habits.openShare) * (nextC - airC)
    const nextDipK = this.lidOpen ? goalK + (dipK - goalK) * this.keepOpen : dipK * this.keep.back
    this.push(nextC, nextDipK, burntKg + (this.burns ? this.burnt(baseC, nextC, most_W) : 0))
  }

  private charge(burntKg: number): number {
    let { fuelKg } = this.site
    if (fuelKg === Infinity) return 1
    const nowS = this.fromS + Math.max(0, this.count - 1) * KNOT_S
    for (const { atS, addKg } of this.site.refuels) if (atS <= nowS) fuelKg += addKg
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
  private burnt(baseC: number, nextC: number, most_W: number): number {
    const { fuel } = this.habits
    if (fuel === undefined) return 0
    const climbs = this.lidOpen || this.warming || nextC > baseC
    const lost_W = this.loss_WpK * (nextC - this.site.airC)
    if (this.site.fuelKg < Infinity) this.noteLow(most_W, climbs)
    const heat_W = baseC > this.setC ? IDLE_SHARE * most_W : climbs ? most_W : Math.min(most_W, lost_W)
    return KNOT_S * burn_KgpS(fuel, heat_W, this.most_W)
  }
  private noteLow(most_W: number, climbs: boolean) {
    const mostC = this.site.airC + most_W / this.loss_WpK
    if (most_W < this.most_W && (climbs || mostC < this.setC)) this.limited = true
    if (this.ranOutS === Infinity && !this.searing && mostC <= this.setC - SHORT_K)
      this.ranOutS = this.fromS + this.count * KNOT_S
  }

  private push(baseC: number, dipK: number, burntKg: number) {
    if (KNOT_COLUMNS * (this.count + 1) > this.knots.length) {
      this.knots = twice(this.knots)
      this.states = twice(this.states)
    }
    const timeS = this.fromS + this.count * KNOT_S
    const i = STATE_COLUMNS * this.count
    const j = KNOT_COLUMNS * this.count
    this.count++
    this.states[i] = baseC
    this.states[i + 1] = dipK
    this.states[i + 2] = burntKg
    const excessK = baseC - this.site.airC
    const fade = within(0, excessK / DRIFT_EXCESS_K, 1)
    const readingC = baseC - dipK + fade * (this.driftAt(timeS) + this.habits.cycleK * this.sin)
    this.knots[j] = readingC
    if (this.other) {
      this.knots[j + 1] = this.otherC
      this.knots[j + 2] = this.otherC
      return
    }
    const meatC = readingC + this.member.levelK * within(0, excessK / LEVEL_EXCESS_K, LEVEL_MOST)
    this.knots[j + 1] = meatC
    this.knots[j + 2] = meatC + WALLS_KEEP * dipK + DIRECT_SHARE * this.site.direct * excessK
  }

  /** An Ornstein-Uhlenbeck path on knots of whole minutes. It starts at 0: the fire is tended until meat-on. */
  private driftAt(timeS: number): number {
    const knot = Math.floor(timeS / DRIFT_KNOT_S)
    while (this.drift.length < knot + 2)
      this.drift.push(
        this.driftKeep * (this.drift[this.drift.length - 1] as number) + this.driftKick * this.member.chance.normal(),
      )
    const a = this.drift[knot] as number
    return a + (timeS / DRIFT_KNOT_S - knot) * ((this.drift[knot + 1] as number) - a)
  }
}

const within = (least: number, x: number, most: number) => Math.min(most, Math.max(least, x))
function twice(row: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(2 * row.length)
  longer.set(row)
  return longer
}
