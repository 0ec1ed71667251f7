import 'server-only'
import { deserialize, serialize } from 'node:v8'
import { Client } from 'pg'
import { hear } from './bus'
import { KINDS, type Kind, noteFault, on, type Queue, queue, queueOf, tellAll, together } from './jobs-queue'

/** How each kind is worked out here; undefined where this process cannot. What it throws is told to whoever asked. */
export type Works = Readonly<Record<Kind, (asked: unknown) => Promise<unknown>>>

/** Locks that end with a process: held while it takes jobs at all, and while it works on one. */
export const TAKING = 7_310_004
const WORKING = 7_310_005

/** A notice may be lost, and a job may come back without one. */
const LOOK_MS = 1000
/** What is at work when the process is to end may take so long. */
const LEAVE_MS = 10_000
const LINE = { keepAlive: true, connectionTimeoutMillis: 5000, application_name: 'emberslate-jobs' }

/** Takes jobs, one of each kind at a time, until it is told to leave. */
export async function takeJobs(works: Works): Promise<() => Promise<void>> {
  const taker = new Taker(works, await queue())
  await taker.look()
  return () => taker.leave()
}

class Taker {
  readonly #works: Works
  readonly #queue: Queue
  readonly #running = new Map<Kind, { readonly id: string; readonly ended: Promise<void> }>()
  readonly #stops: (() => void)[]
  /** Its locks say that this process lives; whoever finds one free gives the job to another. */
  #line: Client | null = null
  #looking: Promise<void> | null = null
  #again = false
  #leaving = false

  constructor(works: Works, queue: Queue) {
    this.#works = works
    this.#queue = queue
    const timer = setInterval(() => void this.#lookAfterAll(), LOOK_MS)
    const wake = () => void this.look()
    this.#stops = [() => clearInterval(timer), hear('work-asked', wake), hear('again', wake)]
  }

  /** Takes what waits, as far as a thread is free for it. One look at a time; asked meanwhile, it looks again. */
  look(): Promise<void> {
    this.#again = true
    this.#looking ??= this.#lookOn().finally(() => {
      this.#looking = null
    })
    return this.#looking
  }
  async #lookOn() {
    while (this.#again && !this.#leaving) {
      this.#again = false
      try {
        await this.#takeAll(await this.#alive())
      } catch (fault) {
        this.#giveUpLine(fault)
      }
    }
  }
  async #takeAll(line: Client) {
    const free = KINDS.filter((kind) => !this.#running.has(kind))
    if (free.length === 0) return
    const { rows } = await line.query(WAITING, [free.map(queueOf)])
    const names = rows.map(({ name }) => name)
    for (const kind of free.filter((one) => names.includes(queueOf(one)))) await this.#take(line, kind)
  }
  /** Lock and job in one: nobody sees a job at work whose lock is free. */
  async #take(line: Client, kind: Kind) {
    const { boss } = this.#queue
    await line.query('BEGIN')
    const [job] = await boss.fetch(queueOf(kind), { db: on(line) })
    if (job) await line.query('SELECT pg_try_advisory_lock($1, hashtext($2))', [WORKING, job.id])
    await line.query('COMMIT')
    if (!job) return
    const ended = this.#work(kind, job.id).finally(async () => {
      this.#running.delete(kind)
      await line.query('SELECT pg_advisory_unlock($1, hashtext($2))', [WORKING, job.id]).catch(() => undefined)
      void this.look()
    })
    this.#running.set(kind, { id: job.id, ended })
  }

  async #work(kind: Kind, id: string): Promise<void> {
    try {
      const { rows } = await this.#queue.pool.query('SELECT asked FROM "Work" WHERE id = $1', [id])
      const [row] = rows as { asked: Buffer }[]
      const made = row ? await this.#worked(kind, row.asked) : NOTHING
      if (made) await this.#tell(kind, id, made)
      else await this.#giveBack(kind, [id])
    } catch (fault) {
      // The lock goes free, and another takes the job.
      noteFault(fault)
    }
  }
  /** Null where it cannot be worked out in this process. */
  async #worked(kind: Kind, asked: Buffer): Promise<Made | null> {
    try {
      const told = await this.#works[kind](deserialize(asked))
      return told === undefined ? null : { told: serialize(told), fault: null }
    } catch (fault) {
      return { told: null, fault: fault instanceof Error ? fault.message : String(fault) }
    }
  }
  #tell(kind: Kind, id: string, { told, fault }: Made): Promise<unknown> {
    const { boss, pool } = this.#queue
    return together(pool, async (client) => {
      await client.query('UPDATE "Work" SET told = $2, fault = $3 WHERE id = $1', [id, told, fault])
      await boss.deleteJob(queueOf(kind), id, { db: on(client) })
      await tellAll(client, { on: 'work-done', id })
    })
  }

  /** Jobs go back whose process has ended; what ended too many is told as a fault. */
  async #lookAfterAll() {
    if (this.#leaving) return
    try {
      const { pool } = this.#queue
      const { rows } = await pool.query(ORPHANS, [KINDS.map(queueOf), WORKING])
      for (const kind of KINDS) {
        const ids = rows.filter(({ name }) => name === queueOf(kind)).map(({ id }) => id)
        if (ids.length > 0) await this.#giveBack(kind, ids)
      }
      const spoilt = await pool.query(SPOILT, [KINDS.map(queueOf), SPOILT_WORDS])
      for (const { id } of spoilt.rows) await tellAll(pool, { on: 'work-done', id })
    } catch (fault) {
      noteFault(fault)
    }
    await this.look()
  }
  async #giveBack(kind: Kind, ids: string[]) {
    await this.#queue.boss.fail(queueOf(kind), ids)
    await tellAll(this.#queue.pool, { on: 'work-asked' })
  }

  async #alive(): Promise<Client> {
    if (this.#line) return this.#line
    const line = new Client({ ...LINE, connectionString: this.#queue.url })
    line.on('error', (fault) => {
      if (this.#line === line) this.#giveUpLine(fault)
    })
    try {
      await line.connect()
      await line.query('SELECT pg_advisory_lock_shared($1, 0)', [TAKING])
    } catch (fault) {
      void line.end().catch(() => undefined)
      throw fault
    }
    this.#line = line
    return line
  }
  #giveUpLine(fault: unknown) {
    noteFault(fault)
    this.#line?.end().catch(() => undefined)
    this.#line = null
  }

  /** Takes nothing more, lets what runs come to its end for a while, and gives the rest back. */
  async leave(): Promise<void> {
    this.#leaving = true
    for (const stop of this.#stops) stop()
    await this.#looking
    const running = [...this.#running]
    let timer: NodeJS.Timeout | undefined
    const late = new Promise((resolve) => {
      timer = setTimeout(resolve, LEAVE_MS)
    })
    await Promise.race([Promise.all(running.map(([, { ended }]) => ended)), late])
    clearTimeout(timer)
    for (const [kind, { id }] of this.#running) await this.#giveBack(kind, [id]).catch(() => undefined)
    await this.#line?.end().catch(() => undefined)
  }
}

interface Made {
  readonly told: Buffer | null
  readonly fault: string | null
}
/** What was asked is gone: nobody waits for it. */
const NOTHING: Made = { told: null, fault: null }
const SPOILT_WORDS = 'Three tries at this came to nothing.'

const WAITING = `
  SELECT DISTINCT name FROM pgboss.job WHERE name = ANY($1) AND state < 'active' AND start_after <= now()`
/** At work, but the lock of whoever works is free: that process is no more. */
const ORPHANS = `
  SELECT name, id FROM pgboss.job job WHERE name = ANY($1) AND state = 'active' AND NOT EXISTS (
    SELECT FROM pg_locks WHERE locktype = 'advisory' AND classid = $2
    AND objid::bigint = hashtext(job.id::text)::bigint & 4294967295
    AND database = (SELECT oid FROM pg_database WHERE datname = current_database())
  )`
const SPOILT = `
  WITH spoilt AS (DELETE FROM pgboss.job WHERE name = ANY($1) AND state = 'failed' RETURNING id)
  UPDATE "Work" SET fault = $2 FROM spoilt WHERE "Work".id = spoilt.id::text RETURNING "Work".id`
