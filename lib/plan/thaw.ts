import { type Kilograms, type Seconds, seconds } from '../units'

const KG_PER_LB = 0.45359237
const DAY_S = 24 * 3600

/** [fsis-big-thaw] whole turkeys: up to so many pounds, days in the refrigerator and hours in cold water, the longer end of each range. */
const TURKEY_FROM_LB = 4
const TURKEYS = [
  { toLb: 12, days: 3, waterH: 6 },
  { toLb: 16, days: 4, waterH: 8 },
  { toLb: 20, days: 5, waterH: 10 },
  { toLb: 24, days: 6, waterH: 12 },
] as const
/** [fsis-big-thaw] a day in the refrigerator for each 4 to 5 lb; half an hour in cold water for each lb. */
const LB_PER_DAY = 4
const WATER_S_PER_LB = 1800

/** The catalogue names whole birds so. */
export const isWholeBird = (cut: string) => cut.endsWith('-whole')

export interface Thaw {
  readonly fridge: Seconds
  /** In cold water changed every 30 min; cooked at once after it. */
  readonly water: Seconds
}

/** How long a frozen roast takes to thaw: by the table for whole birds where it reaches, else by the rule. */
export function thawOf(mass: Kilograms, wholeBird = false): Thaw {
  // A gram of slack: 12 lb written in kilograms is still 12 lb.
  const lb = mass / KG_PER_LB - 0.002
  const row = wholeBird && lb >= TURKEY_FROM_LB - 0.004 ? TURKEYS.find(({ toLb }) => lb <= toLb) : undefined
  if (row) return { fridge: seconds(row.days * DAY_S), water: seconds(row.waterH * 3600) }
  return {
    fridge: seconds(Math.ceil(lb / LB_PER_DAY) * DAY_S),
    water: seconds(Math.ceil(lb) * WATER_S_PER_LB),
  }
}
