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
