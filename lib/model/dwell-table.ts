/** Printed tables of dwell: which rows a coldest point keeps, and how far the table speaks for an animal. */
import { type Celsius, celsius, formatDuration, formatTemp, fromFahrenheit, type Seconds, seconds } from '../units'
import type { Animal } from './cuts'
import { LETHALITY_FROM_C, longestAboveS, peakC } from './time-at-heat'

/** [fsis-appendix-a-1999] as printed: °F, then seconds of dwell for 6.5 and for 7 log once the coldest point is there. */
export const APPENDIX_A: readonly (readonly [atF: number, s6_5: number, s7: number])[] = [
  [130, 6720, 7260],
  [131, 5340, 5820],
  [132, 4260, 4620],
  [133, 3360, 3720],
  [134, 2700, 2820],
  [135, 2160, 2220],
  [136, 1680, 1920],
  [137, 1380, 1440],
  [138, 1080, 1140],
  [139, 900, 900],
  [140, 720, 720],
  [141, 540, 600],
  [142, 480, 480],
  [143, 360, 360],
  [144, 300, 300],
  [145, 240, 240],
  [146, 169, 182],
  [147, 134, 144],
  [148, 107, 115],
  [149, 85, 91],
  [150, 67, 72],
  [151, 54, 58],
  [152, 43, 46],
  [153, 34, 37],
  [154, 27, 29],
  [155, 22, 23],
  [156, 17, 19],
  [157, 14, 15],
  [158, 0, 0],
]
export const TABLE_LOG = 6.5

/** A temperature that the coldest point must keep, and for how long without a break. */
export interface Dwell {
  readonly tempC: Celsius
  readonly heldS: Seconds
}
export const dwell = (atF: number, s = 0): Dwell => ({ tempC: fromFahrenheit(atF), heldS: seconds(s) })
export const LOG_6_5: readonly Dwell[] = APPENDIX_A.map(([atF, s]) => dwell(atF, s))
export const LOG_7: readonly Dwell[] = APPENDIX_A.map(([atF, , s]) => dwell(atF, s))
/** [mmb-9048] the table's times were not confirmed at its lowest row. */
const LOWEST_C = LETHALITY_FROM_C

export type TableVerdict =
  | { readonly met: true; readonly row: Dwell; readonly heldS: number; readonly lowestOnly: boolean }
  /** `nearest`: the row it came nearest to keeping, with how long it was held; none where the peak is below all of them. */
  | { readonly met: false; readonly peakC: number; readonly nearest: (Dwell & { readonly keptS: number }) | undefined }

interface Held {
  readonly row: Dwell
  readonly heldS: number
}
/** Rounding of the sampled trace, K. */
const HAIR_K = 1e-9
/**
 * A printed table's verdict on the coldest point: met by any row whose dwell it keeps; the one kept most amply is
 * named, the lowest only where no other is, for it is the weakest. No sum over rows, as printed.
 */
export function tableVerdict(
  coldestC: ArrayLike<number>,
  stepS: number,
  rows: readonly Dwell[] = LOG_6_5,
): TableVerdict {
  const peak = peakC(coldestC)
  const reached = rows.filter(({ tempC }) => peak >= tempC - HAIR_K)
  const hot = hotPart(coldestC, Math.min(...rows.map(({ tempC }) => tempC)))
  const held = reached.map((row) => ({ row, heldS: longestAboveS(hot, stepS, row.tempC - HAIR_K) }))
  const kept = held.filter(({ row, heldS }) => heldS >= row.heldS)
  const share = ({ row, heldS }: Held) => heldS / row.heldS
  const amplest = (rows: readonly Held[]) =>
    rows.reduce<Held | undefined>((a, b) => (a && share(a) >= share(b) ? a : b), undefined)
  const best = amplest(kept.filter(({ row }) => row.tempC > LOWEST_C + HAIR_K)) ?? kept[0]
  if (best) return { met: true, ...best, lowestOnly: best.row.tempC <= LOWEST_C + HAIR_K }
  const nearest = amplest(held)
  return { met: false, peakC: peak, nearest: nearest && { ...nearest.row, keptS: nearest.heldS } }
}
/** From the sample before the history first passes a level to the one after it last does: most of a cook lies below. */
export function hotPart(historyC: ArrayLike<number>, levelC: number): ArrayLike<number> {
  const hot = (i: number) => (historyC[i] as number) >= levelC - HAIR_K
  let first = 0
  while (first < historyC.length && !hot(first)) first++
  let last = historyC.length - 1
  while (last > first && !hot(last)) last--
  const from = Math.max(0, first - 1)
  const to = first === historyC.length ? from : Math.min(historyC.length, last + 2)
  if (from === 0 && to === historyC.length) return historyC
  const hotC = new Float64Array(to - from)
  for (let i = from; i < to; i++) hotC[i - from] = historyC[i] as number
  return hotC
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

/** "Always" is said of 19 cooks in 20. */
export const ALWAYS = 0.95
export type Grade = 'borne-out' | 'borne-out-with-care' | 'in-part' | 'not-met' | 'no-word'
/** What may be said of a share of cooks that keep the table, and of those that keep it above its lowest row. */
export function dwellGrade(animal: Animal, metShare: number, aboveLowestShare: number): Grade {
  const { reach } = tableReach(animal)
  if (reach === 'none') return 'no-word'
  if (metShare < ALWAYS) return metShare < 0.5 ? 'not-met' : 'in-part'
  return reach === 'table' && aboveLowestShare >= ALWAYS ? 'borne-out' : 'borne-out-with-care'
}

/** What the table says of one history, in a sentence that hides nothing. */
export function dwellSentence(verdict: TableVerdict): string {
  // 54 and 54.4 °C stand on either side of the border.
  const at = (tempC: number) => `${formatTemp(celsius(tempC), 'metric', 1)} / ${formatTemp(celsius(tempC), 'us')}`
  const long = (s: number) => (s < 1 ? 'an instant' : formatDuration(seconds(s)))
  if (verdict.met) {
    const asked = verdict.row.heldS === 0 ? 'no time' : long(verdict.row.heldS)
    const row = `It keeps the dwell table: ${long(verdict.heldS)} at ${at(verdict.row.tempC)}, where the table asks for ${asked}.`
    return verdict.lowestOnly ? `${row} That is its lowest row, which a later study did not confirm.` : row
  }
  if (!verdict.nearest)
    return `It does not meet the dwell table: its coldest point comes to ${at(verdict.peakC)}, below the table’s first row, ${at(LOWEST_C)}.`
  const { tempC, heldS, keptS } = verdict.nearest
  return `It does not meet the dwell table: its coldest point stays ${long(keptS)} at ${at(tempC)}, where the table asks for ${long(heldS)}.`
}
