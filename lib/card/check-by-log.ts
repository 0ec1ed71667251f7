import { type Check, LOG_SOURCE } from './check'
import type { ByModel } from './check-number'
import type { Claim, Figure } from './claim'
import type { Found } from './figures'
import { whatOf } from './found-words'
import { joined, judgeByLog, type OnTheDay } from './log-rules'
import { figureWords } from './wording'

/** A claim that the log speaks of: the filmed cook first, the model beside it, both figures named. */
export function byLog(claim: Claim, filmed: Figure, { check, verdict, found, unsure }: ByModel): Check {
  const day = judgeByLog(claim, filmed)
  const finding = joined(day, verdict, unsure)
  return {
    finding,
    figure: filmed,
    found: bothWords(claim, filmed, found),
    reason: reasonOf(day, check, found?.nature === 'setting' ? 'plan' : 'model'),
    by: 'log',
    source: LOG_SOURCE,
    mend: finding === 'contradicted' ? figureWords(claim, trueOfBoth(filmed, found)) : null,
    trueSentence: null,
  }
}

/** "filmed: 2 h 41; the model: 2 h 05 to 3 h 10, from meat on to the pull". */
function bothWords(claim: Claim, filmed: Figure, found: Found | null): string {
  const words = [`filmed: ${figureWords(claim, filmed)}`]
  if (found) words.push(`the ${found.nature === 'setting' ? 'plan' : 'model'}: ${figureWords(claim, found.figure)}`)
  return [words.join('; '), whatOf(claim)].filter(Boolean).join(', ')
}

function reasonOf(day: OnTheDay, { finding, reason }: Check, other: 'plan' | 'model'): string {
  const apart = finding === 'contradicted' || finding === 'cannot-be-checked'
  if (day === 'not-so')
    return apart
      ? `The filmed cook was not so. ${reason}`
      : `The filmed cook was not so, and the log outranks the ${other}.`
  if (day === 'nearly' && finding === 'contradicted') return `The filmed cook was not quite so. ${reason}`
  const was = day === 'so' ? 'So it was on the day.' : 'Nearly so on the day.'
  if (finding === 'contradicted') return `${was} A reader’s cook will differ: ${lowered(reason)}`
  return `${was} ${reason}`
}
const lowered = (sentence: string) => sentence.charAt(0).toLowerCase() + sentence.slice(1)

/** A setting as it was on the day; a window wide enough for the filmed cook and for the reader's. */
function trueOfBoth(filmed: Figure, found: Found | null): Figure {
  if (!found || found.nature === 'setting') return { low: filmed.likely, likely: filmed.likely, high: filmed.likely }
  const { low, likely, high } = found.figure
  return { low: Math.min(low, filmed.low), likely, high: Math.max(high, filmed.high) }
}
