/** What is known about harm: lethality, the authority's minimums, and time in the range to hurry through. */
import type { Seconds } from '../units'
import { fromFahrenheit } from '../units'
import type { Animal, Cut } from './cuts'
import { lethalityPerS } from './lethality'
import type { SourceId } from './sources'

/** [fsis-appendix-a-1999] as printed: °F and seconds of dwell for 6.5 log once the coldest point is there. */
export const APPENDIX_A: readonly (readonly [number, number])[] = [
  [130, 6720],
  [131, 5340],
  [132, 4260],
  [133, 3360],
  [134, 2700],
  [135, 2160],
  [136, 1680],
  [137, 1380],
  [138, 1080],
  [139, 900],
  [140, 720],
  [141, 540],
  [142, 480],
  [143, 360],
  [144, 300],
  [145, 240],
  [146, 169],
  [147, 134],
  [148, 107],
  [149, 85],
  [150, 67],
  [151, 54],
  [152, 43],
  [153, 34],
  [154, 27],
  [155, 22],
  [156, 17],
  [157, 14],
  [158, 0],
]
export const TABLE_SOURCE: SourceId = 'fsis-appendix-a-1999'
export const TABLE_LOG = 6.5
/** The table's range: no credit below 130 °F. */
export const LETHALITY_FROM_C = fromFahrenheit(130)

/** Log reduction of one point over an evenly sampled history (°C), logarithms of the rate taken as straight in between. */
export function lethalityLog(historyC: ArrayLike<number>, stepS: number): number {
  let sum = 0
  for (let i = 1; i < historyC.length; i++) sum += intervalLog(historyC[i - 1] as number, historyC[i] as number, stepS)
  return sum
}
function intervalLog(a: number, b: number, stepS: number) {
  const low = Math.min(a, b)
  const high = Math.max(a, b)
  if (high < LETHALITY_FROM_C) return 0
  const inside = low < LETHALITY_FROM_C ? (high - LETHALITY_FROM_C) / (high - low) : 1
  const r0 = lethalityPerS(Math.max(low, LETHALITY_FROM_C))
  const r1 = lethalityPerS(high)
  const mean = r1 / r0 > 1 + 1e-9 ? (r1 - r0) / Math.log(r1 / r0) : r0
  return mean * inside * stepS
}

/** Least over all points: the coldest history need not be the middle's. */
export const leastLethalityLog = (historiesC: readonly ArrayLike<number>[], stepS: number) =>
  historiesC.reduce((least, h) => Math.min(least, lethalityLog(h, stepS)), Number.POSITIVE_INFINITY)

/** Longest unbroken time at or above a level, with the crossings read off straight lines. */
export function longestAboveS(historyC: ArrayLike<number>, stepS: number, levelC: number): number {
  let run = 0
  let longest = 0
  for (let i = 1; i < historyC.length; i++) {
    const a = historyC[i - 1] as number
    const b = historyC[i] as number
    if (a >= levelC && b >= levelC) run += stepS
    else if (a < levelC && b >= levelC) run = (stepS * (b - levelC)) / (b - a)
    else if (a >= levelC) {
      longest = Math.max(longest, run + (stepS * (a - levelC)) / (a - b))
      run = 0
    }
    longest = Math.max(longest, run)
  }
  return longest
}

export type TableVerdict =
  | { readonly met: true; readonly atF: number; readonly heldS: number; readonly printedS: number }
  | { readonly met: false; readonly peakC: number }
/** The printed table's verdict on the coldest point: met by the first row whose dwell it keeps. No sum over rows, as printed. */
export function tableVerdict(coldestC: ArrayLike<number>, stepS: number): TableVerdict {
  let peakC = Number.NEGATIVE_INFINITY
  for (let i = 0; i < coldestC.length; i++) peakC = Math.max(peakC, coldestC[i] as number)
  for (const [atF, printedS] of APPENDIX_A) {
    const levelC = fromFahrenheit(atF)
    if (peakC < levelC - 1e-9) break
    const heldS = longestAboveS(coldestC, stepS, levelC - 1e-9)
    if (heldS >= printedS) return { met: true, atF, heldS, printedS }
  }
  return { met: false, peakC }
}

export type TableReach = { readonly reach: 'table' | 'with-care' | 'none'; readonly why: string }
const POULTRY: readonly Animal[] = ['turkey', 'chicken', 'duck', 'goose']
export const isPoultry = (animal: Animal) => POULTRY.includes(animal)
/**
 * Whether the dwell table speaks for this animal. It is printed for beef. [fsis-appendix-a-1999]
 * Its times were later confirmed at 60.0, 65.6 and 71.1 °C and not at 54.4 °C. [mmb-9048]
 */
export function tableReach(animal: Animal): TableReach {
  if (animal === 'beef')
    return {
      reach: 'table',
      why: 'The dwell table is printed for beef; its lowest row, 54.4 °C, was not confirmed by a later study.',
    }
  if (isPoultry(animal)) return { reach: 'none', why: 'The dwell table is for beef and says nothing about poultry.' }
  if (animal === 'salmon') return { reach: 'none', why: 'The dwell table is for beef and says nothing about fish.' }
  return { reach: 'with-care', why: `The dwell table is printed for beef; for ${animal} take it with care.` }
}

export interface Minimum {
  readonly tempC: number
  readonly restMin: number
  readonly source: SourceId
  /** Whose numbers these are. */
  readonly authority: 'US'
  /** False where we hold no table for the authority that was asked for: say whose is shown, send the reader to the local one. */
  readonly asAsked: boolean
}
/** [fsis-safe-minimum] 165 °F for poultry, 145 °F and 3 min of rest for whole cuts; fish at 145 °F without a rest is from memory. */
export function minimumFor(cut: Pick<Cut, 'animal'>, authority = 'US'): Minimum {
  const asAsked = authority === 'US'
  if (isPoultry(cut.animal))
    return { tempC: fromFahrenheit(165), restMin: 0, source: 'fsis-safe-minimum', authority: 'US', asAsked }
  if (cut.animal === 'salmon')
    return { tempC: fromFahrenheit(145), restMin: 0, source: 'estimate', authority: 'US', asAsked }
  return { tempC: fromFahrenheit(145), restMin: 3, source: 'fsis-safe-minimum', authority: 'US', asAsked }
}
/** Whether a coldest point keeps the minimum: there, and not below it again for as long as the rest asked. */
export const meetsMinimum = (
  coldestC: ArrayLike<number>,
  stepS: number,
  { tempC, restMin }: Pick<Minimum, 'tempC' | 'restMin'>,
) => {
  const heldS = longestAboveS(coldestC, stepS, tempC)
  return heldS > 0 && heldS >= restMin * 60
}

/** [fda-food-code-2017] 41 to 135 °F, the range in which germs grow: 5 to 57 °C. */
export const GROWTH_FROM_C = fromFahrenheit(41)
export const GROWTH_TO_C = fromFahrenheit(135)
/** Time of a history between 5 and 57 °C, s. */
export function growthTimeS(historyC: ArrayLike<number>, stepS: number): Seconds {
  let sum = 0
  for (let i = 1; i < historyC.length; i++) {
    const a = historyC[i - 1] as number
    const b = historyC[i] as number
    const low = Math.min(a, b)
    const high = Math.max(a, b)
    const share =
      high === low
        ? Number(low >= GROWTH_FROM_C && low <= GROWTH_TO_C)
        : Math.max(0, Math.min(high, GROWTH_TO_C) - Math.max(low, GROWTH_FROM_C)) / (high - low)
    sum += share * stepS
  }
  return sum as Seconds
}

/** What has to be said beside any figure of safety for this animal. */
export function safetyNotes(animal: Animal, authority = 'US'): readonly string[] {
  const whose =
    authority === 'US'
      ? []
      : [`We hold no table for ${authority}; the minimum shown is the US authority's (USDA FSIS). Ask your local one.`]
  return [...whose, tableReach(animal).why, 'Lethality counts only between 54.4 and 70 °C, the range of the table.']
}
