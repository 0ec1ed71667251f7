import type { CardLine } from './card'

/** Words for machines and typewriters: the spaces that hold a number to its unit on paper become plain ones. */
export const plainWords = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim()

export const stepWords = (line: CardLine): string => plainWords(line.runs.map((run) => run.text).join(''))

/** What a step is called in a list of steps: its own first words, up to where it takes breath. */
export function stepName(line: CardLine): string {
  const [first = ''] = stepWords(line).split(/[,;:.](?=\s|$)/)
  return first.length > 0 && first.length <= 60 ? first : `Step ${line.no}`
}
