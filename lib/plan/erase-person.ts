import { shootJsonSchema } from './json-schema'
import { type Field, type Fields, SHOOT_FIELDS } from './person-fields'
import { blanked, isCalled, type PersonWords, personWords, phoneOf, toldIn, withoutClauses } from './person-words'
import type { ShootDocument } from './shoot'
import { textPaths } from './text-paths'

/** How one person is taken out of a shoot, as it can be written down. */
export interface ErasurePlan {
  /** Each id that goes, with the neutral one that stands in its place. */
  readonly ids: Readonly<Record<string, string>>
  /** Ids under which the person stands in the shoot, those that stay among them. */
  readonly own: readonly string[]
  /** Phones and probes whose name tells who they are, with the neutral name. */
  readonly devices: Readonly<Record<string, string>>
  readonly names: readonly string[]
  /** By which a text tells of them. */
  readonly telling: readonly string[]
  readonly phones: readonly string[]
  /** Single words of the name go too, wherever they stand in free text. */
  readonly notes: boolean
}
interface Renamed {
  get(written: string): string | undefined
}
export interface Erasure {
  readonly ids: Renamed
  readonly own: ReadonlySet<string>
  readonly devices: Renamed
  readonly names: readonly string[]
  readonly words: PersonWords
  readonly notes: boolean
}
export const erasureOf = ({ ids, own, devices, names, telling, phones, notes }: ErasurePlan): Erasure => ({
  ids: new Map(Object.entries(ids)),
  own: new Set(own),
  devices: new Map(Object.entries(devices)),
  names,
  words: personWords(telling, phones),
  notes,
})
/** `after` is null where the text is gone. */
export interface Change {
  readonly pointer: string
  readonly before: string
  readonly after: string | null
}
/** What tells of the person, or may, and stays. */
export interface Left {
  readonly pointer: string
  readonly text: string
  readonly why: 'one word of the name' | 'the name of a thing'
}
export interface Erased<T> {
  readonly document: T
  readonly changes: readonly Change[]
  readonly left: readonly Left[]
}

let limits: ReadonlyMap<string, number> | undefined
const shootLimits = () => {
  limits ??= textPaths(shootJsonSchema())
  return limits
}

/** A version of a shoot without the person. What does not change stays to the letter, in its order. */
export const eraseFromShoot = (document: ShootDocument, erasure: Erasure): Erased<ShootDocument> =>
  eraseTexts(document, { fields: SHOOT_FIELDS, limits: shootLimits() }, erasure)

type Members = Record<string, unknown>
const isObject = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
/** What the walk hands back for what goes. */
const GONE = Symbol('gone')

const isTheirContact = (path: string, contact: Members, { names, words }: Erasure) =>
  path === 'callSheet/contacts/*' &&
  (isCalled(String(contact.name ?? ''), names) || words.isPhone(phoneOf(String(contact.phone ?? '')) ?? ''))

export interface Book {
  readonly fields: Fields
  readonly limits: ReadonlyMap<string, number>
}

/** Walks every text of a value by what its field is; a field that the book does not know is taken for free text. */
export function eraseTexts<T>(value: T, book: Book, erasure: Erasure): Erased<T> {
  const changes: Change[] = []
  const left: Left[] = []
  const tell = (pointer: string, before: string, after: string | null) => {
    if (before !== after) changes.push({ pointer, before, after })
  }
  const visit = (one: unknown, path: string, pointer: string, owner: Members | null): unknown => {
    if (typeof one === 'string') {
      const field = book.fields[path] ?? 'words'
      const after = becameOf(one, field, { erasure, owner, longest: book.limits.get(path) ?? Number.POSITIVE_INFINITY })
      tell(pointer, one, after)
      if (after !== null) left.push(...leftIn(after, field, erasure).map((why) => ({ pointer, text: after, why })))
      return after ?? GONE
    }
    if (Array.isArray(one)) {
      const all = one.map((inner, i) => visit(inner, `${path}/*`, `${pointer}/${i}`, owner))
      return all.every((inner, i) => inner === one[i]) ? one : all.filter((inner) => inner !== GONE)
    }
    if (!isObject(one)) return one
    if (isTheirContact(path, one, erasure)) {
      for (const [key, text] of Object.entries(one)) tell(`${pointer}/${key}`, String(text), null)
      return GONE
    }
    const entries = Object.entries(one)
    const all = entries.map(([key, inner]) => {
      const at = path ? `${path}/${key}` : key
      return [key, visit(inner, at, `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`, one)] as const
    })
    return all.every(([, inner], i) => inner === entries[i]?.[1])
      ? one
      : Object.fromEntries(all.filter(([, inner]) => inner !== GONE))
  }
  return { document: visit(value, '', '', null) as T, changes, left }
}

interface Place {
  readonly erasure: Erasure
  /** The object in which the text stands. */
  readonly owner: Members | null
  readonly longest: number
}
/** What a text becomes; null where it goes. */
function becameOf(text: string, field: Field, { erasure, owner, longest }: Place): string | null {
  const { ids, own, devices, names, words, notes } = erasure
  const told = toldIn(text, words).filter(({ sure }) => sure || notes)
  switch (field) {
    case 'thing':
    case 'nobody':
      return text
    case 'name':
      return own.has(String(owner?.id)) ? null : text
    case 'device':
      return devices.get(text) ?? text
    case 'person':
      return ids.get(text) ?? blanked(text, told, longest)
    case 'called':
      return isCalled(text, names) || told.length > 0 ? null : text
    case 'web':
      return told.length > 0 ? null : text
    case 'health':
      return withoutClauses(text, words, longest)
    default:
      return blanked(text, told, longest)
  }
}

/** Another's name is their own, whatever word of it the two share. */
const OTHERS: readonly Field[] = ['name', 'nobody', 'device']
function leftIn(text: string, field: Field, { words }: Erasure): Left['why'][] {
  if (OTHERS.includes(field) || toldIn(text, words).length === 0) return []
  return [field === 'thing' ? 'the name of a thing' : 'one word of the name']
}
