/** Rain on a cooker's lid: the water it catches is warmed and boiled off by the fire beneath. */
import type { Rain } from './cook'
import { type CookerHabits, USUAL_AIR_C } from './cooker'
import { LATENT_JPKG } from './surface'

/** kg/m² in an hour, which is mm: a drizzle that one works in, a downpour that one does not. [estimate] */
const RATE_KGPM2H: Readonly<Record<Rain, number>> = { light: 2, heavy: 10 }
/** Of water from the air's heat to its boil; the mean of [choi-okos-1986] there is 0.2 % more. */
const WATER_JPKGK = 4186
const BOILS_C = 100
/** A roast's fire stands about so far above the air; the lid's loss to the rain is spread over that rise. [estimate] */
const USUAL_RISE_K = 135

/**
 * What the rain adds to the walls' loss, W/K. No more boils off than the wetted walls let through: with water on it the
 * outside resists heat no more, the air inside does, so what is wet loses at most about twice as much as dry. [estimate]
 */
export function rainLoss_WpK({ lidM2, wetMost, loss_WpK }: CookerHabits, rain: Rain | undefined): number {
  if (rain === undefined) return 0
  const caught_KgpS = (lidM2 * RATE_KGPM2H[rain]) / 3600
  const taken_W = caught_KgpS * (LATENT_JPKG + WATER_JPKGK * (BOILS_C - USUAL_AIR_C))
  return Math.min(taken_W / USUAL_RISE_K, wetMost * loss_WpK)
}
