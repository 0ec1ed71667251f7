import type { Cut } from '../model/cut'
import { DONENESS_RANGES, type DonenessWord, wordsFor } from '../model/doneness'
import { isPoultry } from '../model/dwell-table'
import { minimumFor } from '../model/minimums'
import { celsius, formatTemp, type UnitSystem } from '../units'

/** How done a roast is wanted: a cook's word, falling apart, or what the authority asks of birds and fish. */
export type HowDone = DonenessWord | 'tender' | 'minimum' | 'well'
export interface DoneChoice {
  readonly id: HowDone
  readonly words: string
  /** What the middle is to read: when sliced for a cook's word, else before it leaves the heat. */
  readonly middleC: number
  /** Whether what it climbs while it rests counts; never where a minimum must be kept. */
  readonly climbs: boolean
}
/** As much of a cut as decides how it may be done. */
export type DoneCut = Pick<Cut, 'id' | 'animal' | 'thicknessM'>

/** Cuts that are cooked until they fall apart, and what the probe reads then. Common practice, no source. */
const TENDER_CUTS = ['beef-brisket', 'beef-chuck-boneless', 'pork-shoulder', 'lamb-shoulder']
const TENDER_C = 93
/** A bird whose legs are to come off easily. Common practice, no source. */
const WELL_BIRD_C = 80

/** What can be wanted of a cut; the first that is usual is `usualDone`. */
export function doneChoices(cut: DoneCut, units: UnitSystem = 'metric'): readonly DoneChoice[] {
  const temp = (c: number) => formatTemp(celsius(c), units)
  const { tempC } = minimumFor(cut)
  const words = wordsFor(cut.animal)
  const tender: DoneChoice = {
    id: 'tender',
    words: `tender, it pulls apart: ${temp(TENDER_C)}`,
    middleC: TENDER_C,
    climbs: false,
  }
  const least: DoneChoice = {
    id: 'minimum',
    words: `${temp(tempC)}, the authority’s minimum`,
    middleC: tempC,
    climbs: false,
  }
  if (words.length > 0)
    return [
      ...(cut.animal === 'pork' ? [least] : []),
      ...(TENDER_CUTS.some((id) => cut.id.startsWith(id)) ? [tender] : []),
      ...DONENESS_RANGES.filter(({ word }) => words.includes(word)).map(({ word, fromC, toC }) => ({
        id: word,
        words: `${word}: ${Number.isFinite(toC) ? `${temp(fromC)} to ${temp(toC)}` : `from ${temp(fromC)}`}`,
        middleC: aimOf(fromC, toC, tempC),
        climbs: true,
      })),
    ]
  const well: DoneChoice = {
    id: 'well',
    words: `well done: ${temp(WELL_BIRD_C)}`,
    middleC: WELL_BIRD_C,
    climbs: false,
  }
  return isPoultry(cut.animal) ? [least, well] : [least]
}

/** The authority's minimum where the word spans it, else the middle of what cooks mean; a little past where it begins if it has no end. */
function aimOf(fromC: number, toC: number, minimumC: number): number {
  if (!Number.isFinite(toC)) return fromC + 2
  return minimumC > fromC && minimumC < toC ? minimumC : (fromC + toC) / 2
}

const USUAL: readonly HowDone[] = ['tender', 'medium-rare', 'minimum']
export const usualDone = (cut: DoneCut): HowDone => {
  const ids = doneChoices(cut).map(({ id }) => id)
  return USUAL.find((id) => ids.includes(id)) ?? (ids[0] as HowDone)
}

/** By which of the choices a cook goes that has no word: none of them where its figures are somebody's own. */
export function doneByFigures(cut: DoneCut, lastCoreC: number): HowDone | undefined {
  return doneChoices(cut)
    .filter(({ climbs }) => !climbs)
    .find(({ middleC }) => Math.abs(middleC - lastCoreC) < 1)?.id
}
