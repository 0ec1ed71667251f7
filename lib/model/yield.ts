/** Juice that meat lets go as its protein shrinks, and what that does to its heat capacity. */

/** [own-trial] most juice let go by boneless meat of 72 % water, share of the mass; middle and width of the rise. */
const MOST = 0.158
const AT_WATER = 0.72
const MIDDLE_C = 67
const WIDTH_K = 6
/** [own-trial] first-order, and only ever outward. */
export const JUICE_TIME_S = 20 * 60

/** Share of the local mass that is let go in the end at a temperature. */
export const juiceAt = (tempC: number, water: number, boneShare: number) =>
  (MOST * (water / AT_WATER) * (1 - boneShare)) / (1 + Math.exp(-(tempC - MIDDLE_C) / WIDTH_K))

/** Juice is mostly water, so it takes more heat capacity than mass with it. The floor keeps dried cells in bounds. */
const CAPACITY_PER_JUICE = 1.1
const CAPACITY_FLOOR = 0.45
export const capacityLeft = (juice: number) => Math.max(CAPACITY_FLOOR, 1 - CAPACITY_PER_JUICE * juice)
