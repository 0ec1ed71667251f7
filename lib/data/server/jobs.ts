import 'server-only'
import { createHash } from 'node:crypto'
import { deserialize, serialize } from 'node:v8'
import type { Pool, PoolClient } from 'pg'
import { hear } from './bus'
import { type Kind, noteFault, on, type Queue, queue, queueOf, tellAll, together } from './jobs-queue'
import { TAKING } from './jobs-taken'
import { workId } from './work-id'

export interface Asking {
  readonly kind: Kind
  readonly asked: unknown
  /** Shoots wait for each other in turn; this says whose work it is. */
  readonly whose: string
}
/** Null where nobody works, or the database is away: whoever asked does the work. */
export type Answered = { readonly told: unknown } | null

/** What the work itself came to grief over; asked again it would again. */
export class WorkFault extends Error {}

/** A notice may be lost with the line that it comes on. */
const LOOK_MS = 1000

/** Questions of this process that wait, by their id: whoever asks the same meanwhile waits with it. */
interface Waiting {
  readonly answer: Promise<Buffer | null>
  readonly bell: Bell
}
const shared = globalThis as { emberslateWaiting?: Map<string, Waiting> }

/** Has the question worked out by any process that takes jobs, and waits for what it tells. */
export async function askFar({ kind, asked, whose }: Asking): Promise<Answered> {
  const bytes = serialize(asked)
  const id = workId(queueOf(kind), bytes)
  const known = waiting().get(id)
  const told = await (known ?? asking(id, { kind, bytes, whose })).answer
  return told && { told: deserialize(told) }
}

function asking(id: string, question: Question): Waiting {
  const bell = new Bell()
  const answer = answerTo(id, question, bell).finally(() => waiting().delete(id))
  const one = { answer, bell }
  waiting().set(id, one)
  return one
}

function waiting(): Map<string, Waiting> {
  if (shared.emberslateWaiting) return shared.emberslateWaiting
  const all = new Map<string, Waiting>()
  shared.emberslateWaiting = all
  hear('work-done', ({ id }) => all.get(id)?.bell.ring())
  hear('again', () => {
    for (const { bell } of all.values()) bell.ring()
  })
  return all
}

async function answerTo(id: string, question: Question, bell: Bell): Promise<Buffer | null> {
  try {
    const queued = await queue()
    let told: Buffer | null | undefined = await put(queued, id, question)
    while (told === undefined) {
      await bell.heard(LOOK_MS)
      told = await toldOf(queued.pool, queueOf(question.kind), id)
    }
    return told
  } catch (fault) {
    if (fault instanceof WorkFault) throw fault
    noteFault(fault)
    return null
  }
}

interface Question {
  readonly kind: Kind
  readonly bytes: Buffer
  readonly whose: string
}
const PUT = 'INSERT INTO "Work" (id, asked) VALUES ($1, $2) ON CONFLICT (id) DO UPDATE SET fault = NULL RETURNING told'

/** Puts the question where those who work find it; what is known already is told at once. */
const put = ({ boss, pool }: Queue, id: string, { kind, bytes, whose }: Question): Promise<Buffer | undefined> =>
  together(pool, async (client) => {
    const { rows } = await client.query(PUT, [id, bytes])
    const { told } = rows[0] as { told: Buffer | null }
    if (told) return told
    const lane = createHash('sha256').update(whose).digest('hex').slice(0, 16)
    const priority = -(await placeFor(client, queueOf(kind), lane))
    // Where the same job waits already, this adds none.
    await boss.send(queueOf(kind), { whose: lane }, { id, priority, db: on(client) })
    await tellAll(client, { on: 'work-asked' })
    return undefined
  })

/**
 * Behind each job of the same shoot, and not before what is at work now: each shoot has its turn, however much another
 * asks, and what waits long is not overtaken for ever. (Fair queueing with the place of the job in service as the clock.)
 */
async function placeFor(client: PoolClient, name: string, lane: string): Promise<number> {
  // Two who ask at once would both see the same place free.
  await client.query('SELECT pg_advisory_xact_lock($1, hashtext($2))', [PLACES, name])
  const { rows } = await client.query(PLACE, [name, lane])
  return rows[0].place
}
const PLACES = 7_310_003
const PLACE = `
  SELECT greatest(
    coalesce(max(-priority) FILTER (WHERE data->>'whose' = $2) + 1, 0),
    coalesce(min(-priority), 0)
  )::int AS place
  FROM pgboss.job WHERE name = $1 AND state < 'completed'`

/** What was told; undefined while it is worked on, null where nobody will. */
async function toldOf(pool: Pool, name: string, id: string): Promise<Buffer | undefined | null> {
  const { rows } = await pool.query(TOLD, [name, id, TAKING])
  const row = rows[0] as { told: Buffer | null; fault: string | null; going: boolean } | undefined
  if (row && row.fault !== null) throw new WorkFault(row.fault)
  return row?.told ?? (row?.going ? undefined : null)
}
const TOLD = `
  SELECT told, fault, CASE WHEN told IS NULL THEN
    EXISTS (SELECT FROM pgboss.job WHERE name = $1 AND id = $2::uuid) AND EXISTS (
      SELECT FROM pg_locks WHERE locktype = 'advisory' AND classid = $3
      AND database = (SELECT oid FROM pg_database WHERE datname = current_database())
    ) END AS going
  FROM "Work" WHERE id = $2::text`

/** Rung before anybody listens it is heard all the same. */
class Bell {
  #rung = false
  #heard = () => {}

  ring() {
    this.#rung = true
    this.#heard()
  }
  async heard(withinMs: number): Promise<void> {
    if (!this.#rung)
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, withinMs)
        this.#heard = () => {
          clearTimeout(timer)
          resolve()
        }
      })
    this.#rung = false
  }
}
