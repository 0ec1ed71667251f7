import type { Animal } from '../model/cuts'
import type { Forecast } from '../model/forecast'
import { quantileOf, sortedCopy, spreadOf } from '../model/quantiles'
import { celsius, formatTempBoth } from '../units'
import { isPoultry, type Minimum, minimumFor, minimumWords } from './authority'
import type { Check } from './check-claim'
import type { Claim, Figure } from './claim'
import { settingWords } from './wording'

/** The highest the coldest point has been by the first slice, in every member, °C. */
export function coldestPeak(f: Forecast): Figure {
  const { startS, stepS, count, coreC } = f.trace
  const slice = f.moments['first-slice']
  const peaks = f.atSlice.coreC.map((atSlice, m) => {
    const end = Math.min(count - 1, Math.floor(((slice?.[m] ?? Number.POSITIVE_INFINITY) - startS) / stepS))
    let peak = atSlice
    for (let i = 0; i <= end; i++) peak = Math.max(peak, coreC[m * count + i] ?? peak)
    return peak
  })
  return spreadOf<number>(peaks)
}

/** Nobody reads a thermometer finer; below the minimum by more is below it. */
const READABLE_K = 0.5
export const meetsMinimum = (peak: Figure, minimum: Minimum) => peak.low >= minimum.level - READABLE_K

/** 6.5 log of Salmonella is what the printed table of cooked beef asks; for other meats it is a bearing, no promise. */
const ASKED_LOG = 6.5
function lethalityWords(f: Forecast, animal: Animal): string {
  const least = quantileOf(sortedCopy(f.lethalityLog), 0.05)
  const reached = Math.min(ASKED_LOG, Math.max(0, least)).toFixed(1)
  const table = animal === 'beef' ? 'its roast table' : 'the beef roast table, a bearing only for this meat,'
  return isPoultry(animal)
    ? ''
    : ` By the slice 19 cooks in 20 have ${reached} log of the ${ASKED_LOG} that ${table} asks.`
}

const table = (claim: Claim, right: number, slack: number, minimum: Minimum): Check => {
  const off = Math.max(0, claim.low - right, right - claim.high)
  return {
    finding: off <= slack ? 'borne-out' : 'contradicted',
    figure: { low: right, likely: right, high: right },
    found: `${minimumWords(minimum)} is the authority’s minimum`,
    reason: 'Read from the authority’s printed table.',
    source: minimum.source,
    trueSentence: null,
  }
}

const belowMinimum = (peak: Figure, minimum: Minimum) =>
  `${settingWords(Math.round(peak.likely))} in the middle when sliced, below the authority’s minimum (${minimumWords(minimum)}); not for guests at risk.`

/** "Safe for everybody at 52 °C": the level itself is below the minimum, whatever this cook does. */
function checkNamedLevel(claim: Claim, minimum: Minimum, f: Forecast, animal: Animal): Check | null {
  if (claim.unit !== 'degC' || claim.low >= minimum.level - READABLE_K) return null
  const words = formatTempBoth(celsius(claim.low))
  return {
    finding: 'contradicted',
    figure: { low: minimum.level, likely: minimum.level, high: minimum.level },
    found: `the authority asks for ${minimumWords(minimum)}`,
    reason: `${words} is below it.${lethalityWords(f, animal)}`,
    source: minimum.source,
    trueSentence: belowMinimum(coldestPeak(f), minimum),
  }
}

const finding = (says: string, met: boolean, likely: boolean, beef: boolean): Check['finding'] => {
  if (says === 'below-minimum') return !likely ? 'borne-out' : met ? 'contradicted' : 'borne-out-with-care'
  // Caution is never false.
  if (says === 'not-safe') return likely ? 'borne-out-with-care' : 'borne-out'
  if (met) return beef ? 'borne-out' : 'borne-out-with-care'
  return likely ? 'borne-out-with-care' : 'contradicted'
}

/** A claim of safety against the authority's printed minimum and the coldest point of the ensemble. */
export function checkSafety(claim: Claim, f: Forecast, animal: Animal): Check {
  const minimum = minimumFor(animal)
  if (claim.says === 'minimum') return table(claim, minimum.level, 1, minimum)
  if (claim.says === 'minimum-rest') return table(claim, minimum.restMin * 60, 0, minimum)
  const named = checkNamedLevel(claim, minimum, f, animal)
  if (named) return named
  const peak = coldestPeak(f)
  const likely = peak.likely >= minimum.level - READABLE_K
  const verdict = finding(claim.says, meetsMinimum(peak, minimum), likely, animal === 'beef')
  const safe = claim.says === 'safe'
  return {
    finding: verdict,
    figure: peak,
    found: `${settingWords(Math.round(peak.likely))} at the coldest point by the slice; the authority asks for ${minimumWords(minimum)}`,
    reason: `Read against the authority’s printed minimum.${lethalityWords(f, animal)}`,
    source: minimum.source,
    trueSentence: verdict !== 'contradicted' ? null : safe ? belowMinimum(peak, minimum) : metWords(minimum),
  }
}
const metWords = (minimum: Minimum) => `The middle meets the authority’s minimum of ${minimumWords(minimum)}.`
