import 'server-only'
import type { Erasure } from '../../plan/erase-person'
import { blanked, toldIn } from '../../plan/person-words'

/**
 * What was told of a forecast, without the person: its sentences are of the program's words and of titles, and what has no
 * space in it is an id, which other lines hang on. A line that does not read stays, and is passed over everywhere.
 */
export function eraseTold(line: string, { words, notes }: Erasure): string {
  const sentence = (text: string) =>
    blanked(
      text,
      toldIn(text, words).filter(({ sure }) => sure || notes),
      Number.POSITIVE_INFINITY,
    )
  try {
    return JSON.stringify(JSON.parse(line), (_key, value: unknown) =>
      typeof value === 'string' && value.includes(' ') ? sentence(value) : value,
    )
  } catch {
    return line
  }
}
