import type { SourceId } from '../model/sources'

/** Where scales put a word, °C in the middle when sliced: most cooks' books, and the widest that any published scale goes. */
export interface DonenessBand {
  readonly word: string
  readonly from: number
  readonly to: number
  readonly widest: readonly [number, number]
}
/** [culinary-school-doneness] the usual bands, cut half way between; the widest with [amsa-photo-guide] and [fsis-consumer-doneness]. */
export const DONENESS_BANDS: readonly DonenessBand[] = [
  { word: 'rare', from: 44, to: 51.5, widest: [44, 61] },
  { word: 'medium-rare', from: 51.5, to: 57, widest: [51, 64] },
  { word: 'medium', from: 57, to: 63, widest: [57, 72] },
  { word: 'medium-well', from: 63, to: 68, widest: [63, 74] },
  { word: 'well-done', from: 68, to: 100, widest: [68, 100] },
]
export const DONENESS_SOURCE: SourceId = 'culinary-school-doneness'

/** The word for a middle of this temperature; below all bands null. */
export const donenessAt = (level: number) => DONENESS_BANDS.find((b) => level >= b.from && level < b.to) ?? null
export const bandOf = (word: string) => DONENESS_BANDS.find((b) => b.word === word) ?? null
