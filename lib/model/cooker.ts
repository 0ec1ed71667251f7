/** How each kind of cooker behaves. The temperatures themselves are a path: `cooker-path.ts`. */
import type { CookerKind } from './cook'
import type { FuelKind } from './fuel'

/**
 * All figures are common practice or estimates of ours; no published source is held for any of them. [estimate]
 * They hold outdoors at 15 °C and 2 m/s of wind, as the shoot file assumes, and indoors at 21 °C in still air.
 */
export interface CookerHabits {
  /** What it burns; none where it runs on the mains or on bottled gas, which are not planned by mass. */
  readonly fuel: FuelKind | undefined
  /** Its vents are opened for a sear: charcoal and wood. */
  readonly vents: boolean
  readonly indoors: boolean
  /** From the match (or the switch) to within 8 °C of the set point. */
  readonly warmUpMin: number
  /** Its spread in the logarithm, where that is known better than for all cookers. */
  readonly warmUpLog?: number
  /** Time constants: of the climb with all it has, of cooling with the fire shut down, of coming back after the lid. */
  readonly climbMin: number
  readonly coolMin: number
  readonly recoverMin: number
  readonly hottestC: number
  /** Heat lost for each degree above the air, W/K, and what a m/s of wind adds to it, as a share of still air's. */
  readonly loss_WpK: number
  readonly windShare: number
  /** What catches rain, m², and the most that being wet adds to the loss, as a share of the dry one's. */
  readonly lidM2: number
  readonly wetMost: number
  /** A full charge of fuel, kg: with less the fire's most falls as the two-thirds power (the surface that burns). */
  readonly chargeKg: number
  /** Film over that of a still oven, and whether the meat is in a bag, from which nothing evaporates. */
  readonly hFactor: number
  readonly sealed: boolean
  /** Share of the excess over the day's air that is left about the meat with the lid off. */
  readonly openShare: number
  /** Meat level against the dial, and drift of the whole cooker: standard deviations, K, and the drift's memory. */
  readonly levelSdK: number
  readonly driftSdK: number
  readonly driftMin: number
  /** A thermostat's swing about its set point, half of it, and its period; 0 where there is none. */
  readonly cycleK: number
  readonly cycleMin: number
}
const ELECTRIC = { fuel: undefined, vents: false, chargeKg: 0 } as const
const INDOORS = { indoors: true, windShare: 0, loss_WpK: 5, lidM2: 0, wetMost: 0 } as const
const AIR = { sealed: false, hFactor: 1, openShare: 0.3 } as const
const FIRE = { vents: true, indoors: false, cycleK: 0, cycleMin: 1, driftMin: 15 } as const

export const COOKERS: Readonly<Record<CookerKind, CookerHabits>> = {
  oven: {
    ...ELECTRIC,
    ...INDOORS,
    ...AIR,
    warmUpMin: 18,
    climbMin: 16,
    coolMin: 40,
    recoverMin: 4,
    hottestC: 275,
    levelSdK: 7,
    driftSdK: 3,
    driftMin: 10,
    cycleK: 6,
    cycleMin: 9,
  },
  'convection-oven': {
    ...ELECTRIC,
    ...INDOORS,
    ...AIR,
    warmUpMin: 14,
    climbMin: 14,
    coolMin: 35,
    recoverMin: 3,
    hottestC: 275,
    hFactor: 1.9,
    levelSdK: 5,
    driftSdK: 2,
    driftMin: 10,
    cycleK: 4,
    cycleMin: 6,
  },
  'ceramic-charcoal': {
    ...FIRE,
    ...AIR,
    fuel: 'charcoal',
    warmUpMin: 55,
    climbMin: 15,
    coolMin: 90,
    recoverMin: 3,
    hottestC: 400,
    loss_WpK: 8.5,
    windShare: 0.03,
    // its thick wall resists more than the air about it
    lidM2: 0.2,
    wetMost: 0.15,
    chargeKg: 1.5,
    levelSdK: 12,
    driftSdK: 7,
  },
  'kettle-charcoal': {
    ...FIRE,
    ...AIR,
    fuel: 'charcoal',
    warmUpMin: 45,
    climbMin: 11,
    coolMin: 30,
    recoverMin: 4,
    hottestC: 370,
    loss_WpK: 13.5,
    windShare: 0.1,
    // 57 cm across
    lidM2: 0.26,
    wetMost: 0.5,
    chargeKg: 1,
    levelSdK: 12,
    driftSdK: 7,
  },
  'offset-wood': {
    ...FIRE,
    ...AIR,
    fuel: 'wood',
    warmUpMin: 60,
    climbMin: 20,
    coolMin: 30,
    recoverMin: 6,
    hottestC: 230,
    loss_WpK: 40,
    windShare: 0.12,
    lidM2: 0.9,
    wetMost: 0.5,
    chargeKg: 3,
    // the draught of a firebox at one end moves the air across the meat
    hFactor: 1.4,
    levelSdK: 15,
    driftSdK: 10,
    driftMin: 20,
  },
  pellet: {
    ...AIR,
    fuel: 'pellets',
    vents: false,
    indoors: false,
    warmUpMin: 20,
    climbMin: 16,
    coolMin: 25,
    recoverMin: 5,
    hottestC: 260,
    loss_WpK: 13,
    windShare: 0.1,
    lidM2: 0.4,
    wetMost: 0.5,
    // a hopper feeds its fire evenly until it is all but empty
    chargeKg: 0.2,
    hFactor: 1.5,
    levelSdK: 9,
    driftSdK: 4,
    driftMin: 12,
    cycleK: 6,
    cycleMin: 8,
  },
  'gas-grill': {
    ...ELECTRIC,
    ...AIR,
    indoors: false,
    warmUpMin: 15,
    climbMin: 9,
    coolMin: 12,
    recoverMin: 3,
    hottestC: 320,
    loss_WpK: 25,
    windShare: 0.15,
    lidM2: 0.45,
    wetMost: 0.5,
    levelSdK: 14,
    driftSdK: 6,
    driftMin: 12,
    cycleK: 3,
    cycleMin: 5,
  },
  'water-bath': {
    ...ELECTRIC,
    ...INDOORS,
    warmUpMin: 30,
    climbMin: 240,
    coolMin: 300,
    recoverMin: 3,
    hottestC: 95,
    // [baldwin-2012] 95 W/m²K about a bag in stirred water; over the still oven's film
    hFactor: 95 / 10.8,
    sealed: true,
    // the lid of a bath keeps steam in; its water does not feel it
    openShare: 1,
    levelSdK: 0.3,
    driftSdK: 0.2,
    driftMin: 10,
    cycleK: 0.1,
    cycleMin: 5,
  },
}

/** A cooker counts as steady within this of its set point, once it has stayed so for ten minutes. */
export const STEADY_K = 8
export const STEADY_FOR_S = 600
/** All it has would take a cooker this far above the hottest it is used at. [estimate] */
export const HEADROOM_K = 60
/** The day that the habits hold for. */
export const USUAL_AIR_C = 15
export const USUAL_WIND_MPS = 2

const warmUpTimeS = (warmUpS: number, riseK: number) => warmUpS / Math.log(Math.max(1.5, riseK / STEADY_K))
/** Time constant of a warm-up toward a set point. */
export const warmingTimeS = (airC: number, setC: number, warmUpS: number) => warmUpTimeS(warmUpS, setC - airC)

/** The reading `sinceLitS` after the match was struck, before any meat is in. */
export function warmingC(airC: number, setC: number, warmUpS: number, sinceLitS: number): number {
  if (sinceLitS <= 0) return airC
  return setC - (setC - airC) * Math.exp(-sinceLitS / warmUpTimeS(warmUpS, setC - airC))
}
/** Time from the match to within 8 °C of the set point; a warmer day, a little less. */
export const steadyAfterS = (airC: number, setC: number, warmUpS: number) => (setC - airC > STEADY_K ? warmUpS : 0)
