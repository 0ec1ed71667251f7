import type { CardModel } from './card'
import { plainWords, stepWords } from './plain-words'

/** One part of a section, as any plain text can set it. */
export type Block =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'steps'; readonly steps: readonly string[] }
  | { readonly kind: 'table'; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'cautions'; readonly sentences: readonly string[] }
export interface Section {
  /** Null for what stands under the title. */
  readonly heading: string | null
  readonly blocks: readonly Block[]
}

const words = (text: string): Block[] => (text.trim() === '' ? [] : [{ kind: 'words', text: plainWords(text) }])
const cautions = (sentences: readonly string[]): Block[] =>
  sentences.length === 0 ? [] : [{ kind: 'cautions', sentences: sentences.map(plainWords) }]
const table = (head: readonly string[], rows: readonly (readonly string[])[]): Block[] =>
  rows.length === 0 ? [] : [{ kind: 'table', head, rows: rows.map((row) => row.map(plainWords)) }]

const lineOfDay = ({ timeLine }: CardModel) => timeLine.map((part) => `${part.label} ${part.words}`).join(', then ')

function top(model: CardModel): Section {
  const { author } = model.published
  return {
    heading: null,
    blocks: [...words(author ? `By ${author}.` : ''), ...words(model.intro), ...words(sentence(lineOfDay(model)))],
  }
}
const sentence = (text: string) => (text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`)

function needs(model: CardModel): Section {
  const rows = model.ingredients.map(({ what, much, other }) => [what, much, other])
  return { heading: 'You need', blocks: [...table(['', 'metric', 'US'], rows), ...model.notes.flatMap(words)] }
}

const steps = (model: CardModel): Section => ({
  heading: 'Steps',
  blocks: [{ kind: 'steps', steps: model.steps.map(stepWords) }, ...cautions(model.cautions)],
})

const HOW_DONE = ['when sliced', 'middle', 'off the heat at about', 'the authority says']
const howDone = ({ doneness }: CardModel): Section => ({
  heading: 'How done',
  blocks: table(
    HOW_DONE,
    doneness.map((row) => [row.word, row.middle, row.offHeat, row.authority]),
  ),
})

const howYouKnow = ({ howToKnow }: CardModel): Section => ({
  heading: 'How you know',
  blocks: table(
    ['stage', 'by its temperature', 'roughly'],
    howToKnow.map(({ stage, know, roughly }) => [stage, know, roughly]),
  ),
})

function otherSizes({ sizes }: CardModel): Section {
  const heading = 'Yours is another size?'
  if (!sizes) return { heading, blocks: [] }
  const rows = sizes.rows.map(({ thick, weight, filmed, cells }) => [
    filmed ? `${thick} (filmed)` : thick,
    weight,
    ...cells.map((cell) => cell.words),
  ])
  const head = ['thickest part', 'weight', ...sizes.columns.map((column) => column.words)]
  return { heading, blocks: [...words(`${sizes.caption}.`), ...table(head, rows), ...words(sizes.note)] }
}

function nutrition({ recipe }: CardModel): Section {
  const rows = recipe.nutrition.rows.map(({ name, amount, unit }) => [name, `${amount} ${unit}`])
  const notes = recipe.nutrition.note.flatMap(words)
  return { heading: 'Per serving, an estimate', blocks: [...table(['', 'about'], rows), ...notes] }
}

const afterwards = ({ recipe, housekeeping }: CardModel): Section => ({
  heading: 'Afterwards',
  blocks: [...recipe.storage.flatMap(words), ...cautions(housekeeping)],
})

/** The card's parts in reading order, for Markdown and plain text alike; a part without contents is left out. */
export const cardSections = (model: CardModel): Section[] =>
  [top, needs, steps, howDone, howYouKnow, otherSizes, nutrition, afterwards]
    .map((part) => part(model))
    .filter((section) => section.blocks.length > 0)

/** The last lines: where the card is read, and what it rests on. */
export const cardFoot = ({ foot, stamp, published }: CardModel): string[] =>
  [
    published.at ? `This card: ${published.at}` : '',
    published.video?.url ? `The video: ${published.video.url}` : '',
    plainWords(foot),
    stamp,
  ].filter(Boolean)
