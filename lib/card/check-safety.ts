import type { CookFacts } from '../log/cook-facts'
import type { Animal } from '../model/cuts'
import { ALWAYS, dwellGrade, isPoultry, TABLE_LOG, tableReach } from '../model/dwell-table'
import type { Forecast } from '../model/forecast'
import { type Minimum, minimumFor } from '../model/minimums'
import { quantileOf, sortedCopy } from '../model/quantiles'
import { celsius, formatTempBoth } from '../units'
import type { Check, CheckContext } from './check'
import type { Claim, Figure } from './claim'
import { coldestPeak, shareMeeting, tableVerdicts } from './coldest'
import { minimumWords, settingWords } from './wording'

/** Nobody reads a thermometer finer; a level within it of the minimum is the minimum. */
const READABLE_K = 0.5
export type SafetyContext = Pick<CheckContext, 'animal' | 'authority' | 'facts'>

/** What the printed dwell table and the lethality by the slice say beside the minimum. */
function tableWords(f: Forecast, animal: Animal): string {
  const { reach, why } = tableReach(animal)
  if (reach === 'none') return why
  const least = quantileOf(sortedCopy(f.lethalityLog), 0.05)
  const reached = Math.min(TABLE_LOG, Math.max(0, least)).toFixed(1)
  const { met, firm } = shareByTable(f)
  const lowest = met - firm > 1 - ALWAYS ? ` (in ${percent(met - firm)} by its lowest row alone)` : ''
  return `The printed dwell table is kept in ${percent(met)} of cooks${lowest}; 19 in 20 reach ${reached} of its ${TABLE_LOG} log. ${why}`
}
const percent = (share: number) => `${Math.round(share * 100)} %`
/** Shares of the members that keep a row of the table, and one above its lowest. */
function shareByTable(f: Forecast): { readonly met: number; readonly firm: number } {
  const verdicts = tableVerdicts(f)
  const share = (n: number) => n / f.members
  return {
    met: share(verdicts.filter((v) => v.met).length),
    firm: share(verdicts.filter((v) => v.met && !v.lowestOnly).length),
  }
}

/** A number that is said to be the authority's own. */
function checkTable(claim: Claim, right: number, slack: number, minimum: Minimum): Check {
  const off = Math.max(0, claim.low - right, right - claim.high)
  return {
    finding: off <= slack ? 'borne-out' : 'contradicted',
    figure: { low: right, likely: right, high: right },
    found: `${minimumWords(minimum)} is the authority’s minimum`,
    reason: 'Read from the authority’s printed table.',
    by: 'table',
    source: minimum.source,
    mend: null,
    trueSentence: null,
  }
}

/** The likely cook may keep the minimum while too many others do not. */
function belowMinimum(peak: Figure, minimum: Minimum): string {
  const asked = `below the authority’s minimum (${minimumWords(minimum)})`
  return peak.likely < minimum.tempC - READABLE_K
    ? `At its coldest point ${settingWords(Math.round(peak.likely))} when sliced, ${asked}; not for guests at risk.`
    : `In some cooks the coldest point is still ${asked} when sliced; not for guests at risk.`
}
const metWords = (minimum: Minimum) => `The middle meets the authority’s minimum of ${minimumWords(minimum)}.`

/** "Safe for everybody at 52 °C": the level itself is below the minimum, whatever this cook does. */
function checkNamedLevel(claim: Claim, minimum: Minimum, f: Forecast, animal: Animal): Check | null {
  if (claim.unit !== 'degC' || claim.low >= minimum.tempC - READABLE_K) return null
  return {
    finding: 'contradicted',
    figure: { low: minimum.tempC, likely: minimum.tempC, high: minimum.tempC },
    found: `the authority asks for ${minimumWords(minimum)}`,
    reason: `${formatTempBoth(celsius(claim.low))} is below it. ${tableWords(f, animal)}`,
    by: 'table',
    source: minimum.source,
    mend: null,
    trueSentence: trueOf(f, minimum),
  }
}
/** Between two moments a middle may have been warmer than at either. [estimate] */
const UNSEEN_K = 2
/** One probe in one cook never makes a dish safe, but it shows where it was not. */
function shortOnTheDay({ probeC }: CookFacts, minimum: Minimum): Check | null {
  const highest = Math.max(...Object.values(probeC))
  if (probeC['first-slice'] === undefined || highest >= minimum.tempC - UNSEEN_K) return null
  const read = settingWords(Math.round(highest))
  return {
    finding: 'contradicted',
    figure: { low: highest, likely: highest, high: highest },
    found: `filmed: ${read} at its highest; the authority asks for ${minimumWords(minimum)}`,
    reason: `The filmed cook was below the minimum in the middle, and the log outranks the model.`,
    by: 'log',
    source: minimum.source,
    mend: null,
    trueSentence: `The middle read ${read} at its highest, below the authority’s minimum (${minimumWords(minimum)}); not for guests at risk.`,
  }
}

/** What may be said of this cook instead. */
const trueOf = (f: Forecast, minimum: Minimum) =>
  shareMeeting(f, minimum) >= ALWAYS ? metWords(minimum) : belowMinimum(coldestPeak(f), minimum)

/**
 * What is said, against the share of cooks that keep the minimum. Caution is never false. Beef below the minimum that
 * keeps the printed dwell table in 19 cooks of 20 is safe with care; for other meats that table is a bearing only.
 */
function judgeWord(says: string, share: number, f: Forecast, animal: Animal): Check['finding'] {
  if (says === 'not-safe') return share >= 0.5 ? 'borne-out-with-care' : 'borne-out'
  if (says === 'below-minimum')
    return share < 0.5 ? 'borne-out' : share >= ALWAYS ? 'contradicted' : 'borne-out-with-care'
  if (share >= ALWAYS) return isPoultry(animal) || animal === 'beef' ? 'borne-out' : 'borne-out-with-care'
  if (share >= 0.5) return 'borne-out-with-care'
  const { met, firm } = shareByTable(f)
  const kept = tableReach(animal).reach === 'table' && dwellGrade(animal, met, firm).startsWith('borne-out')
  return kept ? 'borne-out-with-care' : 'contradicted'
}

/** A claim of safety against the authority's printed minimum and the coldest point of the ensemble. */
export function checkSafety(claim: Claim, f: Forecast, { animal, authority, facts }: SafetyContext): Check {
  const minimum = minimumFor({ animal }, authority)
  if (claim.says === 'minimum') return checkTable(claim, minimum.tempC, 1, minimum)
  if (claim.says === 'minimum-rest') return checkTable(claim, minimum.restMin * 60, 0, minimum)
  const named = checkNamedLevel(claim, minimum, f, animal)
  if (named) return named
  const short = claim.says === 'safe' && facts ? shortOnTheDay(facts, minimum) : null
  if (short) return short
  const peak = coldestPeak(f)
  const share = shareMeeting(f, minimum)
  const finding = judgeWord(claim.says, share, f, animal)
  const whose = minimum.asAsked ? '' : ` We hold no table for ${authority}; the minimum is the US authority’s.`
  return {
    finding,
    figure: peak,
    found: `${settingWords(Math.round(peak.likely))} at the coldest point by the slice; the authority asks for ${minimumWords(minimum)}`,
    reason: `${Math.round(share * 100)} % of cooks keep the minimum. ${tableWords(f, animal)}${whose}`,
    by: 'table',
    source: minimum.source,
    mend: null,
    trueSentence: finding === 'contradicted' ? trueOf(f, minimum) : null,
  }
}
