/** What a fire burns: heat in the fuel, the draught that carries some of it away, and how a charge burns down. */
import type { Rain } from './cook'
import { type CookerHabits, HEADROOM_K, USUAL_AIR_C, USUAL_WIND_MPS } from './cooker'
import type { Fire } from './fire'
import { rainLoss_WpK } from './rain'

export type FuelKind = 'charcoal' | 'wood' | 'pellets'

const NAMES: Readonly<Record<FuelKind, string>> = { charcoal: 'charcoal', wood: 'dry wood', pellets: 'pellets' }
export const fuelName = (kind: FuelKind) => NAMES[kind]

/** Lower heating value, J/kg. [ipcc-2006] charcoal and air-dry wood; [iso-17225] the least of a pellet of class A1. */
export const HEATING_VALUE_JPKG: Readonly<Record<FuelKind, number>> = {
  charcoal: 29.5e6,
  wood: 15.6e6,
  pellets: 16.5e6,
}
/** The more air a fire takes, the more heat leaves with it: at full draught this much on top of what the walls lose. [estimate] */
export const DRAUGHT_SHARE = 1
/** A fire shut down smoulders at this share of its most. [estimate] */
export const IDLE_SHARE = 0.12

/** Fuel burnt for each s at `heat` W into the cooker, of which it can give `most`. */
export const burn_KgpS = (fuel: FuelKind, heat_W: number, most_W: number) =>
  (heat_W * (1 + (DRAUGHT_SHARE * heat_W) / most_W)) / HEATING_VALUE_JPKG[fuel]

/** The most a charge can still give, share of a full one's: the two-thirds power, as of the surface of shrinking coals. */
export function chargeShare(leftKg: number, fullKg: number): number {
  if (leftKg >= fullKg) return 1
  const side = Math.cbrt(Math.max(0, leftKg) / fullKg)
  return side * side
}

/** Mean of the excess over the air while a cooker warms up, as a share of what it comes to. [estimate] */
const WARMING_SHARE = 0.7
/** Burnt from the match to meat-on, kg: the cooker's own heat, and what its walls lose till it is steady and while it waits. */
export function warmUpFuelKg(habits: CookerHabits, weather: CookerWeather, riseK: number, fire: Fire): number {
  if (habits.fuel === undefined || riseK <= 0) return 0
  const loss_WpK = lossOutside_WpK(habits, weather)
  const stored_J = loss_WpK * habits.coolMin * 60 * riseK
  const waitS = Math.max(0, -fire.litS - fire.steadyAfterS)
  const lost_J = loss_WpK * riseK * (WARMING_SHARE * fire.steadyAfterS + waitS)
  const share = (loss_WpK * riseK) / most_W(habits)
  return ((stored_J + lost_J) * (1 + DRAUGHT_SHARE * share)) / HEATING_VALUE_JPKG[habits.fuel]
}

/** All the fire can give with its vents open, W: on the usual day, some way above the hottest it is used at. */
export const most_W = (habits: CookerHabits) => (habits.hottestC + HEADROOM_K - USUAL_AIR_C) * habits.loss_WpK

/** What the day does to a cooker where it stands. */
export interface CookerWeather {
  readonly windMpS: number
  /** Absent, it is dry. */
  readonly rain?: Rain | undefined
}
/** Walls' loss in a wind, W/K, from what it is in the usual one, and in rain. */
export const lossOutside_WpK = (habits: CookerHabits, { windMpS, rain }: CookerWeather) =>
  (habits.loss_WpK * (1 + habits.windShare * windMpS)) / (1 + habits.windShare * USUAL_WIND_MPS) +
  rainLoss_WpK(habits, rain)
