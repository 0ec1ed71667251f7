import { ALLERGENS } from './allergens'
import { list, record, text, word } from './fields'

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
  kit: list('things of the kit', text('a thing of the kit', 80), 20).optional(),
} as const
