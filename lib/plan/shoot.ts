import { z } from 'zod'
import { COOKER_KINDS } from '../model/cook'
import { MOMENT_IDS } from '../model/moment-ids'
import {
  type Celsius,
  type Dimension,
  type Frac,
  type Kilograms,
  type Metres,
  type MetresPerSecond,
  readQuantity,
  type Seconds,
} from '../units'

/** A quantity as a person writes it ("4.1 kg"), parsed to SI. */
const quantity = <Q extends number>(dimension: Dimension) =>
  z.unknown().transform((text, ctx): Q => {
    const read = readQuantity(text, dimension)
    if (read.ok) return read.si as Q
    ctx.addIssue({ code: 'custom', message: read.sentence })
    return z.NEVER
  })
const temperature = quantity<Celsius>('temperature')
const duration = quantity<Seconds>('duration')
const length = quantity<Metres>('length')
const mass = quantity<Kilograms>('mass')

const id = z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/)
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/)

const until = z.union([
  z.strictObject({ core: temperature }),
  z.strictObject({ after: duration }),
  z.strictObject({ cooker: temperature }),
])
export const STAGE = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('preheat'), at: temperature, cold: z.boolean().optional() }),
  z.strictObject({
    do: z.literal('roast'),
    at: temperature,
    until,
    max: duration.optional(),
    turn: z.union([z.strictObject({ after: duration }), z.strictObject({ at: z.literal('half') })]).optional(),
    probe: z
      .strictObject({ at: z.union([z.enum(['start', 'turn']), duration]), lead: temperature.optional() })
      .optional(),
  }),
  z.strictObject({ do: z.literal('sear'), at: temperature, until, max: duration.optional() }),
  z.strictObject({ do: z.literal('hold'), at: temperature, until, max: duration.optional() }),
  z.strictObject({ do: z.literal('rest'), until, max: duration.optional() }),
])

export const DONENESS = ['rare', 'medium-rare', 'medium', 'medium-well', 'well-done'] as const
export const LIGHTS = ['daylight', 'golden-hour', 'golden-hour-morning', 'twilight', 'night'] as const
export const FOOD_STATES = ['raw', 'seasoned', 'cooking', 'hot', 'rested', 'sliced'] as const

const COOK = z.strictObject({
  id,
  roast: z.strictObject({
    cut: z.string(),
    mass,
    start: temperature,
    thickness: length.optional(),
    width: length.optional(),
    length: length.optional(),
  }),
  cooker: z.strictObject({ kind: z.enum(COOKER_KINDS) }),
  stages: z.array(STAGE).min(1),
  target: z.strictObject({ doneness: z.enum(DONENESS) }).optional(),
})

const moment = z.enum(MOMENT_IDS)
/** A clock time, or a thermal moment of the shot's or task's cook. */
const edge = z.union([moment, clock])
const SHOT = z.strictObject({
  id,
  title: z.string().min(1).max(120),
  cook: id.optional(),
  at: z.strictObject({ moment, before: duration.optional(), after: duration.optional() }).optional(),
  between: z.tuple([edge, edge]).optional(),
  from: edge.optional(),
  to: edge.optional(),
  locked: z.boolean().optional(),
  free: z.boolean().optional(),
  light: z.enum(LIGHTS).optional(),
  setup: duration.optional(),
  roll: duration.optional(),
  needs: z.array(z.string()).optional(),
  camera: z.string().optional(),
  place: z.string().optional(),
  lid: z.enum(['open', 'shut', 'any']).optional(),
  priority: z.enum(['must', 'should', 'could']).optional(),
  state: z.enum(FOOD_STATES).optional(),
  after: z.array(id).optional(),
})
const TASK = z.strictObject({
  id,
  title: z.string().min(1).max(120),
  cook: id.optional(),
  from: edge,
  to: edge,
  needs: z.array(z.string()).min(1),
})
const DAY = z.strictObject({
  call: clock.optional(),
  wrap: clock.optional(),
  slice: z.union([z.strictObject({ at: clock }), z.strictObject({ in: z.enum(LIGHTS) })]).optional(),
  turnaround: duration.optional(),
  meal: duration.optional(),
})
/** The author's words on the card; what is absent is written from the plan (`lib/card`). */
const CARD = z.strictObject({
  title: z.string().max(120).optional(),
  intro: z.string().max(600).optional(),
  serves: z.number().int().min(1).max(200).optional(),
  ingredients: z
    .array(z.strictObject({ what: z.string().max(120), much: z.string().max(60) }))
    .max(40)
    .optional(),
  /** `override` is the author's reason for printing a contradicted sentence as their own statement. */
  steps: z
    .array(z.strictObject({ id, text: z.string().max(600), override: z.string().max(300).optional() }))
    .max(40)
    .optional(),
})

export const SHOOT = z.strictObject({
  emberslate: z.literal(1),
  seed: z.number().int().min(0).max(0xffffffff).optional(),
  title: z.string().min(1).max(120),
  date: z.iso.date(),
  zone: z.string(),
  place: z.strictObject({
    lat: z.number().min(-90).max(90),
    lon: z.number().min(-180).max(180),
    altitude: length.optional(),
    name: z.string().max(120).optional(),
  }),
  authority: z.string().optional(),
  weather: z
    .strictObject({
      air: temperature.optional(),
      wind: quantity<MetresPerSecond>('speed').optional(),
      humidity: quantity<Frac>('share').optional(),
    })
    .optional(),
  cooks: z.array(COOK).min(1),
  day: DAY.optional(),
  people: z
    .array(z.strictObject({ id, roles: z.array(z.string()).min(1), name: z.string().max(80).optional() }))
    .optional(),
  cameras: z.array(z.strictObject({ id: z.string().min(1).max(20) })).optional(),
  tasks: z.array(TASK).optional(),
  shots: z.array(SHOT).optional(),
  card: CARD.optional(),
})

/** The parsed shoot: SI numbers where the document has quantities. */
export type Shoot = z.output<typeof SHOOT>
export type Cook = Shoot['cooks'][number]
export type Shot = z.output<typeof SHOT>
export type Task = z.output<typeof TASK>
/** The document as a person writes it, kept to the letter. */
export type ShootDocument = Record<string, unknown>
