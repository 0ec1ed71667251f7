import type { Problem } from '../refusals'

const DEEPEST = 12
const LONGEST_LIST = 1000
/** The demo has 416, the largest permitted day some thousands. To say of each of a million how it is wrong would keep all others waiting. */
const MOST_VALUES = 20_000
/** The longest that is printed has 2000. What reads times and quantities slows down with the square of a text's length. */
const LONGEST_TEXT = 20_000
const DANGEROUS = new Set(['__proto__', 'constructor', 'prototype'])

/** Faults of the document's make, before its meaning is read: keys that poison objects, bottomless nesting, endless lists. */
export function scanDocument(document: unknown): Problem[] {
  const problems: Problem[] = []
  let values = 0
  const visit = (value: unknown, pointer: string, depth: number) => {
    if (problems.length > 0) return
    if (typeof value === 'string' && value.length > LONGEST_TEXT)
      problems.push({
        pointer,
        sentence: `This text has ${value.length} letters; none of a shoot has more than ${LONGEST_TEXT}. Shorten it.`,
      })
    if (typeof value !== 'object' || value === null) return
    if (depth > DEEPEST) {
      problems.push({
        pointer,
        sentence: `This is nested more than ${DEEPEST} deep; a shoot file is not. Take the inner part out.`,
      })
      return
    }
    if (Array.isArray(value) && value.length > LONGEST_LIST) {
      problems.push({
        pointer,
        sentence: `This list holds ${value.length} entries; no list of a shoot holds more than 200.`,
      })
      return
    }
    const entries = Object.entries(value)
    values += entries.length
    if (values > MOST_VALUES) {
      problems.push({
        pointer,
        sentence: `Up to here the file holds more than ${MOST_VALUES} values; a shoot file has some thousands. Take out what is not of the shoot.`,
      })
      return
    }
    for (const [key, inner] of entries) {
      const at = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`
      if (!Array.isArray(value) && DANGEROUS.has(key))
        problems.push({ pointer: at, sentence: `"${key}" is not known here. Take this key out.` })
      visit(inner, at, depth + 1)
    }
  }
  visit(document, '', 0)
  return problems
}
