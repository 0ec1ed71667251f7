import type { Quantity } from './quantities'

/** What a claim about food before or after the cook says; each has its published table. */
export type Keeping =
  | 'out'
  | 'fridge'
  | 'freezer'
  | 'reheat'
  | 'cold'
  | 'cool-21'
  | 'cool-5'
  | 'thaw-fridge'
  | 'thaw-water'
  | 'thaw-warm'
  | 'from-frozen'

const DAY_S = 86400
const THAW = /\b(?:thaw|thaws|thawed|thawing|defrost|defrosts|defrosted)\b/
const FREEZE = /\b(?:freezer|freeze|freezes|frozen)\b/
const OUT =
  /\b(?:out of the fridge|left out|leave|stand out|sit out|room temperature|chill|chilled|refrigerate|refrigerated|leftovers|what is left|into the fridge|in the fridge)\b/
const WARM = /\b(?:room temperature|(?:left|leave it|stand|sit) out|on the counter|cool place|larder|pantry|cellar)\b/
const COLD = /\b(?:fridge|refrigerat\w+|chill\w*|freez\w*|frozen|water)\b/
/** Whatever else is done to it: what is nowhere said to be cold stands out. */
const standsOut = (words: string) => {
  const plainly = words.replaceAll('out of the fridge', 'left out')
  return WARM.test(plainly) && !COLD.test(plainly)
}
/** Made cold and kept so for a time: no limit of ours. "Within", "after" and "in two hours" tell how long it was warm before. */
const CHILLED = /\b(?:chill|chilled|refrigerate|refrigerated|(?:in|into) the fridge)\b/
const WARM_BEFORE =
  /\b(?:within|after|once|in (?:\d|an? hour|one|two|three|four|five|six)|leave|left|leftovers|what is left|stand|sit|out of the fridge|room temperature)\b/
/** Work on raw meat, of which the tables for leftovers say nothing. */
const RAW = /\b(?:salt|salted|season|seasoned|marinate|marinated|brine|brined|cure|cured|uncovered)\b/

/** A time that a storage word governs, read on the sentence in lower case; null where no table speaks of it. */
export function keepingTime(words: string, q: Pick<Quantity, 'low' | 'high'>, levelC: number | null): Keeping | null {
  if (standsOut(words)) return THAW.test(words) ? 'thaw-warm' : 'out'
  if (RAW.test(words)) return null
  if (THAW.test(words)) return /\bwater\b/.test(words) ? 'thaw-water' : 'thaw-fridge'
  if (/\bcool(?:s|ed)?\b/.test(words) && levelC !== null && levelC < 30) return levelC > 10 ? 'cool-21' : 'cool-5'
  if (FREEZE.test(words) && q.high >= 7 * DAY_S) return 'freezer'
  if (q.high >= DAY_S) return FREEZE.test(words) ? null : 'fridge'
  if (CHILLED.test(words) && !WARM_BEFORE.test(words)) return null
  return OUT.test(words) && q.high < DAY_S / 2 ? 'out' : null
}

/** A temperature of a fridge that keeps, or of food warmed up again. */
export function keepingLevel(words: string, topic: string | null): Keeping | null {
  if (/\b(?:reheat|reheats|reheated|warm it up again|warmed up again)\b/.test(words)) return 'reheat'
  return topic === 'start' && /\b(?:store|stored|keep|kept|leftovers|chill|chilled)\b/.test(words) ? 'cold' : null
}
