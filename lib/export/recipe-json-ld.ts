import type { CardModel } from './card'
import { isoDuration } from './iso-duration'
import { plainWords, stepName, stepWords } from './plain-words'
import type { Published, StillNeeded } from './published'
import { tidyChapters, type VideoChapter } from './video-chapters'

/** A value as JSON-LD writes it: absent members are left out. */
export interface LinkedThing {
  readonly '@type': string
  readonly [property: string]: LinkedValue | undefined
}
type LinkedValue = string | number | LinkedThing | readonly (string | LinkedThing)[]

/** Where one step stands on the card's page; the page gives its steps these names. */
export const stepAnchor = (no: number) => `step-${no}`

/** Both or neither: a cooking time without a preparation time is refused by those who read it. */
function timesOf({ prep, cook, total }: CardModel['times']) {
  const both = prep !== null && cook !== null
  return {
    prepTime: both ? isoDuration(prep) : undefined,
    cookTime: both ? isoDuration(cook) : undefined,
    totalTime: total === null ? undefined : isoDuration(total),
  }
}

/** A moment of a video as an address; the media fragment is how the web writes it (W3C, Media Fragments URI 1.0). */
export function momentAddress(video: string, startS: number): string {
  return `${video.split('#')[0]}#t=${startS}`
}

function clipsOf(video: string, chapters: readonly VideoChapter[]): LinkedThing[] {
  return chapters.map(({ startS, endS, title }) => ({
    '@type': 'Clip',
    name: plainWords(title),
    startOffset: startS,
    endOffset: endS,
    url: momentAddress(video, startS),
  }))
}

function videoOf(model: CardModel, chapters: readonly VideoChapter[]): LinkedThing | undefined {
  const { video, image } = model.published
  if (video?.url === undefined) return undefined
  const clips = clipsOf(video.url, tidyChapters(chapters, video.length))
  return {
    '@type': 'VideoObject',
    name: plainWords(video.title ?? model.title),
    description: plainWords(model.intro) || undefined,
    thumbnailUrl: image,
    uploadDate: video.uploaded,
    contentUrl: video.url,
    duration: video.length === undefined ? undefined : isoDuration(video.length),
    hasPart: clips.length > 0 ? clips : undefined,
  }
}

const ingredientWords = ({ what, much, other }: CardModel['ingredients'][number]) =>
  plainWords(`${much}${other === '' ? '' : ` (${other})`} ${what}`)

function stepsOf(model: CardModel): LinkedThing[] {
  const { at } = model.published
  return model.steps.map((line) => ({
    '@type': 'HowToStep',
    name: stepName(line),
    text: stepWords(line),
    url: at === null ? undefined : `${at.split('#')[0]}#${stepAnchor(line.no)}`,
  }))
}

/** The card's rows by schema.org's names; energy in its own word. */
const NUTRIENTS: Readonly<Record<string, string>> = {
  Fat: 'fatContent',
  'of which saturated': 'saturatedFatContent',
  Cholesterol: 'cholesterolContent',
  Carbohydrate: 'carbohydrateContent',
  'of which sugars': 'sugarContent',
  Fibre: 'fiberContent',
  Protein: 'proteinContent',
  Sodium: 'sodiumContent',
}
/** For one serving; without a number of servings it would be nobody's. An amount in words ("less than 5") has no form here. */
function nutritionOf({ recipe, servings }: CardModel): LinkedThing | undefined {
  const rows = recipe.nutrition.rows.filter(({ amount }) => /^\d+(\.\d+)?$/.test(amount))
  if (rows.length === 0 || servings === null) return undefined
  const energy = rows.find(({ unit }) => unit === 'kcal')
  const held = rows.flatMap(({ name, amount, unit }) => {
    const property = NUTRIENTS[name]
    return property ? [[property, `${amount} ${unit}`] as const] : []
  })
  return {
    '@type': 'NutritionInformation',
    servingSize: '1 serving',
    calories: energy && `${energy.amount} calories`,
    ...Object.fromEntries(held),
  }
}

const keywordsOf = ({ keywords }: Published) =>
  keywords
    ?.split(',')
    .map((word) => word.trim())
    .filter(Boolean)
    .join(', ')

/** The card as schema.org's Recipe. No diet is ever claimed: the card does not know who may eat what. */
export function recipeJsonLd(model: CardModel, chapters: readonly VideoChapter[] = []): LinkedThing {
  const { published } = model
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: plainWords(model.title),
    description: plainWords(model.intro) || undefined,
    image: published.image,
    url: published.at ?? undefined,
    author: published.author ? { '@type': 'Person', name: plainWords(published.author) } : undefined,
    datePublished: published.video?.uploaded,
    ...timesOf(model.times),
    recipeYield: model.servings === null ? undefined : String(model.servings),
    recipeCategory: published.category,
    recipeCuisine: published.cuisine,
    keywords: keywordsOf(published) || undefined,
    nutrition: nutritionOf(model),
    recipeIngredient: model.ingredients.map(ingredientWords),
    recipeInstructions: stepsOf(model),
    video: videoOf(model, chapters),
  }
}

/** JSON that may stand inside a page's script: nothing in it ends the script or opens a comment. */
export const inScript = (thing: LinkedThing): string =>
  JSON.stringify(thing).replace(/[<>&\u2028\u2029]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** What the author could still write, by what search engines document as required and as recommended. */
export function stillNeeded({ published, servings }: Pick<CardModel, 'published' | 'servings'>): StillNeeded {
  const { video } = published
  const missing = (rows: readonly (readonly [boolean, string])[]) => rows.flatMap(([has, what]) => (has ? [] : [what]))
  return {
    required: missing([
      [published.image !== undefined, 'the picture'],
      [video?.url === undefined || video.uploaded !== undefined, 'the day the video was put up'],
    ]),
    helpful: missing([
      [published.author !== undefined, 'the author'],
      [published.at !== null, 'the address of the page'],
      [video?.url !== undefined, 'the video'],
      [servings !== null, 'the servings'],
      [published.keywords !== undefined, 'keywords'],
      [published.category !== undefined, 'the kind of dish'],
      [published.cuisine !== undefined, 'the cuisine'],
    ]),
  }
}
