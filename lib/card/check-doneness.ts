import type { Forecast } from '../model/forecast'
import { spreadOf } from '../model/quantiles'
import type { Check } from './check-claim'
import type { Claim } from './claim'
import { bandOf, DONENESS_SOURCE, donenessAt } from './doneness-bands'
import { levelWords } from './wording'

/** A word of doneness against the coldest point when sliced. Scales differ, so what only some of them call so is with care. */
export function checkDoneness(claim: Claim, f: Forecast): Check {
  const figure = spreadOf<number>(f.atSlice.coreC)
  const band = bandOf(claim.says)
  const inBand = band !== null && figure.likely >= band.from && figure.likely < band.to
  const inSome = band !== null && figure.high >= band.widest[0] && figure.low <= band.widest[1]
  const finding = inBand ? 'borne-out' : inSome ? 'borne-out-with-care' : 'contradicted'
  const word = donenessAt(figure.likely)?.word ?? 'raw in the middle'
  return {
    finding,
    figure,
    found: finding === 'contradicted' ? word : `${levelWords(figure)} in the middle when sliced`,
    reason: reason(finding, levelWords(figure), word),
    source: DONENESS_SOURCE,
    trueSentence: null,
  }
}
function reason(finding: Check['finding'], levels: string, word: string) {
  if (finding === 'borne-out') return 'As cooks’ books use the word.'
  if (finding === 'contradicted') return `${levels} in the middle when sliced is ${word}.`
  return `Most scales call that ${word}; scales differ, so print the temperature beside the word.`
}
