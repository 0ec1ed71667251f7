import { type Card, claimTexts } from '../card/card'
import type { CheckedClaim, FindingKind } from '../card/claim'
import { shareMeeting } from '../card/coldest'
import { type CardSentence, printable, printableSteps, printedText } from '../card/printable-steps'
import type { DayPart } from '../card/time-line'
import { shareWords } from '../card/wording'
import { DONENESS_RANGES, type DonenessRange, wordsFor } from '../model/doneness'
import type { Forecast } from '../model/forecast'
import { minimumFor } from '../model/minimums'
import { medianOf, spreadOf } from '../model/quantiles'
import { celsius, formatLength, formatMass, formatTempBoth, kilograms, metres } from '../units'
import { bothMasses } from './amounts'
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
export interface DonenessRow {
  readonly word: string
  readonly middle: string
  readonly offHeat: string
  readonly authority: string
  readonly here: boolean
}
/** The recipe card as values, for page and paper alike: what is contradicted is not in it. */
export interface CardModel {
  readonly title: string
  readonly intro: string
  readonly face: Drawing
  readonly timeLine: readonly DayPart[]
  readonly ingredients: readonly { readonly what: string; readonly much: string; readonly other: string }[]
  readonly notes: readonly string[]
  readonly steps: readonly CardLine[]
  readonly doneness: readonly DonenessRow[]
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

/** The middle of what cooks mean by a word; the last has no upper end. */
const levelOf = ({ fromC, toC }: DonenessRange) => (Number.isFinite(toC) ? (fromC + toC) / 2 : fromC + 2)

/** Whether the authority's minimum is met: this cook by its members' histories, another level by this cook's moved there. */
function authorityWords(card: Card, f: Forecast, by: number): string {
  const minimum = minimumFor({ animal: card.animal }, card.authority)
  const moved = f.atSlice.coreC.filter((coldest) => coldest + by >= minimum.tempC).length / f.members
  const share = by === 0 ? shareMeeting(f, minimum) : moved
  if (share < 0.5) return 'below its minimum'
  if (share < 0.95) return 'met in most cooks'
  return minimum.restMin > 0 ? 'met, with the rest' : 'met'
}

/**
 * This cook's doneness and its neighbours, as a probe reads them; what the rest adds is taken from this cook.
 * Poultry has no neighbours: nobody should be shown an earlier way off the heat.
 */
function donenessRows(card: Card, f: Forecast): DonenessRow[] {
  const sliced = medianOf(f.atSlice.probeC)
  const rise = sliced - medianOf(f.offHeat.probeC)
  const row = (word: string, level: number, here: boolean): DonenessRow => ({
    word: word.replace('-', ' '),
    middle: formatTempBoth(celsius(Math.round(level))),
    offHeat: formatTempBoth(celsius(Math.round(level - rise))),
    authority: authorityWords(card, f, level - sliced),
    here,
  })
  const known = wordsFor(card.animal)
  const ranges = DONENESS_RANGES.filter((r) => known.includes(r.word))
  const now = ranges.find((r) => sliced >= r.fromC && sliced < r.toC)
  if (!now) return [row('this cook', sliced, true), ...ranges.slice(0, 1).map((r) => row(r.word, levelOf(r), false))]
  const from = Math.max(0, Math.min(ranges.indexOf(now) - 1, ranges.length - 3))
  return ranges
    .slice(from, from + 3)
    .map((r) => (r === now ? row(r.word, sliced, true) : row(r.word, levelOf(r), false)))
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

function notesOf(card: Card, f: Forecast): string[] {
  const loss = spreadOf<number>(f.lossFrac)
  const cooked = kilograms(f.cook.roast.mass * (1 - loss.likely) * (1 - card.boneShare))
  const listed = card.ingredients.map((i) => i.what.toLowerCase()).join('\n')
  const kit = card.kit.filter((item) => !listed.includes(item.split(' ').at(-1) ?? item))
  const bone = card.boneShare > 0.02 ? ', off the bone' : ''
  return [
    meatIsListed(card) ? `The meat is ${thickWords(f)} at its thickest.` : '',
    kit.length > 0 ? `You also want ${kit.join(' and ')}.` : '',
    `Gives about ${formatMass(cooked)} / ${formatMass(cooked, 'us')} to slice${bone}: it loses ${shareWords(loss)} of its weight.`,
  ]
    .filter(Boolean)
    .map(tied)
}
const thickWords = (f: Forecast) => {
  const thick = metres(f.cook.roast.thickness ?? f.cutFace.thickness)
  return `${formatLength(thick)} / ${formatLength(thick, 'us')}`
}
/** The author's own list names the meat. */
const meatIsListed = (card: Card) => {
  const names = [card.cut.split(',')[0] ?? card.cut, card.animal].map((n) => n.toLowerCase())
  return card.ingredients.some((i) => names.some((name) => i.what.toLowerCase().includes(name)))
}

function needs(card: Card, f: Forecast): CardModel['ingredients'] {
  const { mass } = f.cook.roast
  const own = card.ingredients.map(({ what, much }) => ({ what, ...bothMasses(much) }))
  if (meatIsListed(card)) return own
  return [
    { what: `${card.cut}, ${thickWords(f)} thick`, much: formatMass(mass), other: formatMass(mass, 'us') },
    ...own,
  ]
}

/** One number of people that the card prints; none where it names several. */
function servingsOf(printed: readonly CheckedClaim[]): number | null {
  const said = [...new Set(printed.filter((c) => c.unit === 'people').flatMap((c) => [c.low, c.high]))]
  return said.length === 1 && Number.isFinite(said[0]) ? (said[0] as number) : null
}

/** A title or intro that the check contradicts does not print. */
const textOf = (card: Card, checked: readonly CheckedClaim[], which: 'title' | 'serves' | 'intro') =>
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
    ingredients: needs(card, forecast),
    notes: notesOf(card, forecast),
    steps: linesOf(card, checked),
    doneness: donenessRows(card, forecast),
    cautions: card.cautions.filter((c) => !AFTERWARDS.includes(c.code)).map((c) => tied(c.sentence)),
    housekeeping: card.cautions.filter((c) => AFTERWARDS.includes(c.code)).map((c) => tied(c.sentence)),
    foot: footOf([...claimsThat('yes'), ...claimsThat('own')], own, forecast.modelVersion),
    stamp: date,
    times: cardTimes(forecast),
    servings: servingsOf(claimsThat('yes')),
    published: sources.published ?? NOWHERE,
  }
}
