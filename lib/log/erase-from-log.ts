import { z } from 'zod'
import { type Book, type Erased, type Erasure, eraseTexts } from '../plan/erase-person'
import type { Fields } from '../plan/person-fields'
import { textPaths } from '../plan/text-paths'
import { ENTRY } from './entry'

const ENTRY_FIELDS: Fields = {
  id: 'nobody',
  at: 'nobody',
  kind: 'nobody',
  'by/device': 'device',
  'by/person': 'person',
  cook: 'thing',
  sensor: 'nobody',
  call: 'thing',
  to: 'person',
  shot: 'thing',
  /** Takes are told apart by it. */
  slate: 'thing',
  camera: 'thing',
  note: 'words',
  text: 'words',
  photo: 'nobody',
  what: 'words',
  'moves/*/id': 'thing',
  'moves/*/setup': 'nobody',
  'moves/*/start': 'nobody',
  'moves/*/end': 'nobody',
  'moves/*/people/*': 'person',
  'moves/*/cameras/*': 'thing',
  'gone/*': 'thing',
  'change/cook': 'thing',
  from: 'nobody',
  why: 'words',
  who: 'person',
  'people/*': 'person',
  corrects: 'nobody',
}
/** A correction holds the fields of what it corrects. */
export const LOG_FIELDS: Fields = {
  ...ENTRY_FIELDS,
  ...Object.fromEntries(Object.entries(ENTRY_FIELDS).map(([path, field]) => [`put/${path}`, field])),
}

let book: Book | undefined
function logBook(): Book {
  if (book) return book
  const limits = [...textPaths(z.toJSONSchema(ENTRY, { io: 'input' }))]
  book = {
    fields: LOG_FIELDS,
    limits: new Map([...limits, ...limits.map(([at, most]) => [`put/${at}`, most] as const)]),
  }
  return book
}

/** A line of the log without the person. Its id, its time and what it did to the day stay as they were. */
export const eraseFromEntry = <T extends object>(document: T, erasure: Erasure): Erased<T> =>
  eraseTexts(document, logBook(), erasure)

/** Who is named in a line, by id: those who logged it, were handed a call, came late, moved or ate. */
export function personsIn(document: object): readonly string[] {
  const found = new Set<string>()
  const visit = (value: unknown, path: string) => {
    if (typeof value === 'string') {
      if (LOG_FIELDS[path] === 'person') found.add(value)
    } else if (Array.isArray(value)) for (const inner of value) visit(inner, `${path}/*`)
    else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) visit(inner, path ? `${path}/${key}` : key)
  }
  visit(document, '')
  return [...found]
}
