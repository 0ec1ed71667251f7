import { BORDER, type BorderCode } from '@/lib/data/border-error'

/** What the descriptions of the operations are made of. */
export const ref = (name: string) => ({ $ref: `#/components/schemas/${name}` })
export const body = (name: string) => ({ required: true, content: { 'application/json': { schema: ref(name) } } })
export const bytesBody = (...types: readonly string[]) => ({
  required: true,
  content: Object.fromEntries(types.map((type) => [type, { schema: { type: 'string', format: 'binary' } }])),
})
export const json = (description: string, schema: object) => ({
  description,
  content: { 'application/json': { schema } },
})
export const file = (description: string, type: string, schema: object = { type: 'string' }) => ({
  description,
  content: { [type]: { schema } },
})

export const text = { type: 'string' }
export const count = { type: 'integer', minimum: 1 }
export const flag = { type: 'boolean' }
export const object = (properties: Record<string, object>, ...optional: readonly string[]) => ({
  type: 'object',
  properties,
  required: Object.keys(properties).filter((key) => !optional.includes(key)),
})
export const inPath = (name: string, schema: object = text) => ({ name, in: 'path', required: true, schema })
export const inQuery = (name: string, schema: object = text, description?: string) => ({
  name,
  in: 'query',
  required: false,
  schema,
  ...(description ? { description } : {}),
})
/** The id of a shoot: short, in small letters and digits. */
export const shootId = (name = 'id') => inPath(name, { type: 'string', pattern: '^[a-z0-9-]{1,40}$' })
export const WRITE_ID = {
  type: 'string',
  pattern: '^[A-Za-z0-9_-]{8,64}$',
  description: 'Made by the sender; the same one twice writes once.',
}

/** Any of these may meet any request. */
const FROM_ALL = [
  'bad-address',
  'foreign-host',
  'signed-out',
  'may-not',
  'too-often',
  'too-slow',
  'database-away',
] as const
/** The refusals of one operation, from the border's table, grouped by status. */
export function refusals(...codes: readonly BorderCode[]) {
  const byStatus: Record<string, { description: string; content: object }> = {}
  for (const code of [...FROM_ALL, ...codes] as const) {
    const [status, sentence] = BORDER[code]
    const earlier = byStatus[status]?.description
    const description = `${earlier ? `${earlier} ` : ''}${code}: ${sentence}`
    byStatus[status] = { description, content: { 'application/problem+json': { schema: ref('Problem') } } }
  }
  return byStatus
}
/** Of every operation that has a JSON body. */
export const SENDS = ['foreign-origin', 'broken-json', 'too-large'] as const
export const WRITES = [...SENDS, 'write-id-missing'] as const
