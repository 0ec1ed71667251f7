import { type Food, foodOf, isNoFood } from './foods'
import { gramWords, mlWords, ounceWords, spanWords, spoonWords } from './print-amount'
import { type Amount, readAmount, type Span, twoAmounts } from './read-amount'

export interface Written {
  readonly what: string
  readonly much: string
  readonly food?: string | undefined
}
/** An ingredient as printed. `us` is empty where one amount serves both systems: "6 cloves". */
export interface IngredientLine {
  readonly what: string
  readonly metric: string
  readonly us: string
  readonly food: Food | null
  /** Bought with it, not eaten: charcoal, string. */
  readonly noFood: boolean
  /** What it weighs; null where that cannot be told. */
  readonly grams: number | null
}

const scaled = ({ low, high }: Span, by: number): Span => ({ low: low * by, high: high * by })
/** Beyond so many millilitres nobody measures dry goods by the cup: 8 cups. */
const MOST_CUPS_ML = 1900

function inUs(amount: Amount, food: Food | null): string {
  if (amount.kind === 'volume') return spanWords(amount.ml, spoonWords)
  if (amount.kind !== 'mass') return ''
  const perMl = food?.measured === 'weighed' ? null : food?.gramsPerMl
  const ml = perMl ? scaled(amount.grams, 1 / perMl) : null
  return ml && ml.high < MOST_CUPS_ML ? spanWords(ml, spoonWords) : spanWords(amount.grams, ounceWords)
}
function inMetric(amount: Amount, food: Food | null): string {
  if (amount.kind === 'mass') return spanWords(amount.grams, gramWords)
  if (amount.kind !== 'volume') return ''
  const weigh = food && food.measured !== 'liquid' ? food.gramsPerMl : null
  return weigh ? spanWords(scaled(amount.ml, weigh), gramWords) : spanWords(amount.ml, mlWords)
}

/** The amount as its author wrote it, and the same in the other system. */
export function bothAmounts(much: string, food: Food | null): { readonly metric: string; readonly us: string } {
  const written = much.trim()
  const two = twoAmounts(written)
  if (two) return ownTwo(two) ?? { metric: written, us: '' }
  const amount = readAmount(written)
  if (amount.kind !== 'mass' && amount.kind !== 'volume') return { metric: written, us: '' }
  return amount.system === 'us'
    ? { metric: inMetric(amount, food), us: written }
    : { metric: written, us: inUs(amount, food) }
}
function ownTwo(two: readonly [string, string]) {
  const [first, second] = two.map(systemOf)
  if (first === 'metric' && second === 'us') return { metric: two[0], us: two[1] }
  return first === 'us' && second === 'metric' ? { metric: two[1], us: two[0] } : null
}
function systemOf(text: string) {
  const amount = readAmount(text)
  return amount.kind === 'mass' || amount.kind === 'volume' ? amount.system : null
}

const middle = ({ low, high }: Span) => (low + high) / 2
const SIZES = /\b(?:large|small|medium|big|fat|good|fresh|whole|ripe)\b/g
function pieceOf(of: string): string {
  const bare = of.replace(SIZES, '').trim()
  return bare === '' ? 'each' : bare.replace(/s$/, '')
}
function weighs(amount: Amount, food: Food | null): number | null {
  if (amount.kind === 'mass') return middle(amount.grams)
  if (amount.kind === 'volume') return food?.gramsPerMl ? middle(amount.ml) * food.gramsPerMl : null
  if (amount.kind !== 'count') return null
  const each = food?.pieces[pieceOf(amount.of)]
  return each === undefined ? null : middle(amount.number) * each
}
/** Of two amounts the first that has a weight counts: "2 (about 300 g)". */
function gramsOf(much: string, food: Food | null): number | null {
  const parts = twoAmounts(much.trim()) ?? [much]
  return parts.map((part) => weighs(readAmount(part), food)).find((g) => g !== null) ?? null
}

export function ingredientLine(written: Written): IngredientLine {
  const food = foodOf(written)
  const noFood = food === null && isNoFood(written.what)
  return {
    what: written.what.trim(),
    ...bothAmounts(written.much, food),
    food,
    noFood,
    grams: noFood ? null : gramsOf(written.much, food),
  }
}
