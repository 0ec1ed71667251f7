import type { Problem } from '../refusals'

const DEEPEST = 12
const LONGEST_LIST = 1000
const DANGEROUS = new Set(['__proto__', 'constructor', 'prototype'])

/** Faults of the document's make, before its meaning is read: keys that poison objects, bottomless nesting, endless lists. */
export function scanDocument(document: unknown): Problem[] {
  const problems: Problem[] = []
  const visit = (value: unknown, pointer: string, depth: number) => {
    if (typeof value !== 'object' || value === null || problems.length > 0) return
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
    for (const [key, inner] of Object.entries(value)) {
      const at = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`
      if (!Array.isArray(value) && DANGEROUS.has(key))
        problems.push({ pointer: at, sentence: `"${key}" is not known here. Take this key out.` })
      visit(inner, at, depth + 1)
    }
  }
  visit(document, '', 0)
  return problems
}
