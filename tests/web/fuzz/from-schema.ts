import { sample, stringMatching } from 'fast-check'
import type { Draw } from './draw'

/** What of JSON Schema the API's description uses. */
export interface Schema {
  readonly $ref?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly examples?: readonly unknown[]
  readonly oneOf?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
  readonly allOf?: readonly Schema[]
  readonly type?: string | readonly string[]
  readonly format?: string
  readonly pattern?: string
  readonly minLength?: number
  readonly maxLength?: number
  readonly minimum?: number
  readonly maximum?: number
  readonly minItems?: number
  readonly maxItems?: number
  readonly items?: Schema
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
}
export type Schemas = Readonly<Record<string, Schema>>

const DEEPEST = 8
const LONGEST = 60
const WORDS = ['Smoke', 'Lamb', 'wide of the cook', 'Ember 4', 'éclat', '肉', 'x']

/** A value that the schema allows, as far as a schema can say so. */
export function valueFrom(schema: Schema, schemas: Schemas, draw: Draw, depth = 0): unknown {
  if (schema.$ref) return valueFrom(schemas[schema.$ref.split('/').at(-1) ?? ''] ?? {}, schemas, draw, depth)
  if (schema.const !== undefined) return schema.const
  if (schema.enum) return draw.one(schema.enum)
  const among = schema.oneOf ?? schema.anyOf ?? schema.allOf
  if (among) return valueFrom(draw.one(among), schemas, draw, depth)
  const type = typeof schema.type === 'string' ? schema.type : draw.one(schema.type ?? ['null'])
  if (type === 'object') return objectFrom(schema, schemas, draw, depth)
  if (type === 'array') {
    const least = schema.minItems ?? 0
    const length = Math.min(schema.maxItems ?? 3, least + (depth > DEEPEST ? 0 : draw.below(3)))
    return Array.from({ length }, () => valueFrom(schema.items ?? {}, schemas, draw, depth + 1))
  }
  if (type === 'string') return textFrom(schema, draw)
  if (type === 'integer' || type === 'number') return numberFrom(schema, type, draw)
  return type === 'boolean' ? draw.chance(0.5) : null
}

function objectFrom({ properties = {}, required = [] }: Schema, schemas: Schemas, draw: Draw, depth: number) {
  const wanted = Object.entries(properties).filter(
    ([key]) => required.includes(key) || (depth < DEEPEST && draw.chance(0.3)),
  )
  return Object.fromEntries(wanted.map(([key, one]) => [key, valueFrom(one, schemas, draw, depth + 1)]))
}

function numberFrom({ minimum = -1000, maximum = 1000 }: Schema, type: 'integer' | 'number', draw: Draw) {
  const edge = draw.one([minimum, maximum, minimum + draw.uniform() * (maximum - minimum)])
  return type === 'integer' ? Math.round(edge) : edge
}

const matching = new Map<string, ReturnType<typeof stringMatching>>()
function textFrom({ examples, format, pattern, minLength = 0, maxLength = LONGEST }: Schema, draw: Draw): string {
  if (examples) return String(draw.one(examples))
  if (format === 'date') return draw.one(['2027-05-15', '2026-11-27', '2024-02-29'])
  if (format === 'date-time') return draw.one(['2026-11-27T12:00:00Z', '2027-05-15T17:12:30.250+02:00'])
  if (pattern) {
    if (!matching.has(pattern)) matching.set(pattern, stringMatching(new RegExp(pattern)))
    return String(sample(matching.get(pattern) as never, { seed: draw.below(2 ** 31), numRuns: 1 })[0])
  }
  const word = draw.one(WORDS)
  return word.padEnd(minLength, 'x').slice(0, maxLength)
}
