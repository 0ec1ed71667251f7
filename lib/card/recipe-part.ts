import { knownCutOf } from '../model/custom-cut'
import type { Animal } from '../model/cuts'
import type { Forecast } from '../model/forecast'
import { spreadOf } from '../model/quantiles'
import type { Allergen } from '../plan/allergens'
import type { Shoot } from '../plan/shoot'
import { formatMass, kilograms } from '../units'
import { allergenSentence, allergensIn } from './allergens'
import { ingredientLine } from './ingredients'
import { kitOf } from './kit'
import { type Nutrition, nutritionOf } from './nutrition'
import { storageSentences } from './storage'
import { isTheMeat } from './the-meat'
import { lengthWords, massWords, shareWords } from './wording'
import { likelyMeatKg } from './yield'

/** What a recipe says besides its steps, as values for page, paper and files. */
export interface RecipePart {
  /** The meat first. `us` is empty where one amount serves both systems. */
  readonly ingredients: readonly { readonly what: string; readonly metric: string; readonly us: string }[]
  /** The author's own list has the meat in it. */
  readonly meatListed: boolean
  /** As the author wrote it; the check may contradict it. */
  readonly serves: number | null
  /** "About 1.9 kg / 4.3 lb to slice, off the bone: it loses 17 to 21 % of its weight." */
  readonly yield: string
  /** "Contains mustard."; empty where nothing is known to be in it. */
  readonly allergens: string
  /** The same as they are called in the shoot file. */
  readonly contains: readonly Allergen[]
  readonly nutrition: Nutrition
  /** The authority's advice; the author's own note is a claim of the card, and joins it where the check lets it print. */
  readonly storage: readonly string[]
  readonly kit: readonly string[]
}

/** What the card knows of its cook and its roast. */
export interface RecipeOf {
  readonly cut: string
  readonly animal: Animal
  readonly boneShare: number
  readonly authority: string
}

export const thickWords = (f: Forecast) => lengthWords(f.cook.roast.thickness ?? f.cutFace.thickness)

export function recipePart(shoot: Shoot, card: RecipeOf, f: Forecast): RecipePart {
  const own = shoot.card ?? {}
  const lines = (own.ingredients ?? []).filter(({ what }) => what.trim() !== '').map(ingredientLine)
  const beside = lines.filter(({ what }) => !isTheMeat(what, card))
  const { mass } = f.cook.roast
  const loss = spreadOf<number>(f.lossFrac)
  const inIt = { lines: beside, declared: own.allergens ?? [], isFish: card.animal === 'salmon' }
  const meat = {
    what: `${card.cut}, ${thickWords(f)} thick`,
    metric: formatMass(mass),
    us: formatMass(kilograms(mass), 'us'),
  }
  const meatListed = beside.length < lines.length
  return {
    meatListed,
    ingredients: [...(meatListed ? [] : [meat]), ...lines.map(({ what, metric, us }) => ({ what, metric, us }))],
    serves: own.serves ?? null,
    yield: `About ${massWords(likelyMeatKg(f, card.boneShare))} to slice${card.boneShare > 0.02 ? ', off the bone' : ''}: it loses ${shareWords(loss)} of its weight.`,
    allergens: allergenSentence({ ...inIt, authority: card.authority }),
    contains: allergensIn(inIt),
    nutrition: nutritionOf({
      cut: knownCutOf(f.cook.roast),
      massKg: mass,
      lossFrac: loss.likely,
      serves: own.serves,
      beside,
    }),
    storage: storageSentences(''),
    kit: kitOf(f, own.kit),
  }
}
