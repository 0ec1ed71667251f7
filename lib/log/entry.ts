import { z } from 'zod'
import { MOMENT_IDS } from '../model/moment-ids'
import { type Bounds, id, list, number, quantity, record, text, word, wrongWord, yesNo } from '../plan/fields'
import { listed, quoted } from '../plan/nearest'
import { FOOD_STATES } from '../plan/vocabulary'
import type { Celsius, Kilograms, Seconds } from '../units'
import {
  ANSWERS,
  CALL_STATES,
  COOKER_LIMITS,
  CORE_LIMITS,
  FIRE_WORK,
  FOOD_PLACES,
  FOUND,
  HELD_IN,
  LATE_LIMITS,
  MEAL_ENDS,
  READING_LIMITS,
  ROLLS,
  TIMECODE,
  VERDICTS,
} from './entry-words'
import { by, entryIdField, person, sensor, when } from './fields'
import { correctionFault } from './plain-entry'

/** What one line of the slate log may say (design 6.5). Lines are added, never changed; a correction is a line too. */

export type CallProgress = (typeof CALL_STATES)[number]

const READING: Bounds = {
  ...READING_LIMITS,
  sentence: (written) => `${written} is no reading of a probe. Write one from −40 °C to 700 °C, such as "46.2 °C".`,
}
const LATE: Bounds = {
  ...LATE_LIMITS,
  sentence: (written) => `${written} is too late for a day. Write a time up to 12 h, such as "20 min".`,
}
const temp = quantity<Celsius>('temperature', READING)
const cook = id('the id of a cook')
const shot = id('the id of a shot')
const wrongTimecode = (written: unknown) =>
  `${quoted(written ?? 'nothing')} is no timecode. Write hours, minutes, seconds and frames, "16:05:12:10".`
const timecode = z
  .string({ error: (issue) => wrongTimecode(issue.input) })
  .regex(TIMECODE, { error: (issue) => wrongTimecode(issue.input) })

const entry = <const K extends string, S extends z.core.$ZodLooseShape>(kind: K, what: string, shape: S) =>
  record(what, { id: entryIdField, at: when, by, kind: z.literal(kind), ...shape })

/** What a re-plan moved: shots ("shot-herbs"), tasks and meals ("meal-0"), each with its new place in the day. */
const MOVES = list(
  'moves',
  record('a move', {
    id: text('what moves', 60, 1),
    setup: when.optional(),
    start: when,
    end: when,
    people: list('people', person, 40),
    cameras: list('cameras', text('a camera', 20, 1), 12).optional(),
  }),
  200,
)

/** What a what-if changes of a cook from its time on. */
const CHANGE = record('a change of a cook', {
  cook,
  /** What the probe shall read at pull. */
  core: quantity<Celsius>('temperature', {
    ...CORE_LIMITS,
    sentence: (written) => `${written} is no core to pull at. Write one from 20 °C to 99 °C, such as "54 °C".`,
  }).optional(),
  /** What the cooker is set to. */
  cooker: quantity<Celsius>('temperature', {
    ...COOKER_LIMITS,
    sentence: (written) => `${written} is out of a cooker's reach. Write one from 40 °C to 450 °C, such as "160 °C".`,
  }).optional(),
  rest: quantity<Seconds>('duration', {
    ...LATE_LIMITS,
    sentence: (written) => `${written} is too long a rest for a day. Write up to 12 h, such as "25 min".`,
  }).optional(),
})

const KIND_SCHEMAS = [
  entry('reading', 'a reading', { cook, sensor, temp, hand: yesNo.optional() }),
  entry('mark', 'a mark', { cook, moment: word('a moment', MOMENT_IDS) }),
  entry('call-answer', 'an answer to a call', {
    /** The shot that the call is for, or the alert that was shown. */
    call: text('the call', 120, 1),
    answer: word('an answer', ANSWERS),
    to: person.optional(),
  }),
  entry('take', 'a take', {
    shot: shot.optional(),
    slate: text('the slate', 20, 1).optional(),
    take: number('the number of a take', 1, 999, true),
    camera: text('a camera', 20, 1),
    /** "start" as the camera rolls, "end" when it stops; neither: a whole take told afterwards. */
    roll: word('what the camera does', ROLLS).optional(),
    timecode: timecode.optional(),
    verdict: word('a verdict', VERDICTS).optional(),
    note: text('the note', 600).optional(),
  }),
  entry('note', 'a note', {
    text: text('the note', 2000, 1),
    shot: shot.optional(),
    cook: cook.optional(),
    state: word('a state of the food', FOOD_STATES).optional(),
    photo: text('the photograph', 80, 1).optional(),
  }),
  entry('plan-change', 'a change of the plan', {
    version: number('the version', 1, 1e6, true),
    what: text('what changed', 600, 1),
    moves: MOVES.optional(),
    /** Tasks and meals that are no more; a shot is dropped by its own entry. */
    gone: list('gone', text('what is dropped', 60, 1), 60).optional(),
  }),
  entry('what-if-adopted', 'a what-if that was adopted', {
    version: number('the version', 1, 1e6, true),
    what: text('what was adopted', 600, 1),
    change: CHANGE.optional(),
  }),
  entry('probe-check', 'a check of a probe', {
    cook,
    sensor,
    found: word('what was found', FOUND),
    /** Declared wrong, or right again, from an earlier time on. */
    from: when.optional(),
    reads: temp.optional(),
    should: temp.optional(),
  }),
  entry('camera-clock', 'the clock of a camera', { camera: text('a camera', 20, 1), timecode }),
  entry('hold-start', 'the start of a hold', {
    cook,
    in: word('a place to hold it in', HELD_IN),
    temp: temp.optional(),
  }),
  entry('hold-end', 'the end of a hold', { cook }),
  entry('shot-state', 'the state of a shot', {
    shot,
    state: word('a state', CALL_STATES),
    why: text('why', 300).optional(),
  }),
  entry('late', 'lateness', { for: quantity<Seconds>('duration', LATE), who: person.optional() }),
  entry('fire', 'work on the fire', {
    cook,
    did: word('what was done', FIRE_WORK),
    fuel: quantity<Kilograms>('mass').optional(),
  }),
  entry('food', 'where the food is', { cook, is: word('where it is', FOOD_PLACES) }),
  entry('meal', 'a meal', {
    is: word('what the meal does', MEAL_ENDS),
    people: list('people', person, 40).optional(),
  }),
  entry('correction', 'a correction', {
    corrects: entryIdField,
    /** It did not happen; or what should have stood there. Exactly one of the two. */
    void: z.literal(true, { error: 'Write true, or leave "void" out and say in "put" what is right.' }).optional(),
    put: z
      .record(z.string(), z.unknown(), { error: 'Write { … } with the fields that should have stood there.' })
      .optional(),
    why: text('why', 300).optional(),
  }).superRefine((correction, ctx) => {
    const sentence = correctionFault(correction)
    if (sentence) ctx.addIssue({ code: 'custom', path: correction.put ? ['put'] : ['void'], message: sentence })
  }),
] as const

export const KINDS: readonly string[] = KIND_SCHEMAS.map((schema) => schema.shape.kind.value)

export const ENTRY = z.discriminatedUnion('kind', KIND_SCHEMAS, {
  error: (issue) =>
    issue.code === 'invalid_union'
      ? wrongWord((issue.input as { kind?: unknown } | undefined)?.kind, 'a kind of entry', KINDS)
      : `${quoted(issue.input)} is no log entry. Write { … } with ${listed(['"id"', '"at"', '"by"', '"kind"'], 'and')} in it.`,
})

/** One thing that somebody or some device logged; SI numbers where the document has quantities. */
export type Entry = z.output<typeof ENTRY>
export type EntryOf<K extends Entry['kind']> = Extract<Entry, { readonly kind: K }>
/** The entry as it was written, kept to the letter. */
export type EntryDocument = Readonly<Record<string, unknown>>
