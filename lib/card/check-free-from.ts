import { ALLERGENS, type Allergen } from '../plan/allergens'
import { allergenWord } from './allergens'
import { type Check, type CheckContext, cannot } from './check'
import type { Claim } from './claim'

/** What a word of "free from" leaves out, in the sentence's lower case. */
const MEANT: readonly (readonly [RegExp, readonly Allergen[]])[] = [
  [/gluten/, ['wheat', 'gluten']],
  [/wheat/, ['wheat']],
  [/dairy|lactose|milk/, ['milk']],
  [/egg/, ['eggs']],
  [/peanut/, ['peanuts']],
  [/\bnut/, ['nuts', 'peanuts']],
  [/soy/, ['soybeans']],
  [/sesame/, ['sesame']],
  [/shellfish/, ['crustaceans', 'molluscs']],
  [/\bfish/, ['fish']],
  [/mustard/, ['mustard']],
  [/celery/, ['celery']],
  [/allergen/, ALLERGENS],
]

/** "Gluten-free": against what the card's own ingredients contain. That nothing is known to be in it proves nothing. */
export function checkFreeFrom(claim: Claim, { authority, recipe }: CheckContext): Check {
  const words = claim.words.toLowerCase()
  const meant = MEANT.find(([pattern]) => pattern.test(words))?.[1] ?? []
  const inIt = meant.filter((allergen) => recipe?.contains.includes(allergen))
  if (inIt.length === 0)
    return cannot(
      'Nobody here knows all that is in it, or what touched it; the card calls nothing free of an allergen.',
    )
  const named = inIt.map((allergen) => allergenWord(allergen, authority)).join(' and ')
  return {
    ...cannot('The card’s own ingredients say so.'),
    finding: 'contradicted',
    found: `it contains ${named}`,
    by: 'plan',
    source: 'the plan',
    trueSentence: `Contains ${named}.`,
  }
}
