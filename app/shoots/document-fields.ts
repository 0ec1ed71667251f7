import { typedClock } from '@/lib/plan/as-read'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Gain } from './gains'

/** One thing a form asks for: where it stands in the document, how it is read and written. */
export interface DocumentField {
  readonly key: string
  readonly label: string
  readonly why?: string
  /** A fault at one of these pointers, or below it, belongs under this field. */
  readonly pointers: readonly string[]
  readonly read: (document: ShootDocument) => string
  readonly write: (document: ShootDocument, text: string) => ShootDocument
  readonly options?: readonly (readonly [value: string, words: string])[]
  readonly suggestions?: readonly string[]
  readonly type?: 'date'
  /** Cautions and warnings at these pointers stand here too rather than under a field that is folded away. */
  readonly cautions?: readonly string[]
  /** What of the forecast would be surer if this were measured; told under the field. */
  readonly gain?: Pick<Gain, 'cook' | 'what'>
}
export interface FieldGroup {
  readonly key: string
  readonly title: string
  readonly fields: readonly DocumentField[]
  /** Rarely needed: folded away until a fault opens it. What it holds is said in one line. */
  readonly says?: string
}

/** What measuring it would narrow is told under the field. */
export const measuring = (cook: number, what: Gain['what']): DocumentField['gain'] => ({ cook, what })

export const asText = (value: unknown) => (value === undefined || value === null ? '' : String(value))

export function plain(key: string, label: string, pointer: string, more: Partial<DocumentField> = {}): DocumentField {
  return {
    key,
    label,
    pointers: [pointer],
    read: (document) => asText(valueAt(document, pointer)),
    write: (document, text) => setAt(document, pointer, text),
    ...more,
  }
}
/** Empty means: not said, so the key goes. */
export function optional(
  key: string,
  label: string,
  pointer: string,
  more: Partial<DocumentField> = {},
): DocumentField {
  return plain(key, label, pointer, {
    write: (document, text) => (text.trim() === '' ? removeAt(document, pointer) : setAt(document, pointer, text)),
    ...more,
  })
}
/** A time of day, "14:30" or "2:30 pm"; the file keeps 24 hours. */
export const timeOfDay = (key: string, label: string, pointer: string, more: Partial<DocumentField> = {}) =>
  optional(key, label, pointer, {
    write: (document, text) =>
      text.trim() === '' ? removeAt(document, pointer) : setAt(document, pointer, typedClock(text)),
    ...more,
  })
/** Latitude and longitude are bare numbers in the document. */
export function degrees(key: string, label: string, pointer: string, why: string): DocumentField {
  return plain(key, label, pointer, {
    why,
    write: (document, text) => {
      const number = Number(text.replace(',', '.').replace('−', '-'))
      return setAt(document, pointer, text.trim() === '' || Number.isNaN(number) ? text : number)
    },
  })
}

const under = (pointer: string, at: string) => pointer === at || pointer.startsWith(`${at}/`)
/**
 * The one field under which the fault or note at this pointer stands: the field of that place, or of the whole it is part
 * of, else the first field inside it.
 */
export function fieldAt(fields: readonly DocumentField[], pointer: string): DocumentField | undefined {
  if (pointer === '') return undefined
  const owning = fields.find((field) => field.pointers.some((at) => under(pointer, at)))
  return owning ?? fields.find((field) => field.pointers.some((at) => under(at, pointer)))
}
/** The field under which a caution or warning stands: the hazard's own where one says so. */
export const cautionedAt = (fields: readonly DocumentField[], pointer: string): DocumentField | undefined =>
  fields.find((field) => field.cautions?.some((at) => under(pointer, at))) ?? fieldAt(fields, pointer)
