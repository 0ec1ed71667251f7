import { MOMENT_IDS } from '../model/moment-ids'
import { listed, quoted } from '../plan/nearest'
import { unprintable } from '../plan/printable'
import { scanDocument } from '../plan/scan'
import { FOOD_STATES } from '../plan/vocabulary'
import type { Problem, Result } from '../refusals'
import { type Dimension, readQuantity } from '../units'
import type { Entry } from './entry'
import { ENTRY_ID } from './entry-id'
import {
  ANSWERS,
  CALL_STATES,
  COOKER_LIMITS,
  CORE_LIMITS,
  DEVICE,
  FIRE_WORK,
  FIXED,
  FOOD_PLACES,
  FOUND,
  HELD_IN,
  LATE_LIMITS,
  MEAL_ENDS,
  READING_LIMITS,
  ROLLS,
  SENSOR,
  TIMECODE,
  VERDICTS,
  WHEN,
} from './entry-words'

/**
 * The entry of a document without the schema library, which weighs more than a phone's whole board. Takes what the
 * schema takes and makes of it the same (tests/unit/log/plain-entry.test.ts); its sentences are shorter.
 */
export function plainEntry(document: unknown): Result<Entry> {
  const scanned = scanDocument(document)
  if (scanned.length > 0) return { ok: false, problems: scanned }
  const kind = isObject(document) ? document.kind : undefined
  if (!isObject(document) || typeof kind !== 'string' || !Object.hasOwn(FIELDS, kind))
    return { ok: false, problems: [{ pointer: '/kind', sentence: `${quoted(kind)} is not a kind of entry.` }] }
  const read = readFields(document, { ...COMMON, ...FIELDS[kind as Entry['kind']] })
  if (!read.ok) return read
  const fault = kind === 'correction' ? correctionFault(read.value) : null
  if (fault) return { ok: false, problems: [{ pointer: '/put', sentence: fault }] }
  // Put together field by field, which the type cannot follow; the test holds it to the schema.
  // FIELDS names every field of each kind, which the compiler checks; what they read it cannot follow.
  return { ok: true, value: read.value as unknown as Entry }
}

type Fit = { readonly value: unknown } | { readonly sentence: string }
type Field = { readonly read: (written: unknown) => Fit; readonly optional: boolean }
type Fields = Readonly<Record<string, Field>>
type Document = Readonly<Record<string, unknown>>
const isObject = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function readFields(document: Document, fields: Fields): Result<Document> {
  const problems: Problem[] = Object.keys(document)
    .filter((key) => !Object.hasOwn(fields, key))
    .map((key) => ({ pointer: `/${key}`, sentence: `${quoted(key)} is not known here.` }))
  const value: Record<string, unknown> = {}
  for (const [key, { read, optional }] of Object.entries(fields)) {
    if (document[key] === undefined && optional) continue
    const fit = read(document[key])
    if ('value' in fit) value[key] = fit.value
    else problems.push({ pointer: `/${key}`, sentence: fit.sentence })
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value }
}

const fits = (right: (written: unknown) => boolean, what: string): Field => ({
  optional: false,
  read: (written) => (right(written) ? { value: written } : { sentence: `${quoted(written)} is not ${what}.` }),
})
const pattern = (form: RegExp, what: string) =>
  fits((written) => typeof written === 'string' && form.test(written), what)
const maybe = (field: Field): Field => ({ ...field, optional: true })
const word = (words: readonly string[]) => fits((written) => words.includes(written as string), listed(words))
const whole = (min: number, max: number) =>
  fits((n) => Number.isSafeInteger(n) && Number(n) >= min && Number(n) <= max, `a whole number from ${min} to ${max}`)

const text = (longest: number, shortest = 0): Field => ({
  optional: false,
  read: (written) => {
    if (typeof written !== 'string') return { sentence: `${quoted(written)} is not in words.` }
    const value = written.normalize('NFC')
    const length = shortest > 0 ? value.trim().length : value.length
    if (length < shortest) return { sentence: 'This is empty. Write at least one letter.' }
    const sentence =
      value.length > longest ? `This is too long; at most ${longest} letters are kept.` : unprintable(value)
    return sentence === null ? { value } : { sentence }
  },
})

function quantity(dimension: Dimension, limits?: { readonly min: number; readonly max: number }): Field {
  const read = (written: unknown): Fit => {
    const { si, sentence } = { si: 0, sentence: '', ...readQuantity(written, dimension) }
    if (sentence) return { sentence }
    const within = !limits || (si >= limits.min && si <= limits.max)
    return within ? { value: si } : { sentence: `${quoted(written)} is out of bounds.` }
  }
  return { read, optional: false }
}

const when: Field = {
  optional: false,
  read: (written) => {
    const at = typeof written === 'string' && WHEN.test(written) ? Date.parse(written) : Number.NaN
    return at >= 0 ? { value: at } : { sentence: `${quoted(written)} is not a point in time.` }
  },
}
const within = (fields: Fields): Field => ({
  optional: false,
  read: (written) => {
    const read = isObject(written) ? readFields(written, fields) : null
    if (read?.ok) return { value: read.value }
    return { sentence: read?.problems[0]?.sentence ?? `${quoted(written)} does not say who logged it.` }
  },
})
const listOf = (field: Field, longest: number): Field => ({
  optional: false,
  read: (written) => {
    if (!Array.isArray(written) || written.length > longest) return { sentence: `This is not a list up to ${longest}.` }
    const all = written.map(field.read)
    const fault = all.find((fit) => 'sentence' in fit)
    return fault ?? { value: all.map((fit) => ('value' in fit ? fit.value : null)) }
  },
})

const ID = pattern(/^[a-z0-9][a-z0-9-]{0,39}$/, 'an id')
const temp = quantity('temperature', READING_LIMITS)
const sensor = pattern(SENSOR, 'a probe')
const person = text(40, 1)
const entryId = pattern(ENTRY_ID, 'the id of an entry')
const timecode = pattern(TIMECODE, 'a timecode')
const camera = text(20, 1)
const version = { version: whole(1, 1e6), what: text(600, 1) }

const COMMON: Fields = {
  id: entryId,
  at: when,
  by: within({ device: pattern(DEVICE, 'a device'), person: maybe(person) }),
  kind: fits(() => true, ''),
}
const MOVE: Fields = {
  id: text(60, 1),
  setup: maybe(when),
  start: when,
  end: when,
  people: listOf(person, 40),
  cameras: maybe(listOf(camera, 12)),
}
const CHANGE: Fields = {
  cook: ID,
  core: maybe(quantity('temperature', CORE_LIMITS)),
  cooker: maybe(quantity('temperature', COOKER_LIMITS)),
  rest: maybe(quantity('duration', LATE_LIMITS)),
}
type OwnFields<E> = E extends Entry ? Record<Exclude<keyof E, 'id' | 'at' | 'by' | 'kind'>, Field> : never
const FIELDS: { readonly [K in Entry['kind']]: OwnFields<Extract<Entry, { kind: K }>> } = {
  reading: { cook: ID, sensor, temp, hand: maybe(fits((one) => typeof one === 'boolean', 'true or false')) },
  mark: { cook: ID, moment: word(MOMENT_IDS) },
  'call-answer': { call: text(120, 1), answer: word(ANSWERS), to: maybe(person) },
  take: {
    shot: maybe(ID),
    slate: maybe(text(20, 1)),
    take: whole(1, 999),
    camera,
    roll: maybe(word(ROLLS)),
    timecode: maybe(timecode),
    verdict: maybe(word(VERDICTS)),
    note: maybe(text(600)),
  },
  note: {
    text: text(2000, 1),
    shot: maybe(ID),
    cook: maybe(ID),
    state: maybe(word(FOOD_STATES)),
    photo: maybe(text(80, 1)),
  },
  'plan-change': { ...version, moves: maybe(listOf(within(MOVE), 200)), gone: maybe(listOf(text(60, 1), 60)) },
  'what-if-adopted': { ...version, change: maybe(within(CHANGE)) },
  'probe-check': {
    cook: ID,
    sensor,
    found: word(FOUND),
    from: maybe(when),
    reads: maybe(temp),
    should: maybe(temp),
  },
  'camera-clock': { camera, timecode },
  'hold-start': { cook: ID, in: word(HELD_IN), temp: maybe(temp) },
  'hold-end': { cook: ID },
  'shot-state': { shot: ID, state: word(CALL_STATES), why: maybe(text(300)) },
  late: { for: quantity('duration', LATE_LIMITS), who: maybe(person) },
  fire: { cook: ID, did: word(FIRE_WORK), fuel: maybe(quantity('mass')) },
  food: { cook: ID, is: word(FOOD_PLACES) },
  meal: { is: word(MEAL_ENDS), people: maybe(listOf(person, 40)) },
  correction: {
    corrects: entryId,
    void: maybe(fits((one) => one === true, 'true')),
    put: maybe(fits(isObject, 'a list of fields with what is right')),
    why: maybe(text(300)),
  },
}

/** It did not happen, or what should have stood there: exactly one of the two. */
export function correctionFault({ void: gone, put }: Document): string | null {
  if ((gone === undefined) === (put === undefined))
    return 'A correction either says "void": true or says in "put" what should have stood there. Write one of the two.'
  const fixed = isObject(put) && FIXED.find((key) => key in put)
  return fixed ? `"${fixed}" of an entry is never corrected. Void the entry and log another.` : null
}
