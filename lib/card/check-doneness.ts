import type { Animal } from '../model/cuts'
import { DONENESS_RANGES, type DonenessRange, donenessAt, wordsFor } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import { spreadOf } from '../model/quantiles'
import type { SourceId } from '../model/sources'
import type { Check } from './check-claim'
import type { Claim, Figure } from './claim'
import { levelWords } from './wording'

const SOURCE: SourceId = 'culinary-school-doneness'
/** Nobody reads a thermometer finer. */
const READABLE_K = 0.5

/** Some published scale calls a part of the window so. */
const someScale = (range: DonenessRange, { low, high }: Figure) =>
  high >= Math.min(range.fromC, range.anyFromC) - READABLE_K && low <= Math.max(range.toC, range.anyToC) + READABLE_K

function judgeWord(range: DonenessRange, figure: Figure, known: boolean): Check['finding'] {
  if (figure.likely >= range.fromC && figure.likely < range.toC) return known ? 'borne-out' : 'borne-out-with-care'
  return someScale(range, figure) ? 'borne-out-with-care' : 'contradicted'
}

/** A word of doneness against what a probe reads when sliced: that is how cooks' scales were read. Scales differ, so what only some of them call so is with care. */
export function checkDoneness(claim: Claim, f: Forecast, animal: Animal): Check {
  const figure = spreadOf<number>(f.atSlice.probeC)
  const range = DONENESS_RANGES.find((r) => r.word === claim.says)
  const words = wordsFor(animal)
  const levels = levelWords(figure)
  const base = { figure, found: `${levels} in the middle when sliced`, source: SOURCE, trueSentence: null }
  if (words.length === 0 || !range)
    return { ...base, finding: 'cannot-be-checked', reason: `Words of doneness are for red meat, not for ${animal}.` }
  const known = words.includes(range.word)
  const finding = judgeWord(range, figure, known)
  const word = donenessAt({ animal }, figure.likely)
  if (finding === 'contradicted')
    return {
      ...base,
      finding,
      found: word ?? `at ${levels}`,
      reason: `${levels} in the middle when sliced${word ? ` is ${word}` : ''}.`,
    }
  return { ...base, finding, reason: reason(finding, known, word, animal) }
}

function reason(finding: Check['finding'], known: boolean, word: string | undefined, animal: Animal): string {
  if (finding === 'borne-out') return 'As cooks use the word.'
  if (!known) return `No scale has the word for ${animal}; print the temperature beside it.`
  return `Most scales call the likely middle ${word ?? 'something else'}; print the temperature beside the word.`
}
