import type { CardModel } from './card'
import { type Block, cardFoot, cardSections, type Section } from './card-sections'
import { plainWords } from './plain-words'
import { tied } from './tied'
import { wrapWords } from './wrap-words'

/** As wide as a letter may be typed and still be quoted in another. */
const COLUMNS = 72
const GAP = 2

/** Words over lines of the width behind a mark, the others under them; a number keeps its unit beside it. */
const lines = (text: string, mark = '') =>
  wrapWords(tied(text), COLUMNS - mark.length).map(
    (line, i) => `${i === 0 ? mark : ' '.repeat(mark.length)}${line.replaceAll('\u00a0', ' ')}`,
  )

/** In columns where that fits; else the first cell, and the others under it by their names. */
function tableLines(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const all = head.some((h) => h !== '') && head[0] !== '' ? [head, ...rows] : rows
  const widths = head.map((_, i) => Math.max(...all.map((row) => (row[i] ?? '').length)))
  if (widths.reduce((sum, w) => sum + w + GAP, -GAP) > COLUMNS) return listLines(head, rows)
  return all.map((row) =>
    row
      .map((cell, i) => cell.padEnd((widths[i] ?? 0) + GAP))
      .join('')
      .trimEnd(),
  )
}
const listLines = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  rows.flatMap(([first = '', ...others]) => [
    ...lines(first, '- '),
    ...others.flatMap((cell, i) =>
      cell === '' ? [] : lines(`${head[i + 1] ? `${head[i + 1]}: ` : ''}${cell}`, '    '),
    ),
  ])

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case 'words':
      return lines(block.text)
    case 'steps':
      return block.steps.flatMap((step, i) => lines(step, `${i + 1}. `))
    case 'table':
      return tableLines(block.head, block.rows)
    case 'cautions':
      return block.sentences.flatMap((sentence) => lines(sentence, '! '))
  }
}
const sectionLines = ({ heading, blocks }: Section) => [
  ...(heading === null ? [] : [heading.toUpperCase(), '']),
  ...blocks.flatMap((block) => [...blockLines(block), '']),
]

/** The recipe card as plain text of 72 columns. */
export function cardText(model: CardModel): string {
  const title = lines(plainWords(model.title).toUpperCase())
  const underline = '='.repeat(Math.max(...title.map((line) => line.length)))
  const foot = ['-'.repeat(COLUMNS), ...cardFoot(model).flatMap((line) => lines(line))]
  return `${[...title, underline, '', ...cardSections(model).flatMap(sectionLines), ...foot].join('\n')}\n`
}
