import type { Animal } from '../model/cuts'
import { DONENESS_RANGES, type DonenessRange, donenessAt, wordsFor } from '../model/doneness'
import { isPoultry } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import { spreadOf } from '../model/quantiles'
import type { SourceId } from '../model/sources'
import { celsius, formatTempBoth } from '../units'
import type { Check, CheckContext } from './check'
import type { Claim, Figure, FindingKind } from './claim'
import { levelWords, minimumWords } from './wording'

const SOURCE: SourceId = 'culinary-school-doneness'
/** Nobody reads a thermometer finer. */
const READABLE_K = 0.5

/** Some published scale calls a part of the window so. */
const someScale = (range: DonenessRange, { low, high }: Figure) =>
  high >= Math.min(range.fromC, range.anyFromC) - READABLE_K && low <= Math.max(range.toC, range.anyToC) + READABLE_K

function judgeWord(range: DonenessRange, figure: Figure, known: boolean): FindingKind {
  if (figure.likely >= range.fromC && figure.likely < range.toC) return known ? 'borne-out' : 'borne-out-with-care'
  return someScale(range, figure) ? 'borne-out-with-care' : 'contradicted'
}

/**
 * A word of doneness against what a probe reads when sliced: that is how cooks' scales were read. Scales differ, so what
 * only some of them call so is with care. The filmed cook's reading outranks the model's.
 */
export function checkDoneness(claim: Claim, f: Forecast, { animal, authority, facts }: CheckContext): Check {
  const model = spreadOf<number>(f.atSlice.probeC)
  const filmed = facts?.probeC['first-slice']
  const figure = filmed === undefined ? model : { low: filmed - 1, likely: filmed, high: filmed + 1 }
  const range = DONENESS_RANGES.find((r) => r.word === claim.says)
  const found =
    filmed === undefined
      ? `${levelWords(model)} in the middle when sliced`
      : `filmed: ${formatTempBoth(filmed)} in the middle when sliced; the model: ${levelWords(model)}`
  const base = { figure, found, by: 'table', source: SOURCE, mend: null, trueSentence: null } as const
  const words = wordsFor(animal)
  if (range && isPoultry(animal) && range.word !== 'well-done') {
    const minimum = minimumFor({ animal }, authority)
    const reason = `No bird is served so: the authority’s minimum is ${minimumWords(minimum)}.`
    return { ...base, finding: 'contradicted', reason, source: minimum.source }
  }
  if (words.length === 0 || !range)
    return { ...base, finding: 'cannot-be-checked', reason: `Words of doneness are for red meat, not for ${animal}.` }
  const known = words.includes(range.word)
  const finding = judgeWord(range, figure, known)
  const word = donenessAt({ animal }, figure.likely)
  if (finding === 'contradicted') return { ...base, finding, ...whatItIs(figure, filmed !== undefined, word) }
  if (filmed !== undefined && judgeWord(range, model, known) === 'contradicted')
    return {
      ...base,
      finding: 'borne-out-with-care',
      reason: 'So it was on the day; a reader’s cook will be done otherwise.',
    }
  return { ...base, finding, reason: reason(finding, known, word, animal) }
}

/** The word that would be true, or the temperature where there is none. */
function whatItIs(figure: Figure, filmed: boolean, word: string | undefined): Pick<Check, 'mend' | 'reason'> {
  const levels = filmed ? formatTempBoth(celsius(Math.round(figure.likely))) : levelWords(figure)
  return {
    mend: word ?? `at ${levels}`,
    reason: `${levels} in the middle when sliced${word ? ` is ${word}` : ' has no word of doneness'}.`,
  }
}

function reason(finding: FindingKind, known: boolean, word: string | undefined, animal: Animal): string {
  if (finding === 'borne-out') return 'As cooks use the word.'
  if (!known) return `No scale has the word for ${animal}; print the temperature beside it.`
  return `Most scales call the likely middle ${word ?? 'something else'}; print the temperature beside the word.`
}
