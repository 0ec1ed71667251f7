import { describe, expect, test } from 'vitest'
import { valueAt } from '../../../lib/plan/edit'
import { shootJsonSchema } from '../../../lib/plan/json-schema'
import { FIXTURES, fixtureText } from './shoots'

type Schema = {
  readonly type?: string
  readonly properties?: Record<string, Schema>
  readonly items?: Schema
  readonly prefixItems?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly pattern?: string
  readonly required?: readonly string[]
  readonly additionalProperties?: boolean
}
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Only as much of JSON Schema as ours uses: where a value breaks it, "pointer: keyword". */
function breaks(schema: Schema, value: unknown, at = ''): string[] {
  if (schema.oneOf)
    return schema.oneOf.filter((each) => breaks(each, value).length === 0).length === 1 ? [] : [`${at}: oneOf`]
  if (schema.const !== undefined && value !== schema.const) return [`${at}: const`]
  if (schema.enum && !schema.enum.includes(value)) return [`${at}: enum`]
  if (schema.type === 'string' && (typeof value !== 'string' || !new RegExp(schema.pattern ?? '', 'u').test(value)))
    return [`${at}: string`]
  if ((schema.type === 'number' || schema.type === 'integer') && typeof value !== 'number') return [`${at}: number`]
  if (schema.type === 'array') {
    if (!Array.isArray(value)) return [`${at}: array`]
    return value.flatMap((each, i) => breaks(schema.prefixItems?.[i] ?? schema.items ?? {}, each, `${at}/${i}`))
  }
  if (schema.type !== 'object') return []
  if (!isObject(value)) return [`${at}: object`]
  const missing = (schema.required ?? []).filter((key) => !(key in value)).map((key) => `${at}/${key}: required`)
  return [
    ...missing,
    ...Object.entries(value).flatMap(([key, each]) => {
      const known = schema.properties?.[key]
      return known ? breaks(known, each, `${at}/${key}`) : [`${at}/${key}: unknown`]
    }),
  ]
}

const schema = shootJsonSchema() as unknown as Schema

describe('shootJsonSchema', () => {
  test.each(FIXTURES)('%s satisfies it', (name) => expect(breaks(schema, JSON.parse(fixtureText(name)))).toEqual([]))
  test('no object in it takes unknown keys', () => {
    const open = (each: unknown, at: string): string[] =>
      isObject(each) || Array.isArray(each)
        ? [
            ...(isObject(each) && each.type === 'object' && each.additionalProperties !== false ? [at] : []),
            ...Object.entries(each).flatMap(([key, inner]) => open(inner, `${at}/${key}`)),
          ]
        : []
    expect(open(schema, '')).toEqual([])
  })
  test('a bare number is no quantity, and the required keys are those of the shoot file', () => {
    expect(schema.required).toEqual(['emberslate', 'title', 'date', 'zone', 'place', 'cooks'])
    const mass = valueAt(schema, '/properties/cooks/items/properties/roast/properties/mass') as Schema
    expect(breaks(mass, 3.2)).toHaveLength(1)
    expect(breaks(mass, '3.2')).toHaveLength(1)
    expect(breaks(mass, '3.2 kg')).toEqual([])
  })
})
