import type { Cut } from '../model/cuts'
import { yieldOf } from '../model/yield'
import { NUTRIENTS, type Nutrient } from './foods'
import type { IngredientLine } from './ingredients'
import { labelAmount } from './label-rounding'
import { type MeatRows, meatRowsOf } from './meat-rows'
import { gramWords, ounceWords } from './print-amount'
import { cookedMeatKg, rawMeatKg } from './yield'

export interface NutritionRow {
  readonly name: string
  readonly amount: string
  readonly unit: 'kcal' | 'g' | 'mg'
}
/** Per serving, always an estimate. Without rows the note says why there are none. */
export interface Nutrition {
  readonly rows: readonly NutritionRow[]
  readonly note: readonly string[]
}
/** Null: no table gives it. */
export type Total = Record<Nutrient, number | null>

const NAMES: Readonly<Record<Nutrient, readonly [string, NutritionRow['unit']]>> = {
  kcal: ['Energy', 'kcal'],
  fat: ['Fat', 'g'],
  saturated: ['of which saturated', 'g'],
  cholesterol: ['Cholesterol', 'mg'],
  carbohydrate: ['Carbohydrate', 'g'],
  sugars: ['of which sugars', 'g'],
  fibre: ['Fibre', 'g'],
  protein: ['Protein', 'g'],
  sodium: ['Sodium', 'mg'],
}
const PRINTED = Object.keys(NAMES) as readonly Nutrient[]

/** kcal in a gram of meat's protein and fat. [atwater-usda] */
const KCAL_OF_PROTEIN = 4.27
const KCAL_OF_FAT = 9.02
const DRIPS = yieldOf({ water: 0, fat: 1 }, 0).fat

/**
 * What is eaten of so much raw meat off the bone. Protein stays: of the published roast its raw row's protein tells the yield,
 * and with it what that roast kept of the rest, though never more fat than there was. Where no roast is published the fat that
 * drips is the model's.
 */
export function eatenOf({ raw, roasted }: MeatRows, rawKg: number): Total {
  const kept = roasted ? raw.protein / roasted.protein : 1
  const by = (n: 'saturated' | 'cholesterol' | 'sodium') => {
    const [before, after] = [raw[n], roasted ? roasted[n] : raw[n]]
    if (before === null || after === null) return null
    return 10 * rawKg * (n === 'saturated' && !roasted ? (1 - DRIPS) * before : Math.min(before, after * kept))
  }
  const protein = 10 * rawKg * raw.protein
  const fat = 10 * rawKg * (roasted ? Math.min(raw.fat, roasted.fat * kept) : (1 - DRIPS) * raw.fat)
  return {
    kcal: KCAL_OF_PROTEIN * protein + KCAL_OF_FAT * fat,
    protein,
    fat,
    saturated: by('saturated'),
    cholesterol: by('cholesterol'),
    sodium: by('sodium'),
    carbohydrate: 0,
    fibre: 0,
    sugars: 0,
  }
}

/** An ingredient whose composition and weight are both known. */
const reckoned = ({ food, grams }: IngredientLine) => food?.per100g != null && grams !== null
function withIngredient(total: Total, { food, grams }: IngredientLine): Total {
  const of = food?.per100g
  if (!of || grams === null) return total
  const added = NUTRIENTS.map((n) => {
    const so = total[n]
    return [n, so === null ? null : so + (of[n] * grams) / 100]
  })
  return Object.fromEntries(added) as Total
}

export interface NutritionInput {
  readonly cut: Cut
  readonly massKg: number
  readonly lossFrac: number
  readonly serves: number | undefined
  /** Without the meat. */
  readonly beside: readonly IngredientLine[]
}
const without = (sentence: string): Nutrition => ({ rows: [], note: [sentence] })

/** Per serving, after cooking; nothing where servings or the meat's composition are unknown. */
export function nutritionOf(input: NutritionInput): Nutrition {
  const { cut, massKg, serves, beside } = input
  if (serves === undefined) return without('Nutrition is not reckoned: how many it serves is not said.')
  const rows = meatRowsOf(cut)
  if (!rows) return without(`Nutrition is not reckoned: no table we hold gives the composition of ${cut.name}.`)
  const meat = eatenOf(rows, rawMeatKg(massKg, cut.boneShare))
  const total = beside.reduce(withIngredient, meat)
  const known = PRINTED.filter((n) => total[n] !== null)
  return {
    rows: known.map((n) => ({
      name: NAMES[n][0],
      amount: labelAmount(n, (total[n] ?? 0) / serves),
      unit: NAMES[n][1],
    })),
    note: notesOf(input, rows, serves),
  }
}

function notesOf({ cut, massKg, lossFrac, beside }: NutritionInput, rows: MeatRows, serves: number): string[] {
  const grams = (cookedMeatKg(massKg, cut.boneShare, lossFrac) * 1000) / serves
  const eaten = beside.filter((line) => !line.noFood)
  const left = eaten.filter((line) => !reckoned(line)).map(({ what }) => what)
  const unknown = PRINTED.filter((n) => meatRowLacks(rows, n)).map((n) => NAMES[n][0].replace('of which ', ''))
  return [
    `Estimated, for one of ${serves} servings with about ${gramWords(grams)} / ${ounceWords(grams)} of meat off the bone.`,
    meatNote(rows),
    eaten.length > left.length
      ? 'The other ingredients count as eaten to the last drop: what stays in the pan makes it less.'
      : '',
    left.length > 0 ? `Not in it: ${left.join(', ')}.` : '',
    unknown.length > 0 ? `Not known for this cut: ${unknown.join(', ').toLowerCase()}.` : '',
  ].filter(Boolean)
}
const meatRowLacks = ({ raw }: MeatRows, n: Nutrient) =>
  (n === 'saturated' || n === 'cholesterol' || n === 'sodium') && raw[n] === null

function meatNote({ as, raw, roasted }: MeatRows): string {
  if (raw.number === '') return `The meat by the composition the model reckons with; ${drip}.`
  const numbers = [raw, roasted].flatMap((r) => (r ? [r.number.replace('m', '')] : [])).join(' and ')
  const memory = raw.number.endsWith('m') ? ', from memory' : ''
  const meat = as.endsWith('skin') ? as : `${as} with its fat`
  const source = `USDA Standard Reference ${numbers}${memory}`
  return roasted
    ? `The meat: ${meat}, raw and roasted (${source}); it keeps its protein, and of its fat what the published roast kept.`
    : `The meat: ${meat}, raw (${source}); ${drip}.`
}
const drip = `it keeps its protein, and ${Math.round(DRIPS * 100)} % of its fat is taken to drip off`
