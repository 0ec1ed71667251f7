import { readQuantity } from '../units'

/** One amount, or from one to another: "1 to 2 tbsp". */
export interface Span {
  readonly low: number
  readonly high: number
}
export type System = 'metric' | 'us'
export type Amount =
  | { readonly kind: 'mass'; readonly grams: Span; readonly system: System }
  | { readonly kind: 'volume'; readonly ml: Span; readonly system: System }
  | { readonly kind: 'count'; readonly number: Span; readonly of: string }
  | { readonly kind: 'words' }
const WORDS: Amount = { kind: 'words' }

const FRACTIONS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
}
const SIGNS = Object.keys(FRACTIONS).join('')
const decimal = (whole: string | undefined, part: number) => String(Number(whole?.trim() || 0) + part)

/** "1½", "1 ½" and "1 1/2" as 1.5; "fl oz" in one word; "2 tbsp + 1 tsp" as "2 tbsp 1 tsp". */
function plainly(written: string): string {
  return written
    .toLowerCase()
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(new RegExp(`(\\d+ ?)?([${SIGNS}])`, 'g'), (_, whole, sign) => decimal(whole, FRACTIONS[sign] ?? 0))
    .replace(/(?:(\d+) )?(\d+)\/(\d+)/g, (_, whole, a, b) => decimal(whole, Number(a) / Number(b)))
    .replace(/\bfl(?:uid|\.)? ?(?:oz|ounces?)\b\.?/g, 'floz')
    .replace(/ (?:\+|plus|and|&) /g, ' ')
    .replace(
      /^(?:(?:about|approx\.?|approximately|around|roughly|ca\.?|c\.|~|a|scant|level|heaped|generous|good) )+/,
      '',
    )
    .replace(/\b([a-z]+)\./g, '$1')
    .replace(/\([^()\d]*\)|, [a-z].*$/g, '')
    .trim()
}

const NUMBER = '\\d+(?:[.,]\\d+)?'
const RANGE = new RegExp(`^(${NUMBER})\\s*(?:-|–|—|to|or)\\s*(${NUMBER})\\s*(\\D.*)?$`)
const US_MASS = /\d ?(?:lbs?|pounds?|oz|ounces?)\b/
const US_VOLUME = /\d ?(?:cups?|floz|tbsps?|tablespoons?|tsps?|teaspoons?)\b/

const fine = (n: number) => Number.isFinite(n) && n > 0
function measured(text: string, dimension: 'mass' | 'volume'): number | null {
  const read = readQuantity(text, dimension)
  return read.ok && fine(read.si) ? read.si : null
}

/** What a cook wrote of how much: mass, volume, a count, or words that are printed as they stand. */
export function readAmount(written: string): Amount {
  const text = plainly(written)
  const range = text.match(RANGE)
  if (!range) return readOne(text)
  const [, from = '', to = '', rest = ''] = range
  const [low, high] = [readOne(`${from} ${rest}`.trim()), readOne(`${to} ${rest}`.trim())]
  return spanning(low, high)
}
function spanning(low: Amount, high: Amount): Amount {
  if (low.kind === 'mass' && high.kind === 'mass')
    return { ...high, grams: ordered(low.grams.low, high.grams.high) ?? high.grams }
  if (low.kind === 'volume' && high.kind === 'volume')
    return { ...high, ml: ordered(low.ml.low, high.ml.high) ?? high.ml }
  if (low.kind === 'count' && high.kind === 'count')
    return { ...high, number: ordered(low.number.low, high.number.high) ?? high.number }
  return WORDS
}
const ordered = (low: number, high: number): Span | null => (low <= high ? { low, high } : null)
const exactly = (n: number): Span => ({ low: n, high: n })

/** "200 g each" and "2 x 400 g" are of several, we cannot tell how many. */
const OF_SEVERAL = /\b(?:each|per|x)\b|×/
function readOne(text: string): Amount {
  if (OF_SEVERAL.test(text)) return WORDS
  const quantity = withoutTail(text)
  if (quantity) return quantity
  const count = text.match(new RegExp(`^(${NUMBER})(?: ([^\\d]+))?$`))
  const n = Number(count?.[1]?.replace(',', '.'))
  const of = count?.[2]?.trim() ?? ''
  return count && fine(n) && !UNIT.test(of) ? { kind: 'count', number: exactly(n), of } : WORDS
}
/** A mass or volume, with words after it or without: "2 tbsp chopped". */
function withoutTail(text: string): Amount | null {
  const kg = measured(text, 'mass')
  if (kg !== null) return { kind: 'mass', grams: exactly(kg * 1000), system: US_MASS.test(text) ? 'us' : 'metric' }
  const m3 = measured(text, 'volume')
  if (m3 !== null) return { kind: 'volume', ml: exactly(m3 * 1e6), system: US_VOLUME.test(text) ? 'us' : 'metric' }
  const shorter = text.replace(/ [^\d\s]+$/, '')
  return shorter === text ? null : withoutTail(shorter)
}
/** What follows a number that is no count, also where the number cannot be read. */
const UNIT =
  /^(?:[kmµ]?g|grams?|kilos?|[mcd]?l|(?:milli)?lit(?:re|er)s?|lbs?|pounds?|oz|ounces?|floz|cups?|tbsps?|tsps?|pints?|quarts?|gallons?)\b/

/** "45 g (1½ oz)" or "30 ml / 2 tbsp": the author's own in both systems. */
export function twoAmounts(written: string): readonly [string, string] | null {
  const two = written.match(/^(.*\d.*?)\s*\(([^()]*\d[^()]*)\)$/) ?? written.match(/^(.*\d.*?)\s+\/\s+(.*\d.*)$/)
  return two ? [two[1] ?? '', two[2] ?? ''] : null
}

const PINT = 'A pint is 473 ml in the US and 568 ml in Britain. Write it in ml, or in cups.'
/** Why an amount that looks like one is only printed as it stands; null where it is read, or is plain words. */
export function whyUnread(written: string): string | null {
  const parts = twoAmounts(written.trim()) ?? [written]
  if (!/\d/.test(written) || parts.some((part) => readAmount(part).kind !== 'words')) return null
  if (/\bpints?\b/i.test(written)) return PINT
  const read = readQuantity(plainly(written), 'mass')
  const ambiguous = !read.ok && /two ways|gap in its number/.test(read.sentence) ? read.sentence : null
  return ambiguous ?? 'No amount is read in it. Write one such as "40 g", "2 tbsp", "¼ cup" or "6 cloves".'
}
