import { z } from 'zod'
import { BORDER, type BorderCode } from '@/lib/data/border-error'
import { ENTRY } from '@/lib/log/entry'
import { SHOOT } from '@/lib/plan/shoot'
import { doorPaths, SECURITY_SCHEMES } from './describe-door'

const ref = (name: string) => ({ $ref: `#/components/schemas/${name}` })
const body = (name: string) => ({ required: true, content: { 'application/json': { schema: ref(name) } } })
const json = (description: string, schema: object) => ({ description, content: { 'application/json': { schema } } })
const id = { name: 'id', in: 'path', required: true, schema: { type: 'string' } }

/** Any of these may meet any request. */
const FROM_ALL = ['foreign-host', 'signed-out', 'may-not', 'too-often'] as const
/** The refusals of one operation, from the border's table, grouped by status. */
function refusals(...codes: readonly BorderCode[]) {
  const byStatus: Record<string, { description: string; content: object }> = {}
  for (const code of [...FROM_ALL, ...codes] as const) {
    const [status, sentence] = BORDER[code]
    const earlier = byStatus[status]?.description
    const description = `${earlier ? `${earlier} ` : ''}${code}: ${sentence}`
    byStatus[status] = { description, content: { 'application/problem+json': { schema: ref('Problem') } } }
  }
  return byStatus
}

const WRITES = ['foreign-origin', 'broken-json', 'write-id-missing', 'too-large'] as const

function paths() {
  const saved = json('The shoot as it stands', ref('SavedShoot'))
  return {
    '/api/shoots': {
      get: { summary: 'All shoots', responses: { 200: json('The list', ref('ShootList')), ...refusals() } },
      post: {
        summary: 'Save a new shoot',
        requestBody: body('NewShoot'),
        responses: { 201: saved, ...refusals(...WRITES, 'invalid', 'disk-refused') },
      },
    },
    '/api/shoots/{id}': {
      parameters: [id],
      get: { summary: 'One shoot', responses: { 200: saved, ...refusals('not-found') } },
      put: {
        summary: 'Save a changed shoot as its next version',
        requestBody: body('ChangedShoot'),
        responses: { 200: saved, ...refusals(...WRITES, 'not-found', 'stale', 'invalid', 'disk-refused') },
      },
    },
    '/api/shoots/{id}/undo': {
      parameters: [id],
      post: {
        summary: 'Take the last change back, as a new version',
        requestBody: body('Undo'),
        responses: { 200: saved, ...refusals(...WRITES, 'not-found', 'nothing-to-undo', 'disk-refused') },
      },
    },
    '/api/shoots/{id}/export': {
      parameters: [id],
      get: { summary: 'The shoot file', responses: { 200: json('The file', ref('Shoot')), ...refusals('not-found') } },
    },
    '/api/shoots/{id}/archive': {
      parameters: [id],
      get: {
        summary: 'The whole shoot as one zip: every version, the log, the forecasts of the day and the photographs',
        responses: {
          200: { description: 'The archive', content: { 'application/zip': {} } },
          ...refusals('not-found'),
        },
      },
    },
    '/api/archives/{upload}': {
      parameters: [
        { name: 'upload', in: 'path', required: true, schema: { type: 'string', pattern: '^[A-Za-z0-9_-]{8,64}$' } },
      ],
      put: {
        summary:
          'Add a piece of an archive, at most 8 MB, that begins "from" bytes into it; sent twice it is there once',
        parameters: [{ name: 'from', in: 'query', required: true, schema: { type: 'integer', minimum: 0 } }],
        requestBody: { required: true, content: { 'application/octet-stream': {} } },
        responses: {
          200: json('How many bytes are here', { type: 'object', properties: { here: { type: 'integer' } } }),
          ...refusals('archive-invalid', 'too-large', 'disk-refused'),
        },
      },
    },
    '/api/archives': {
      post: {
        summary: 'Take in the archive whose pieces are here, under its own id, or as a copy beside a shoot that has it',
        requestBody: {
          required: true,
          content: {
            'application/json': {
              schema: {
                type: 'object',
                properties: { upload: { type: 'string' }, copy: { type: 'boolean' } },
                required: ['upload'],
              },
            },
          },
        },
        responses: {
          200: json('It was here before', ref('TakenIn')),
          201: json('It is here now', ref('TakenIn')),
          ...refusals('archive-invalid', 'already-here', 'disk-refused'),
        },
      },
    },
    '/api/shoots/{id}/samples': {
      parameters: [id],
      get: {
        summary: 'Joint moments and probe of every cook as bytes, for trying a day out in a browser',
        responses: {
          200: {
            description: 'As `lib/day/forecast-bytes.ts` packs them',
            content: { 'application/octet-stream': {} },
          },
          ...refusals('not-found', 'invalid'),
        },
      },
    },
    '/api/shoots/{id}/calls.ics': {
      parameters: [
        id,
        { name: 'person', in: 'query', required: false, schema: { type: 'string' } },
        {
          name: 'key',
          in: 'query',
          required: false,
          schema: { type: 'string' },
          description: 'The calendar key of a crew link, in place of a session; opens that person’s calls only.',
        },
      ],
      get: {
        summary: 'The calls as a calendar (iCalendar), of the whole shoot or of one person',
        responses: {
          200: { description: 'The calendar', content: { 'text/calendar': { schema: { type: 'string' } } } },
          ...refusals('not-found', 'invalid'),
        },
      },
    },
    ...logPaths(),
    ...doorPaths(refusals),
    '/api/forecast': {
      post: {
        summary: 'Forecast a shoot file; nothing is saved',
        requestBody: body('Forecast'),
        responses: {
          200: json('What the command `forecast` prints', { type: 'object' }),
          ...refusals('foreign-origin', 'broken-json', 'too-large', 'invalid'),
        },
      },
    },
    '/api/cut-face': {
      post: {
        summary: "The slice of the same cook at another heat, beside the plan's; nothing is saved",
        requestBody: body('AnotherHeat'),
        responses: {
          200: json('What the plan page shows', { type: 'object' }),
          ...refusals('foreign-origin', 'broken-json', 'too-large', 'invalid'),
        },
      },
    },
    '/api/what-if': {
      post: {
        summary: 'A late crew, other weather or a hold beside the plan; nothing is saved',
        requestBody: body('WhatIf'),
        responses: {
          200: json('Title, lines beside the plan, and the document to adopt', { type: 'object' }),
          ...refusals('foreign-origin', 'broken-json', 'too-large', 'invalid'),
        },
      },
    },
    '/api/healthz': { get: { summary: 'Is it up', responses: { 200: json('It is', { type: 'object' }) } } },
  }
}

const since = {
  name: 'since',
  in: 'query',
  required: false,
  schema: { type: 'integer', minimum: 0 },
  description: 'The position after which lines are wanted; none for all.',
}

function logPaths() {
  const ndjson = { 'application/x-ndjson': { schema: ref('LogLine') } }
  const events = { 'text/event-stream': { schema: { type: 'string' } } }
  const resume = { name: 'Last-Event-ID', in: 'header', required: false, schema: { type: 'integer', minimum: 0 } }
  return {
    '/api/shoots/{id}/log': {
      parameters: [id],
      get: {
        summary: 'The slate log, a line an entry; the header Log-Position holds the position of the last line',
        parameters: [since],
        responses: { 200: { description: 'The log', content: ndjson }, ...refusals('not-found', 'log-invalid') },
      },
      post: {
        summary:
          'Add entries to the slate log, late or out of order as they may be; the same entry sent twice is kept once',
        requestBody: body('Sending'),
        responses: {
          200: json('What became of each entry, by its id', ref('Kept')),
          ...refusals('foreign-origin', 'broken-json', 'too-large', 'not-found', 'log-invalid', 'disk-refused'),
        },
      },
    },
    '/api/shoots/{id}/photos': {
      parameters: [id],
      post: {
        summary:
          'Keep a photograph of the set, at most 1.5 MB, under the SHA-256 of its bytes; a note names it in "photo"',
        requestBody: { required: true, content: { 'image/jpeg': {}, 'image/webp': {} } },
        responses: {
          200: json('It was kept before', ref('KeptPhoto')),
          201: json('It is kept', ref('KeptPhoto')),
          ...refusals('foreign-origin', 'too-large', 'photo-unknown', 'not-found', 'disk-refused'),
        },
      },
    },
    '/api/shoots/{id}/photos/{name}': {
      parameters: [id, { name: 'name', in: 'path', required: true, schema: { type: 'string' } }],
      get: {
        summary: 'A photograph; it never changes under its name',
        responses: {
          200: { description: 'The picture', content: { 'image/jpeg': {}, 'image/webp': {} } },
          ...refusals('not-found', 'photo-not-found'),
        },
      },
    },
    '/api/shoots/{id}/set-day': {
      parameters: [id],
      get: {
        summary: 'All that a screen of the set needs to open, and to forecast alone when it is cut off',
        responses: { 200: json('The day; times are milliseconds', ref('SetDay')), ...refusals('not-found', 'invalid') },
      },
    },
    '/api/shoots/{id}/events': {
      parameters: [id],
      get: {
        summary:
          'The slate log as it grows: events "entry" whose id is the position and whose data is a line of the log. Beside them "forecast" ({ id, at, forecast }: the latest on connecting, then each that is applied) and "day" ({ version }: a new version of the shoot was saved); these have no id, and their times are milliseconds',
        parameters: [since, resume],
        responses: { 200: { description: 'The events', content: events }, ...refusals('not-found', 'log-invalid') },
      },
    },
  }
}

const text = { type: 'string' }
const count = { type: 'integer', minimum: 1 }
const object = (properties: Record<string, object>, ...optional: readonly string[]) => ({
  type: 'object',
  properties,
  required: Object.keys(properties).filter((key) => !optional.includes(key)),
})
const WRITE_ID = {
  type: 'string',
  pattern: '^[A-Za-z0-9_-]{8,64}$',
  description: 'Made by the sender; the same one twice writes once.',
}

function schemas() {
  const shoot = z.toJSONSchema(SHOOT, { io: 'input', unrepresentable: 'any' })
  const fault = object({ pointer: text, sentence: text })
  const entry = z.toJSONSchema(ENTRY, { io: 'input', unrepresentable: 'any' })
  const instant = { type: 'string', format: 'date-time' }
  const atMs = { type: 'integer', description: 'Milliseconds since 1970' }
  const became = { enum: ['kept', 'known', 'refused'] }
  const kept = object(
    { id: text, became, position: count, problems: { type: 'array', items: fault } },
    'position',
    'problems',
  )
  const listed = object({
    id: text,
    title: text,
    date: { type: 'string', format: 'date' },
    version: count,
    changedAt: { type: 'integer' },
  })
  return {
    Shoot: shoot,
    NewShoot: object({ writeId: WRITE_ID, document: ref('Shoot') }),
    ChangedShoot: object({ writeId: WRITE_ID, document: ref('Shoot'), baseVersion: count }, 'baseVersion'),
    Undo: object({ writeId: WRITE_ID }),
    Forecast: object({ document: ref('Shoot') }),
    WhatIf: object({ document: ref('Shoot'), change: { type: 'string', examples: ['late-30', 'colder', 'hold-box'] } }),
    AnotherHeat: object({ document: ref('Shoot'), at: { type: 'string', examples: ['110 °C', '230 °F'] } }),
    SavedShoot: object({
      id: text,
      version: count,
      document: ref('Shoot'),
      canUndo: { type: 'boolean' },
      savedAt: count,
    }),
    Entry: entry,
    LogLine: { allOf: [ref('Entry')], description: 'The entry with "received" and "sent", the receipt of the server.' },
    Sending: object({ sent: instant, entries: { type: 'array', items: ref('Entry'), minItems: 1, maxItems: 500 } }),
    Kept: object({ received: instant, entries: { type: 'array', items: kept } }),
    TakenIn: object({ id: text, became: { enum: ['kept', 'known'] } }),
    KeptPhoto: object({ name: text, became: { enum: ['kept', 'known'] } }),
    SetDay: object({
      version: count,
      day: { type: 'object', description: 'People, cooks, calls, shots and meals as they were announced' },
      forecast: {
        anyOf: [object({ id: text, at: atMs, forecast: { type: 'object' } }), { type: 'null' }],
        description: 'The forecast applied last',
      },
      people: { type: 'array', items: object({ id: text, name: text, roles: { type: 'array', items: text } }, 'name') },
      plan: object({ document: ref('Shoot'), layout: { type: 'object' } }),
      now: atMs,
    }),
    ShootList: object({ shoots: { type: 'array', items: listed } }),
    Problem: object(
      {
        type: text,
        title: text,
        status: { type: 'integer' },
        detail: text,
        code: { enum: [...Object.keys(BORDER), 'broken'] },
        problems: { type: 'array', items: fault },
        version: count,
      },
      'version',
    ),
  }
}

/** The HTTP border as an OpenAPI 3.1 document, from the schema that reads shoot files and the table of refusals. */
export const describeApi = () => ({
  openapi: '3.1.0',
  info: {
    title: 'Emberslate',
    version: '1',
    description: 'Every quantity is a string with its unit: "3.2 kg", "325 °F".',
  },
  paths: paths(),
  security: [{}, { session: [] }, { deviceKey: [] }],
  components: { schemas: schemas(), securitySchemes: SECURITY_SCHEMES },
})
