import { DONENESS_RANGES, type DonenessRange, wordsFor } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import { medianOf } from '../model/quantiles'
import { celsius, formatTempBoth } from '../units'
import type { Card } from './card'
import { shareMeeting } from './coldest'

/** A doneness as a probe reads it, and what the authority says of it. */
export interface DonenessRow {
  readonly word: string
  readonly middle: string
  readonly offHeat: string
  readonly authority: string
  readonly here: boolean
}

/** Whose meat and whose minimum. */
export type Judged = Pick<Card, 'animal' | 'authority'>

/** The middle of what cooks mean by a word; the last has no upper end. */
export const levelOf = ({ fromC, toC }: DonenessRange) => (Number.isFinite(toC) ? (fromC + toC) / 2 : fromC + 2)

/** Whether the authority's minimum is met: this cook by its members' histories, another level by this cook's moved there. */
export function authorityWords(card: Judged, f: Forecast, by: number): string {
  const minimum = minimumFor({ animal: card.animal }, card.authority)
  const moved = f.atSlice.coreC.filter((coldest) => coldest + by >= minimum.tempC).length / f.members
  const share = by === 0 ? shareMeeting(f, minimum) : moved
  if (share < 0.5) return 'below its minimum'
  if (share < 0.95) return 'met in most cooks'
  return minimum.restMin > 0 ? 'met, with the rest' : 'met'
}

/**
 * This cook's doneness and its neighbours, as a probe reads them; what the rest adds is taken from this cook.
 * Poultry has no neighbours: nobody should be shown an earlier way off the heat.
 */
export function donenessRows(card: Judged, f: Forecast): DonenessRow[] {
  const sliced = medianOf(f.atSlice.probeC)
  const rise = sliced - medianOf(f.offHeat.probeC)
  const row = (word: string, level: number, here: boolean): DonenessRow => ({
    word: word.replace('-', ' '),
    middle: formatTempBoth(celsius(Math.round(level))),
    offHeat: formatTempBoth(celsius(Math.round(level - rise))),
    authority: authorityWords(card, f, level - sliced),
    here,
  })
  const known = wordsFor(card.animal)
  const ranges = DONENESS_RANGES.filter((r) => known.includes(r.word))
  const now = ranges.find((r) => sliced >= r.fromC && sliced < r.toC)
  if (!now) return [row('this cook', sliced, true), ...ranges.slice(0, 1).map((r) => row(r.word, levelOf(r), false))]
  const from = Math.max(0, Math.min(ranges.indexOf(now) - 1, ranges.length - 3))
  return ranges
    .slice(from, from + 3)
    .map((r) => (r === now ? row(r.word, sliced, true) : row(r.word, levelOf(r), false)))
}
