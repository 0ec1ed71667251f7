import { z } from 'zod'
import { HOLD_IN, type ProbeAt, RAINS, REST_COVERS, REST_ON, REST_PLACES, type Turn, type Until } from '../model/cook'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import {
  type Celsius,
  type Frac,
  type Kilograms,
  type Metres,
  type MetresPerSecond,
  readQuantity,
  type Seconds,
} from '../units'
import * as bounds from './bounds'
import { CLIPS } from './clips'
import { CLOCK } from './clock-text'
import { COOKER } from './cooker-fields'
import { date } from './date-field'
import { clock, eitherOf, id, list, number, quantity, record, text, word, wrongWord, yesNo } from './fields'
import { RECIPE_WORDS } from './ingredients'
import { quoted } from './nearest'
import { OWN_CUT } from './own-cut'
import { CALL_SHEET, COVERAGE, RISK } from './producer'
import { PUBLISH } from './publish'
import { READY } from './ready'
import { SIDE } from './sides'
import { DONENESS, FOOD_STATES, LIGHTS } from './vocabulary'

const cookerTemp = quantity<Celsius>('temperature', bounds.COOKER_TEMP)
const stageTime = quantity<Seconds>('duration', bounds.STAGE_TIME)
const shotTime = quantity<Seconds>('duration', bounds.SHOT_TIME)
const meatLength = quantity<Metres>('length', bounds.MEAT_LENGTH)

const until = (time = bounds.STAGE_TIME) =>
  eitherOf<Until>('what ends a stage', {
    core: quantity<Celsius>('temperature', bounds.CORE_TEMP),
    after: quantity<Seconds>('duration', time),
    cooker: cookerTemp,
  })
const turn = eitherOf<Turn>('a turn', {
  after: stageTime,
  at: word('the time of a turn', ['half']),
})

const PROBE_WORDS: readonly unknown[] = ['start', 'turn']
const probeAt = z
  .unknown()
  .meta({ type: 'string', description: '"start", "turn" or a time after meat-on ("60 min").' })
  .transform((written, ctx): ProbeAt => {
    if (PROBE_WORDS.includes(written)) return written as 'start' | 'turn'
    const read = readQuantity(written, 'duration')
    if (read.ok && read.si >= 0 && read.si <= bounds.STAGE_TIME.max) return read.si as Seconds
    const rule = 'Write "start", "turn" or a time after meat-on, such as "60 min".'
    ctx.addIssue({
      code: 'custom',
      message:
        written === undefined
          ? `When the probe goes in is missing here. ${rule}`
          : `The probe cannot go in at ${quoted(written)}. ${rule}`,
    })
    return z.NEVER
  })

const DO = ['preheat', 'roast', 'sear', 'hold', 'rest'] as const
const stage = <const D extends string, S extends z.core.$ZodLooseShape>(what: D, shape: S) =>
  record(`a ${what}`, { do: z.literal(what), ...shape })
export const STAGE = z.discriminatedUnion(
  'do',
  [
    stage('preheat', { at: cookerTemp, cold: yesNo.optional() }),
    stage('roast', {
      at: cookerTemp,
      until: until(),
      max: stageTime.optional(),
      turn: turn.optional(),
      probe: record('a probe', {
        at: probeAt,
        lead: quantity<Celsius>('temperature', bounds.PROBE_LEAD).optional(),
      }).optional(),
    }),
    stage('sear', {
      at: cookerTemp,
      until: until(),
      max: stageTime.optional(),
      over: word('a heat to sear over', ['direct']).optional(),
    }),
    stage('hold', {
      at: cookerTemp.optional(),
      until: until(),
      max: stageTime.optional(),
      in: word('a place to hold it in', HOLD_IN).optional(),
    }),
    stage('rest', {
      until: until(bounds.REST_TIME),
      max: stageTime.optional(),
      on: word('something to rest it on', REST_ON).optional(),
      cover: word('a cover', REST_COVERS).optional(),
      where: word('a place to rest it', REST_PLACES).optional(),
    }),
  ],
  {
    error: (issue) =>
      issue.code === 'invalid_union'
        ? wrongWord((issue.input as { do?: unknown } | undefined)?.do, 'a stage', DO)
        : `${quoted(issue.input)} is not a stage. Write { "do": "roast", … }.`,
  },
)

const COOK = record('a cook', {
  id: id('the id of a cook'),
  roast: record('a roast', {
    cut: z.string({
      error: (issue) =>
        `${issue.input === undefined ? 'The cut is missing here.' : `${quoted(issue.input)} is not a cut.`} Write one such as "lamb-leg-bone-in".`,
    }),
    /** What `cut: "custom"` is. */
    custom: OWN_CUT.optional(),
    mass: quantity<Kilograms>('mass', bounds.ROAST_MASS),
    start: quantity<Celsius>('temperature', bounds.START_TEMP),
    thickness: meatLength.optional(),
    width: meatLength.optional(),
    length: meatLength.optional(),
    /** Bought frozen: `start` is what it has thawed to. */
    frozen: yesNo.optional(),
    pierced: yesNo.optional(),
  }),
  cooker: COOKER,
  stages: list('stages', STAGE, 12, 1),
  target: record('a target', { doneness: word('a doneness', DONENESS) }).optional(),
  ready: READY.optional(),
})

const moment = word('a moment', MOMENT_IDS)
/** A clock time, or a thermal moment of the shot's or task's cook. */
const EDGES: readonly unknown[] = MOMENT_IDS
const edge = z
  .unknown()
  .meta({ type: 'string', description: `A moment (${MOMENT_IDS.join(', ')}) or a time of day ("18:30").` })
  .transform((written, ctx): MomentId | string => {
    if (EDGES.includes(written) || (typeof written === 'string' && CLOCK.test(written))) return written as string
    const sentence = wrongWord(written, 'a moment or a time of day', MOMENT_IDS)
    ctx.addIssue({
      code: 'custom',
      message: sentence.replace(/ Write .*/, ' Write a moment such as "pull", or a time such as "18:30".'),
    })
    return z.NEVER
  })
const pair = z.tuple([edge, edge], {
  error: (issue) =>
    `${issue.input === undefined ? 'The two moments are missing here.' : 'This holds exactly two moments or times.'} Write ["meat-on", "pull"].`,
})
const needs = (least: number) => list('needs', text('a role or person', 40, 1), 20, least)

const SHOT = record('a shot', {
  id: id('the id of a shot'),
  title: text('the title', 120, 1),
  cook: id('the id of a cook').optional(),
  at: record('a place at a moment', { moment, before: shotTime.optional(), after: shotTime.optional() }).optional(),
  between: pair.optional(),
  from: edge.optional(),
  to: edge.optional(),
  locked: yesNo.optional(),
  free: yesNo.optional(),
  light: word('a light', LIGHTS).optional(),
  setup: shotTime.optional(),
  roll: shotTime.optional(),
  needs: needs(0).optional(),
  camera: text('a camera', 20, 1).optional(),
  place: text('the place', 60, 1).optional(),
  lid: word('a state of the lid', ['open', 'shut', 'any']).optional(),
  priority: word('a priority', ['must', 'should', 'could']).optional(),
  state: word('a state of the food', FOOD_STATES).optional(),
  after: list('shots before this one', id('the id of a shot'), 40).optional(),
  /** It rolls from this minute on, come what may. */
  pin: clock.optional(),
})
const TASK = record('a task', {
  id: id('the id of a task'),
  title: text('the title', 120, 1),
  cook: id('the id of a cook').optional(),
  from: edge,
  to: edge,
  /** So long after `from`. */
  delay: stageTime.optional(),
  /** It takes no longer than this, somewhere between its edges; absent, it lasts from one to the other. */
  takes: quantity<Seconds>('duration', bounds.TASK_TIME).optional(),
  /** Again and again, so far apart. */
  every: quantity<Seconds>('duration', bounds.TASK_EVERY).optional(),
  /** The cooker's lid is off for it. */
  lid: word('a state of the lid', ['open']).optional(),
  needs: needs(1),
})
type Slice = ({ readonly at: string } | { readonly in: (typeof LIGHTS)[number] }) & { readonly chance?: Frac }
/** `chance`: how sure it must be; the meat then goes on as late as that allows, and rests on until the time has come. */
const SLICE = eitherOf<Slice>(
  'the wanted slice',
  { at: clock, in: word('a light', LIGHTS) },
  { chance: quantity<Frac>('share', bounds.CHANCE) },
)
const DAY = record('a day', {
  call: clock.optional(),
  wrap: clock.optional(),
  slice: SLICE.optional(),
  turnaround: quantity<Seconds>('duration', bounds.DAY_TIME).optional(),
  meal: quantity<Seconds>('duration', bounds.SHOT_TIME).optional(),
  /** How long past `wrap` the day may run, at a price; none where it is absent. */
  overtime: quantity<Seconds>('duration', bounds.SHOT_TIME).optional(),
  /** When the crew is called on the next day: each person's rest until then is checked. */
  nextCall: clock.optional(),
})
/** The author's words on the card; what is absent is written from the plan (`lib/card`). */
const CARD = record('a card', {
  title: text('the title of the card', 120).optional(),
  intro: text('the introduction', 600).optional(),
  serves: number('a number of servings', 1, 200, true).optional(),
  ...RECIPE_WORDS,
  /** `override`: contradicted sentences that the author prints as their own statement, each with the reason. */
  steps: list(
    'steps',
    record('a step', {
      id: id('the id of a step'),
      text: text('the step', 600),
      override: list(
        'overrides',
        record('an override', { sentence: text('the sentence', 600, 1), reason: text('the reason', 300, 1) }),
        20,
      ).optional(),
    }),
    40,
  ).optional(),
})

export const SHOOT = record('a shoot', {
  emberslate: z.literal(1, {
    error: (issue) =>
      issue.input === undefined
        ? 'This is not a shoot file: its version is missing. Write "emberslate": 1.'
        : `Version ${quoted(issue.input)} of the shoot file is not known here. Write "emberslate": 1.`,
  }),
  seed: number('a seed', 0, 0xffffffff, true).optional(),
  title: text('the title', 120, 1),
  date: date(),
  zone: z.string({
    error: (issue) =>
      `${issue.input === undefined ? 'The time zone is missing here.' : `${quoted(issue.input)} is not a time zone.`} Write one such as "Europe/Dublin".`,
  }),
  place: record('a place', {
    lat: number('a latitude', -90, 90),
    lon: number('a longitude', -180, 180),
    altitude: quantity<Metres>('length', bounds.ALTITUDE).optional(),
    name: text('the name of the place', 120).optional(),
  }),
  authority: text('the authority', 40, 1).optional(),
  weather: record('the weather', {
    air: quantity<Celsius>('temperature', bounds.AIR_TEMP).optional(),
    wind: quantity<MetresPerSecond>('speed', bounds.WIND).optional(),
    humidity: quantity<Frac>('share', bounds.HUMIDITY).optional(),
    /** On the cooker; absent, it is dry. */
    rain: word('a rain', RAINS).optional(),
  }).optional(),
  cooks: list('cooks', COOK, 12, 1),
  sides: list('sides', SIDE, 12).optional(),
  day: DAY.optional(),
  people: list(
    'people',
    record('a person', {
      id: id('the id of a person'),
      roles: list('roles', text('a role', 40, 1), 12, 1),
      name: text('the name', 80).optional(),
      /** Their own shift; absent, the whole day. */
      hours: record('the hours of a person', { from: clock.optional(), to: clock.optional() }).optional(),
    }),
    40,
  ).optional(),
  cameras: list('cameras', record('a camera', { id: text('the id of a camera', 20, 1) }), 12).optional(),
  tasks: list('tasks', TASK, 60).optional(),
  shots: list('shots', SHOT, 200).optional(),
  card: CARD.optional(),
  callSheet: CALL_SHEET.optional(),
  coverage: COVERAGE.optional(),
  publish: PUBLISH.optional(),
  risk: RISK.optional(),
  clips: CLIPS.optional(),
})

/** The parsed shoot: SI numbers where the document has quantities. */
export type Shoot = z.output<typeof SHOOT>
export type Cook = Shoot['cooks'][number]
export type Shot = z.output<typeof SHOT>
export type Task = z.output<typeof TASK>
/** The document as a person writes it, kept to the letter. */
export type ShootDocument = Record<string, unknown>
