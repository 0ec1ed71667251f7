import { z } from 'zod'
import { type Dimension, readQuantity } from '../units'
import { CLOCK } from './clock-text'
import { listed, nearest, quoted } from './nearest'
import { unprintable } from './printable'

/**
 * The building blocks of the shoot file's schema. Each brings its own sentences, so that no message of the schema
 * library ever reaches a person.
 */

/** Limits of what a field may hold, with the sentence for a value outside them. */
export type Bounds = {
  readonly min: number
  readonly max: number
  readonly sentence: (written: string, si: number) => string
  /** Two right ways to write it, where those of its dimension would mislead: an altitude is not in cm. */
  readonly examples?: readonly [string, string]
}

/** Begins with a number and ends with a unit; which units there are `readQuantity` knows. */
const PATTERN = '^\\s*[-−+]?\\d.*[^\\d\\s]\\s*$'
const EXAMPLES: Record<Dimension, readonly string[]> = {
  temperature: ['163 °C', '325 °F'],
  mass: ['4.1 kg', '9 lb'],
  length: ['9 cm', '3.5 in'],
  volume: ['30 ml', '2 tbsp'],
  duration: ['75 min', '2 h 30 min'],
  speed: ['3 m/s'],
  share: ['65 %'],
}

/** A quantity as a person writes it ("4.1 kg"), parsed to SI and held within bounds. */
export const quantity = <Q extends number>(dimension: Dimension, bounds?: Bounds) =>
  z
    .unknown()
    .meta({
      type: 'string',
      pattern: PATTERN,
      examples: [...EXAMPLES[dimension]],
      description: `A ${dimension}: a number with its unit.`,
    })
    .transform((text, ctx): Q => {
      const read = readQuantity(text, dimension)
      const sentence = !read.ok
        ? withExamples(read.sentence, bounds?.examples)
        : bounds && (read.si < bounds.min || read.si > bounds.max)
          ? bounds.sentence(String(text).trim(), read.si)
          : undefined
      if (read.ok && sentence === undefined) return read.si as Q
      ctx.addIssue({ code: 'custom', message: sentence ?? '' })
      return z.NEVER
    })

const withExamples = (sentence: string, examples: Bounds['examples']) =>
  examples ? sentence.replace(/Write "[^"]*" or "[^"]*"/, `Write "${examples.join('" or "')}"`) : sentence

const unknownKey = (key: string, known: readonly string[]) => {
  const meant = nearest(key, known)
  return `"${key.slice(0, 40)}" is not known here. ${meant ? `Did you mean "${meant}"?` : `Known are ${listed(known, 'and')}.`}`
}

/** An object that knows all its keys; `what` names it ("a shot"). Unknown keys come one sentence a line. */
export const record = <S extends z.core.$ZodLooseShape>(what: string, shape: S) => {
  const keys = Object.keys(shape)
  const inside = listed(
    keys.slice(0, 3).map((key) => `"${key}"`),
    'and',
  )
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(key, keys)).join('\n')
      const wrong = issue.input === undefined ? `${what} is missing here` : `${quoted(issue.input)} is not ${what}`
      return `${sentenceCase(wrong)}. Write { … } with ${inside} in it.`
    },
  })
}

/** An object with exactly one of the keys of `shape`; those of `beside` may stand with it. */
export const eitherOf = <T>(what: string, shape: Record<string, z.ZodType>, beside: Record<string, z.ZodType> = {}) =>
  record(
    what,
    Object.fromEntries(
      [...Object.entries(shape), ...Object.entries(beside)].map(([key, type]) => [key, type.optional()]),
    ),
  )
    .meta({ minProperties: 1, maxProperties: 1 + Object.keys(beside).length })
    .transform((value, ctx): T => {
      const given = Object.keys(shape).filter((key) => value[key] !== undefined)
      if (given.length === 1) return value as T
      const names = listed(Object.keys(shape).map((key) => `"${key}"`))
      const count = given.length === 0 ? 'none' : 'more than one'
      ctx.addIssue({ code: 'custom', message: `${sentenceCase(what)} holds one of ${names}; here is ${count}.` })
      return z.NEVER
    })

const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The sentence for a word outside a closed list. */
export function wrongWord(written: unknown, what: string, known: readonly string[]): string {
  if (written === undefined) return `${sentenceCase(what)} is missing here. Write ${listed(known)}.`
  const meant = typeof written === 'string' ? nearest(written, known) : undefined
  const right = meant ? `Did you mean "${meant}"?` : `Write ${listed(known)}.`
  return `${sentenceCase(quoted(written))} is not ${what}. ${right}`
}
export const word = <const W extends readonly [string, ...string[]]>(what: string, words: W) =>
  z.enum(words, { error: (issue) => wrongWord(issue.input, what, words) })

/** Free text that will be printed. */
export const text = (what: string, longest: number, shortest = 0) =>
  z
    .string({ error: (issue) => wrongText(issue.input, what) })
    // A letter and its accent typed as two characters print as one.
    .normalize('NFC')
    .min(shortest, { error: `${sentenceCase(what)} is empty. Write at least one letter.` })
    .max(longest, { error: `${sentenceCase(what)} is too long; at most ${longest} letters are printed.` })
    .superRefine((written, ctx) => {
      const sentence = unprintable(written)
      if (sentence) ctx.addIssue({ code: 'custom', message: sentence })
      else if (shortest > 0 && written.length > 0 && written.trim() === '')
        ctx.addIssue({ code: 'custom', message: `${sentenceCase(what)} is empty. Write at least one letter.` })
    })
const wrongText = (written: unknown, what: string) =>
  written === undefined
    ? `${sentenceCase(what)} is missing here. Write it in words.`
    : `${sentenceCase(quoted(written))} is not ${what}. Write it in words, in quotation marks.`

/** A short name of the machine's: small letters, digits and hyphens. */
export const id = (what: string) => {
  const rule = 'Write small letters, digits and hyphens, at most 40 ("cam-1").'
  return z
    .string({
      error: (issue) =>
        issue.input === undefined
          ? `${sentenceCase(what)} is missing here. ${rule}`
          : `${sentenceCase(quoted(issue.input))} is not ${what}. ${rule}`,
    })
    .regex(/^[a-z0-9][a-z0-9-]{0,39}$/, { error: (issue) => `${quoted(issue.input)} is not ${what}. ${rule}` })
}

export const wrongClock = (written: unknown) =>
  written === undefined
    ? 'A time of day is missing here. Write "18:30".'
    : `${sentenceCase(quoted(written))} is not a time of day. Write hours and minutes, "18:30".`
export const clock = z
  .string({ error: (issue) => wrongClock(issue.input) })
  .regex(CLOCK, { error: (issue) => wrongClock(issue.input) })

/** A list that may not grow without end. */
export const list = <T extends z.ZodType>(what: string, of: T, longest: number, shortest = 0) =>
  z
    .array(of, {
      error: (issue) =>
        issue.input === undefined
          ? `The ${what} are missing here. Write a list, [ … ].`
          : `${sentenceCase(quoted(issue.input))} is not a list of ${what}. Write [ … ].`,
    })
    .min(shortest, { error: `The list of ${what} is empty. Write at least ${shortest}.` })
    .max(longest, { error: `There are too many ${what}; at most ${longest} fit into one shoot.` })

/** A plain number between two limits; `unit` is said, not written ("degrees north"). */
export const number = (what: string, min: number, max: number, whole = false) => {
  const kind = whole ? 'a whole number' : 'a number'
  const rule = `Write ${kind} from ${min} to ${max}.`
  const fault = (issue: { input?: unknown }) =>
    issue.input === undefined
      ? `${sentenceCase(what)} is missing here. ${rule}`
      : `${sentenceCase(quoted(issue.input))} is not ${what}. ${rule}`
  const base = z.number({ error: fault }).min(min, { error: fault }).max(max, { error: fault })
  return whole ? base.int({ error: fault }) : base
}

export const yesNo = z.boolean({
  error: (issue) =>
    `${sentenceCase(quoted(issue.input))} is neither true nor false. Write true or false, without quotation marks.`,
})
