import { list, record, text, word } from './fields'

/**
 * What must be named on food: the 14 of annex II of Regulation (EU) 1169/2011 [eu-1169-2011], wheat apart from the other
 * grains with gluten because the nine of the United States [us-falcpa-2004] [us-faster-2021] know wheat alone.
 */
export const ALLERGENS = [
  'wheat',
  'gluten',
  'crustaceans',
  'eggs',
  'fish',
  'peanuts',
  'soybeans',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const
export type Allergen = (typeof ALLERGENS)[number]

/** `food` says which food of the table it is where `what` does not: "what": "our rub", "food": "salt". */
export const INGREDIENT = record('an ingredient', {
  what: text('the ingredient', 120),
  much: text('the amount', 60),
  food: text('the food', 60, 1).optional(),
})
export const RECIPE_WORDS = {
  ingredients: list('ingredients', INGREDIENT, 40).optional(),
  /** Besides those of the foods that are recognised. */
  allergens: list('allergens', word('an allergen that has to be named', ALLERGENS), ALLERGENS.length).optional(),
  storage: text('the note on keeping it', 300, 1).optional(),
  /** Besides what the plan asks for. */
  kit: list('things of the kit', text('a thing of the kit', 80, 1), 20).optional(),
} as const
