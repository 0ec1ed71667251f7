/** What meat lets go as its protein shrinks, juice and melted fat, and what that does to how it stores and conducts heat. */
import type { Composition } from './materials'

/**
 * Water that meat holds in the end, kg per kg raw: 0.745 - 0.345 / (1 + 30 e^(-0.25 (T - 52))), of samples with 0.745 of
 * water [water-holding-2007]. As a logistic: middle 52 + ln(30)/0.25, width 1/0.25.
 */
const MOST_WATER = 0.345
const AT_WATER = 0.745
const MIDDLE_C = 65.6
const WIDTH_K = 4
/** [own-fit] of the samples' juice, what a whole roast lets go. */
const OF_SAMPLES = 0.9
/** [own-fit] share of the fat that melts out and drips, along with the juice: both wait for the collagen to shrink. */
const FAT_DRIPS = 0.12
/** [own-fit] first-order, and only ever outward: juice has far to go in a roast. */
export const JUICE_TIME_S = 50 * 60

/** What a kg of roast as weighed lets go, kg. */
export interface Yield {
  readonly juice: number
  readonly fat: number
}
export const yieldOf = ({ water, fat }: Pick<Composition, 'water' | 'fat'>, boneShare: number): Yield => ({
  juice: OF_SAMPLES * MOST_WATER * (water / AT_WATER) * (1 - boneShare),
  fat: FAT_DRIPS * fat * (1 - boneShare),
})
/** Share of that which is let go in the end at a temperature. */
export const letGoAt = (tempC: number) => 1 / (1 + Math.exp(-(tempC - MIDDLE_C) / WIDTH_K))

/** Of the raw meat's water, what can dry out; the juice is the rest, and what is bound. Only thin roasts feel it. [estimate] */
export const DRYABLE_SHARE = 0.35

/** Juice is mostly water, so it takes more heat capacity than mass with it. The floor keeps dried cells in bounds. */
export const CAPACITY_PER_JUICE = 1.1
export const CAPACITY_FLOOR = 0.45
export const capacityLeft = (juice: number) => Math.max(CAPACITY_FLOOR, 1 - CAPACITY_PER_JUICE * juice)
/**
 * Meat with less water conducts less [choi-okos-1986], and shrinks, which leaves it a narrower way: together 0.6 of the juice
 * share at 60 to 80 °C. The rest, channels left empty between the fibres, is an [estimate].
 */
export const CONDUCTION_PER_JUICE = 1
export const conductionLeft = (juice: number) => 1 - CONDUCTION_PER_JUICE * juice
