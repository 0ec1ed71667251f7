import { type Card, claimTexts } from '../card/card'
import type { CheckedClaim, FindingKind } from '../card/claim'
import { type DonenessRow, donenessRows } from '../card/doneness-rows'
import { howToKnow, type KnowRow } from '../card/how-to-know'
import { type CardSentence, printable, printableSteps, printedText } from '../card/printable-steps'
import { type RecipePart, thickWords } from '../card/recipe-part'
import type { SizeTable } from '../card/sizes'
import { storageSentences } from '../card/storage'
import type { DayPart } from '../card/time-line'
import type { Forecast } from '../model/forecast'
import { type CardTimes, cardTimes } from './card-times'
import { drawCutFace, SLICE_WIDTH } from './cut-face'
import type { Drawing, Mark } from './drawing'
import { NOWHERE, type Published } from './published'
import { tied } from './tied'

/** A stretch of text in one weight. */
export interface Run {
  readonly text: string
  readonly strong: boolean
  /** The author's own statement, against the check. */
  readonly own?: boolean
}
export interface CardLine {
  readonly no: number
  readonly runs: readonly Run[]
  /** Printed against the check, as the author's own statement. */
  readonly own: boolean
}
/** The recipe card as values, for page and paper alike: what is contradicted is not in it. */
export interface CardModel {
  readonly title: string
  readonly intro: string
  readonly face: Drawing
  readonly timeLine: readonly DayPart[]
  readonly ingredients: readonly { readonly what: string; readonly much: string; readonly other: string }[]
  readonly notes: readonly string[]
  /** Servings, yield, allergens, nutrition, storage and kit, for page, paper and files. */
  readonly recipe: RecipePart
  readonly steps: readonly CardLine[]
  readonly doneness: readonly DonenessRow[]
  /** Temperatures to go by, stage by stage. */
  readonly howToKnow: readonly KnowRow[]
  /** Times for other sizes and cookers; null where they are not worked out. */
  readonly sizes: SizeTable | null
  /** At the fire and of the minimum; those of keeping and cleaning stand apart. */
  readonly cautions: readonly string[]
  readonly housekeeping: readonly string[]
  readonly foot: string
  readonly stamp: string
  readonly times: CardTimes
  /** Where the card says for how many, and the check has not contradicted it. */
  readonly servings: number | null
  readonly published: Published
}

/** What the whole card rests on besides its own text. */
export interface CardSources {
  readonly forecast: Forecast
  /** "15 May 2027". */
  readonly date: string
  readonly sizes?: SizeTable | undefined
  readonly published?: Published
}

/** The slice alone: on the card the leads and their lettering would be too small to read. */
const isSlice = (mark: Mark) =>
  mark.kind === 'path' && (mark.fill !== undefined || mark.stroke === 'crust' || mark.stroke === 'ink')
export function sliceAlone(forecast: Forecast): Drawing {
  const whole = drawCutFace(forecast)
  return { ...whole, width: SLICE_WIDTH, marks: whole.marks.filter(isSlice) }
}

/** What a step does stands out, and its temperatures: that is what a cook looks for with the tongs in hand. */
const LEAD =
  /^(?:Salt|Season|Rub|Light the (?:fire|coals)|Heat (?:up )?the oven|Set the oven|Preheat|Roast|Cook|Turn|Sear|Rest|Slice|Carve|Serve|Take off the legs)\b/

function runsOf(sentence: CardSentence, first: boolean): Run[] {
  const runs: Run[] = []
  const own = sentence.prints === 'own'
  const push = (text: string, strong: boolean) =>
    text && runs.push({ text: tied(text), strong, ...(own && !strong ? { own } : {}) })
  let at = first ? (sentence.text.match(LEAD)?.[0].length ?? 0) : 0
  push(sentence.text.slice(0, at), true)
  for (const claim of sentence.claims.filter((c) => c.unit === 'degC' && c.start >= at)) {
    const figure = claim.start + Math.max(0, claim.words.search(/\d/))
    // The stop after it goes with it: the printer breaks a word where its weight changes.
    const end = claim.start + claim.words.length
    const stop = sentence.text.slice(end).match(/^\S*/)?.[0].length ?? 0
    push(sentence.text.slice(at, figure), false)
    push(sentence.text.slice(figure, end + stop), true)
    at = end + stop
  }
  push(sentence.text.slice(at), false)
  return runs
}

function linesOf(card: Card, checked: readonly CheckedClaim[]): CardLine[] {
  const steps = printableSteps(card, checked).filter((step) => printedText(step) !== '')
  return steps.map((step, i) => {
    const own = step.sentences.some((s) => s.prints === 'own')
    const printed = step.sentences.filter((s) => s.prints !== 'no')
    const runs = printed.flatMap((s, k) => [
      ...(k > 0 ? [{ text: ' ', strong: false }] : []),
      ...(s.prints === 'own' ? [{ text: 'The author’s own statement: ', strong: true }] : []),
      ...runsOf(s, k === 0 && s.prints === 'yes'),
    ])
    return { no: i + 1, runs, own }
  })
}

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ')
const counted = (n: number) => NUMBERS[n] ?? String(n)
const ORDER: readonly (readonly [FindingKind, string])[] = [
  ['borne-out', 'borne out'],
  ['borne-out-with-care', 'with care'],
  ['cannot-be-checked', 'that cannot be checked'],
]
/** "Every time and temperature here was checked …: 18 borne out, one with care." Counts what is printed. */
export function footOf(printed: readonly CheckedClaim[], own: number, modelVersion: string): string {
  const parts = ORDER.map(([finding, words]) => ({ n: printed.filter((c) => c.finding === finding).length, words }))
  const said = parts.filter((p) => p.n > 0).map((p) => `${counted(p.n)} ${p.words}`)
  if (own > 0) said.push(`${counted(own)} contradicted and printed as the author’s own`)
  const counts = said.length > 0 ? `: ${said.join(', ')}` : ''
  return `Every time and temperature here was checked against the thermal model (version ${modelVersion})${counts}.`
}

/** What stands under the list of ingredients. What is listed already is not wanted twice. */
function notesOf({ recipe }: Card, f: Forecast): string[] {
  const listed = recipe.ingredients.map((i) => i.what.toLowerCase()).join('\n')
  const kit = recipe.kit.filter((item) => !listed.includes(item.split(',')[0]?.split(' ').at(-1) ?? item))
  return [
    recipe.meatListed ? `The meat is ${thickWords(f)} at its thickest.` : '',
    kit.length > 0 ? `You also want ${inWords(kit)}.` : '',
    recipe.allergens,
    recipe.yield,
  ]
    .filter(Boolean)
    .map(tied)
}
/** "charcoal (3 kg), a probe and long tongs". */
function inWords(kit: readonly string[]): string {
  const words = kit.map((item) => item.replace(/, (.*)$/, ' ($1)'))
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** One number of people that the card prints; none where it names several. */
function servingsOf(printed: readonly CheckedClaim[]): number | null {
  const said = [...new Set(printed.filter((c) => c.unit === 'people').flatMap((c) => [c.low, c.high]))]
  return said.length === 1 && Number.isFinite(said[0]) ? (said[0] as number) : null
}

/** A number of servings that the check contradicts is not printed, so nothing is told for one of them. */
function printedRecipe(card: Card, checked: readonly CheckedClaim[]): RecipePart {
  const recipe = { ...card.recipe, storage: storageSentences(textOf(card, checked, 'storage')) }
  const wrong = checked.some((c) => c.step === 'serves' && c.finding === 'contradicted')
  const note = 'Nutrition is not reckoned: the check contradicts how many it serves.'
  return wrong ? { ...recipe, serves: null, nutrition: { rows: [], note: [note] } } : recipe
}

/** A title, intro or note on keeping that the check contradicts does not print. */
const textOf = (card: Card, checked: readonly CheckedClaim[], which: 'title' | 'serves' | 'intro' | 'storage') =>
  printedText(printable(card[which], checked))

const AFTERWARDS: readonly string[] = ['ash', 'probe-cross-contact', 'cooling', 'defer']

/** Card, findings and forecast as what is printed. The same for page and PDF. */
export function cardModel(card: Card, checked: readonly CheckedClaim[], sources: CardSources): CardModel {
  const { forecast, date } = sources
  const all = claimTexts(card).map((step) => printable(step, checked))
  const claimsThat = (prints: CardSentence['prints']) =>
    all.flatMap((step) => step.sentences.filter((s) => s.prints === prints).flatMap((s) => s.claims))
  const own = claimsThat('own').filter((c) => c.finding === 'contradicted').length
  return {
    title: textOf(card, checked, 'title') || card.cut.charAt(0).toUpperCase() + card.cut.slice(1),
    intro: tied([textOf(card, checked, 'serves'), textOf(card, checked, 'intro')].filter(Boolean).join(' ')),
    face: sliceAlone(forecast),
    timeLine: card.timeLine,
    ingredients: card.recipe.ingredients.map(({ what, metric, us }) => ({ what, much: metric, other: us })),
    notes: notesOf(card, forecast),
    recipe: printedRecipe(card, checked),
    steps: linesOf(card, checked),
    doneness: donenessRows(card, forecast),
    howToKnow: howToKnow(card, forecast),
    sizes: sources.sizes ?? null,
    cautions: card.cautions.filter((c) => !AFTERWARDS.includes(c.code)).map((c) => tied(c.sentence)),
    housekeeping: card.cautions.filter((c) => AFTERWARDS.includes(c.code)).map((c) => tied(c.sentence)),
    foot: footOf([...claimsThat('yes'), ...claimsThat('own')], own, forecast.modelVersion),
    stamp: date,
    times: cardTimes(forecast),
    servings: servingsOf(claimsThat('yes')),
    published: sources.published ?? NOWHERE,
  }
}
