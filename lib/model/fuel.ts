/** What a fire burns: heat in the fuel, the draught that carries some of it away, and how a charge burns down. */
import type { CookerHabits } from './cooker'

export type FuelKind = 'charcoal' | 'wood' | 'pellets'

/** Lower heating value, J/kg. [ipcc-2006] charcoal and air-dry wood; [iso-17225] the least of a pellet of class A1. */
export const HEATING_VALUE_JPKG: Readonly<Record<FuelKind, number>> = {
  charcoal: 29.5e6,
  wood: 15.6e6,
  pellets: 16.5e6,
}
/** The more air a fire takes, the more heat leaves with it: at full draught this much on top of what the walls lose. [estimate] */
const DRAUGHT_SHARE = 1
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

/** Walls' loss in a wind, W/K, from what it is in the usual one. */
export const lossInWind_WpK = (habits: CookerHabits, windMpS: number, usualMpS: number) =>
  (habits.loss_WpK * (1 + habits.windShare * windMpS)) / (1 + habits.windShare * usualMpS)
