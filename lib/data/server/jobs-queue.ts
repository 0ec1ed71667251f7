import 'server-only'
import type { ClientBase, Pool, PoolClient } from 'pg'
import type PgBoss from 'pg-boss'
import { isAway } from '../away'
import { database } from '../client'
import { sayFault } from '../say'
import type { Notice } from './bus'
import { CHANNEL } from './listen-line'
import { codeName } from './work-id'

/** Each kind of work has a thread of its own in a process, and so a queue of its own. */
export const KINDS = ['forecast', 'day', 'print'] as const
export type Kind = (typeof KINDS)[number]
export const queueOf = (kind: Kind) => `${kind}-${codeName()}`

export interface Queue {
  readonly boss: PgBoss
  readonly pool: Pool
  readonly url: string
}

/** A process that hangs without ending loses its job after this; one that ends, at once (`jobs-taken.ts`). */
const HUNG_S = 120
/** Three processes that end over one job are enough. */
const RETRIES = 2
const MAINTAIN_S = 15
/** Held while the queues are made; the number only has to be the same for all. */
const MAKING = 7_310_002
/** What nobody fetched, and what was told, goes after this. */
const KEPT_MIN = 60

/** That the database is away is told once, by the line that listens to it, and not each second by what waits. */
export function noteFault(fault: unknown): void {
  if (!isAway(fault)) sayFault('queue-fault', fault)
}

/** Next loads this file once per bundle; the queue is one for the process. */
const shared = globalThis as { emberslateQueue?: Promise<Queue> }

/** The queue of the server mode; made where it is not there yet, by one process if several start at once. */
export function queue(): Promise<Queue> {
  shared.emberslateQueue ??= open().catch((fault) => {
    shared.emberslateQueue = undefined
    throw fault
  })
  return shared.emberslateQueue
}

async function open(): Promise<Queue> {
  const { server } = await database()
  if (!server) throw new Error('The queue is of the server mode alone.')
  const { pool, url } = server
  const { default: Boss } = await import('pg-boss')
  const boss = new Boss({ db: pooled(pool), schedule: false, maintenanceIntervalSeconds: MAINTAIN_S })
  boss.on('error', noteFault)
  boss.on('maintenance', () => void forget(pool).catch(noteFault))
  await alone(pool, async () => {
    await boss.start()
    const rules = { retryLimit: RETRIES, retryDelay: 0, expireInSeconds: HUNG_S, retentionMinutes: KEPT_MIN }
    for (const kind of KINDS) await boss.createQueue(queueOf(kind), { name: queueOf(kind), ...rules })
  })
  return { boss, pool, url }
}

/** Two processes that make the same queues at once would wait for each other for ever. */
const alone = (pool: Pool, work: () => Promise<void>) =>
  borrowed(pool, async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [MAKING])
    await work()
    await client.query('SELECT pg_advisory_unlock($1)', [MAKING])
  })

/** Ends the queue's own doings in this process; others go on. */
export async function closeQueue(): Promise<void> {
  const open = await shared.emberslateQueue?.catch(() => undefined)
  shared.emberslateQueue = undefined
  await open?.boss.stop({ graceful: false, close: false })
}

/** What was asked long ago; whoever asks it again has it worked out again. */
export const forget = (pool: Pool) =>
  pool.query('DELETE FROM "Work" WHERE at < now() - make_interval(mins => $1::int)', [KEPT_MIN])

const deaf = () => {}
/** A connection of the pool's for `work`; one on which anything failed is not used again. */
async function borrowed<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect()
  // What breaks while nothing is asked on it would end the process; the next statement tells.
  client.on('error', deaf)
  const giveBack = (broken: boolean) => {
    client.off('error', deaf)
    client.release(broken)
  }
  try {
    const made = await work(client)
    giveBack(false)
    return made
  } catch (fault) {
    giveBack(true)
    throw fault
  }
}

/** All of `work` or nothing, and without waiting for the disk: after a crash of the database it is asked again. */
export const together = <T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> =>
  borrowed(pool, async (client) => {
    await client.query('BEGIN; SET LOCAL synchronous_commit = off')
    const made = await work(client)
    await client.query('COMMIT')
    return made
  })

/** Lets pg-boss speak on a connection of ours. */
export const on = (client: ClientBase): PgBoss.Db => ({
  executeSql: async (text, values) => ({ rows: (await client.query(text, values)).rows ?? [] }),
})
const pooled = (pool: Pool): PgBoss.Db => ({
  executeSql: (text, values) => borrowed(pool, (client) => on(client).executeSql(text, values)),
})

export const tellAll = (client: ClientBase | Pool, notice: Notice) =>
  client.query('SELECT pg_notify($1, $2)', [CHANNEL, JSON.stringify(notice)])
