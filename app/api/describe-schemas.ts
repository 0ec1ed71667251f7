import { z } from 'zod'
import { BORDER } from '@/lib/data/border-error'
import { ENTRY } from '@/lib/log/entry'
import { SHOOT } from '@/lib/plan/shoot'
import { count, flag, object, ref, text, WRITE_ID } from './describe-parts'

const UPLOAD = { type: 'string', pattern: '^[A-Za-z0-9_-]{8,64}$' }
const SECRET = { type: 'string', pattern: '^[A-Za-z0-9_-]{22}$' }

/** What bodies and answers look like, from the schemas that read them. */
export function schemas() {
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
    TakeIn: object({ upload: UPLOAD, copy: flag }, 'copy'),
    SignIn: object({ passphrase: text }),
    NewPassphrase: object({ passphrase: { type: 'string', minLength: 12, maxLength: 200 }, former: text }, 'former'),
    Join: object({ code: SECRET }),
    NewLink: object({ person: text, role: { enum: ['crew', 'viewer', 'producer'] }, origin: text }, 'origin'),
    NewKey: object({ name: { type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._/-]{0,59}$' } }),
    NewLesson: object({ cook: text, name: { type: 'string', minLength: 1, maxLength: 60 } }),
    Forgotten: object({ forgotten: flag }),
    SavedShoot: object({
      id: text,
      version: count,
      document: ref('Shoot'),
      canUndo: flag,
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
        request: { type: 'string', description: 'The number under which the log of the server has it.' },
      },
      'version',
      'request',
    ),
  }
}
