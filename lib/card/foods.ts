import { ALLERGENS, type Allergen } from '../plan/allergens'
import { FOOD_ROWS } from './food-rows'
import { ML_PER } from './kitchen-measures'

export const NUTRIENTS = [
  'kcal',
  'protein',
  'fat',
  'saturated',
  'cholesterol',
  'carbohydrate',
  'fibre',
  'sugars',
  'sodium',
] as const
export type Nutrient = (typeof NUTRIENTS)[number]
/** kcal, g, and mg of cholesterol and sodium, in 100 g. */
export type Composition = Readonly<Record<Nutrient, number>>

/** How a cook measures it: a liquid in ml, by the spoon, or on the scales. */
export type Measured = 'liquid' | 'spooned' | 'weighed'
export interface Food {
  /** Its number in the table; empty where no composition is known. */
  readonly number: string
  readonly fromMemory: boolean
  readonly name: string
  readonly names: readonly string[]
  readonly measured: Measured
  readonly gramsPerMl: number | null
  /** What one "clove", "stick" or, without such a word, one of it weighs, g. */
  readonly pieces: Readonly<Record<string, number>>
  readonly per100g: Composition | null
  readonly allergens: readonly Allergen[]
}

const HOW: Readonly<Record<string, Measured>> = { l: 'liquid', s: 'spooned', w: 'weighed' }
const listed = (cell: string) =>
  cell
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean)

function readFood(row: string): Food {
  const [number = '', name = '', names = '', how = '', weights = '', values = '', allergens = ''] = row
    .split('|')
    .map((cell) => cell.trim())
  const each = listed(weights).map((words) => {
    const [grams = '', , measure = ''] = words.split(' ')
    return { grams: Number(grams), measure }
  })
  const volume = each.find(({ measure }) => measure in ML_PER)
  return {
    number: number.replace('m', ''),
    fromMemory: number.endsWith('m'),
    name,
    names: [name, ...listed(names)],
    measured: HOW[how] ?? 'weighed',
    gramsPerMl: volume ? volume.grams / ML_PER[volume.measure as keyof typeof ML_PER] : null,
    pieces: Object.fromEntries(each.filter((e) => e !== volume).map((e) => [e.measure, e.grams])),
    per100g: readComposition(values),
    allergens: listed(allergens).filter((a): a is Allergen => (ALLERGENS as readonly string[]).includes(a)),
  }
}

function readComposition(cell: string): Composition | null {
  if (cell === '') return null
  const values = cell.split(' ').map(Number)
  const read = Object.fromEntries(NUTRIENTS.map((n, i) => [n, values[i]])) as Record<Nutrient, number>
  return Number.isNaN(read.sugars) ? { ...read, sugars: read.carbohydrate - read.fibre } : read
}

export const FOODS: readonly Food[] = FOOD_ROWS.trim().split('\n').map(readFood)

/** Words that do not make another food of it. "Smoked", "light" or "peanut" do, so a name with such a word is not known. */
const HARMLESS = new Set(
  `a an and the of about few some fresh freshly good best large small medium big ripe raw plain cold warm hot soft extra virgin
  extra-virgin cold-pressed chopped finely roughly coarsely thinly thickly sliced crushed grated peeled minced diced picked torn
  washed softened melted cracked ground milled flaked organic free-range leaves leaf sprigs sprig cloves clove`.split(
    /\s+/,
  ),
)
const folded = (words: string) => words.toLowerCase().replaceAll('’', "'").replace(/\s+/g, ' ').trim()
const BY_NAME = new Map(FOODS.flatMap((food) => food.names.map((name) => [folded(name), food])))

/** The food that these words name, and no other: "freshly ground black pepper" is black pepper, "peanut butter" is unknown. */
export function foodNamed(words: string): Food | null {
  const bare = folded(words.replace(/\(.*?\)/g, ' ').split(',')[0] ?? '')
  const whole = BY_NAME.get(bare)
  if (whole) return whole
  const kept = bare.split(' ').filter((word) => !HARMLESS.has(word))
  return BY_NAME.get(kept.join(' ')) ?? null
}
export const foodOf = ({ what, food }: { readonly what: string; readonly food?: string | undefined }): Food | null =>
  foodNamed(food ?? what)

/** "Tortilla chips", "ice cream" and "rice paper" are eaten. */
const NO_FOOD =
  /\b(?:charcoal|briquettes?|lumpwood|foil|twine|skewers?|toothpicks?)\b|\b(?:wood|smoking|oak|hickory|beech|alder|birch|applewood|cherrywood)(?: (?:chips|chunks|logs?|planks?))?$|\b(?:baking|parchment|greaseproof|waxed|butcher[’']?s?|kitchen) paper\b|\bstring$|^(?:crushed )?ice(?: cubes)?$/i
/** Bought with it and not eaten. */
export const isNoFood = (what: string) => NO_FOOD.test(what) && foodNamed(what) === null
