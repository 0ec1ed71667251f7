import { ALLERGENS, type Allergen } from '../plan/allergens'
import type { IngredientLine } from './ingredients'

/** The nine of the United States. [us-falcpa-2004] [us-faster-2021] The rest is on the EU's list alone. [eu-1169-2011] */
const US_NINE: readonly Allergen[] = [
  'wheat',
  'crustaceans',
  'eggs',
  'fish',
  'peanuts',
  'soybeans',
  'milk',
  'nuts',
  'sesame',
]
const EU_WORDS: Partial<Record<Allergen, string>> = { wheat: 'wheat (gluten)', sulphites: 'sulphites' }
const US_WORDS: Partial<Record<Allergen, string>> = {
  crustaceans: 'crustacean shellfish',
  nuts: 'tree nuts',
  soybeans: 'soy',
  sulphites: 'sulfites',
  molluscs: 'mollusks',
}
const isUs = (authority: string) => authority === 'US'
export const allergenWord = (allergen: Allergen, authority: string) =>
  (isUs(authority) ? US_WORDS : EU_WORDS)[allergen] ?? allergen

/** "EU and US", "EU": on whose list it stands. */
export const allergenLists = (allergen: Allergen) => (US_NINE.includes(allergen) ? 'EU and US lists' : 'EU list')

export interface AllergenInput {
  readonly lines: readonly Pick<IngredientLine, 'what' | 'food' | 'noFood'>[]
  readonly declared: readonly Allergen[]
  /** The roast itself is fish. */
  readonly isFish: boolean
  readonly authority: string
}
const and = (words: readonly string[]) =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

export function allergensIn({ lines, declared, isFish }: Omit<AllergenInput, 'authority'>): Allergen[] {
  const found = new Set([...declared, ...lines.flatMap(({ food }) => food?.allergens ?? [])])
  if (isFish) found.add('fish')
  return ALLERGENS.filter((a) => found.has(a))
}

/**
 * "Contains mustard." What both lists name is printed whoever's numbers the card follows: the reader may live under either.
 * Never "free from"; of what we do not know we say so.
 */
export function allergenSentence(input: AllergenInput): string {
  const found = allergensIn(input)
  const named = isUs(input.authority)
    ? [...found].sort((a, b) => Number(US_NINE.includes(b)) - Number(US_NINE.includes(a)))
    : found
  const contains = found.length > 0 ? `Contains ${and(named.map((a) => allergenWord(a, input.authority)))}.` : ''
  const unknown = input.lines.filter(({ food, noFood }) => !food && !noFood).map(({ what }) => what)
  const rest = unknown.length > 0 ? `Allergens not looked into: ${unknown.join(', ')}.` : ''
  return [contains, rest].filter(Boolean).join(' ')
}
