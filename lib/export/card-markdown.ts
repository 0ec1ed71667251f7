import type { CardModel } from './card'
import { type Block, cardFoot, cardSections, type Section } from './card-sections'
import { plainWords } from './plain-words'

/** Signs that Markdown would read as its own, and what would open a heading, a list or a quotation at a line's start. */
const escaped = (text: string) =>
  text
    .replace(/[\\`*_[\]<>|~&]/g, '\\$&')
    .replace(/^(\s*)([#+\-=])/, '$1\\$2')
    .replace(/^(\s*\d+)([.)])(?=\s)/, '$1\\$2')

const row = (cells: readonly string[]) => `| ${cells.map(escaped).join(' | ')} |`

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case 'words':
      return [escaped(block.text)]
    case 'steps':
      return block.steps.map((step, i) => `${i + 1}. ${escaped(step)}`)
    case 'table':
      return [row(block.head), `|${block.head.map(() => ' --- |').join('')}`, ...block.rows.map(row)]
    case 'cautions':
      return block.sentences.flatMap((sentence, i) => [...(i > 0 ? [''] : []), `> **Caution:** ${escaped(sentence)}`])
  }
}
const sectionLines = ({ heading, blocks }: Section) => [
  ...(heading === null ? [] : [`## ${heading}`, '']),
  ...blocks.flatMap((block) => [...blockLines(block), '']),
]

/** The recipe card as Markdown with tables (GitHub Flavored Markdown, section 4.10). */
export function cardMarkdown(model: CardModel): string {
  const lines = [`# ${escaped(plainWords(model.title))}`, '', ...cardSections(model).flatMap(sectionLines), '---', '']
  const foot = cardFoot(model).flatMap((line) => [/https?:\/\//.test(line) ? linked(line) : escaped(line), ''])
  return `${[...lines, ...foot].join('\n').trimEnd()}\n`
}
/** An address stands between angle brackets, so that its own signs stay what they are. */
const linked = (line: string) => line.replace(/https?:\/\/\S+/, (address) => `<${address}>`)
