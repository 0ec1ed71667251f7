import { type ChildProcess, spawn } from 'node:child_process'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { database } from '../../../lib/data/client'
import { askFar } from '../../../lib/data/server/jobs'
import { closeQueue, forget, KINDS, type Queue, queue, queueOf } from '../../../lib/data/server/jobs-queue'
import { TAKING, takeJobs, type Works } from '../../../lib/data/server/jobs-taken'
import { workId } from '../../../lib/data/server/work-id'
import { closeAll, freshDatabase } from '../real-database'

type Work = (asked: unknown) => Promise<unknown>
const shared = globalThis as { emberslateWaiting?: unknown; emberslateQueue?: Promise<Queue> | undefined }
/** What waits is remembered by each process; from here on this one asks as another would. */
const asAnotherProcess = () => {
  shared.emberslateWaiting = undefined
}

const leavers: (() => Promise<void>)[] = []
async function takes(work: Work): Promise<() => Promise<void>> {
  const leave = await takeJobs(Object.fromEntries(KINDS.map((kind) => [kind, work])) as Works)
  leavers.push(leave)
  return leave
}
const ask = (asked: unknown, whose = 'A') => askFar({ kind: 'forecast', asked, whose })
const rows = async (statement: string) => (await (await queue()).pool.query(statement)).rows
const asked = async (count: number) => {
  while ((await rows('SELECT id FROM pgboss.job')).length < count) await new Promise((wake) => setTimeout(wake, 5))
}

/** Work that waits until it is let go. */
function held() {
  let go = () => {}
  const gone = new Promise<void>((resolve) => {
    go = resolve
  })
  return { go, gone }
}

beforeEach(async () => {
  asAnotherProcess()
  await freshDatabase()
})
afterEach(async () => {
  await Promise.all(leavers.splice(0).map((leave) => leave()))
  await closeQueue()
  await closeAll()
})

describe('a job', () => {
  it('is worked out once, whichever processes ask it and take it, and what was told is found again', async () => {
    let worked = 0
    const { go, gone } = held()
    const echo: Work = async (what) => {
      worked++
      await gone
      return { of: what, curve: Float32Array.of(1, 2.5), by: new Map([['hero', undefined]]) }
    }
    await takes(echo)
    await takes(echo)
    const one = ask({ shoot: 'lamb' })
    asAnotherProcess()
    const same = ask({ shoot: 'lamb' })
    await asked(1)
    go()
    const told = { of: { shoot: 'lamb' }, curve: Float32Array.of(1, 2.5), by: new Map([['hero', undefined]]) }
    expect([await one, await same, await ask({ shoot: 'lamb' })]).toEqual([{ told }, { told }, { told }])
    expect(worked).toBe(1)
    expect(await rows('SELECT id FROM pgboss.job')).toEqual([])
  })

  it('that comes to grief tells its fault to whoever asked, and is tried anew only when it is asked anew', async () => {
    let worked = 0
    await takes(async () => {
      worked++
      throw new Error(`No layout, ${worked}`)
    })
    await expect(ask('what')).rejects.toThrow('No layout, 1')
    await expect(ask('what')).rejects.toThrow('No layout, 2')
    expect(worked).toBe(2)
  })

  it('is left to whoever asked where nobody takes jobs', async () => {
    expect(await ask('what')).toBeNull()
  })

  it('whose process cannot work it out is told as a fault after three tries', async () => {
    let worked = 0
    await takes(async () => {
      worked++
      return undefined
    })
    await expect(ask('what')).rejects.toThrow('Three tries')
    expect(worked).toBe(3)
  })

  it('of a process that is killed at it is given to another', async () => {
    const child = spawn(process.execPath, ['--conditions=react-server', '--import=tsx', 'tests/data/jobs-taker.ts'], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    try {
      await says(child, 'takes')
      const answer = ask('what')
      await says(child, 'took')
      await takes(async (what) => ({ again: what }))
      child.kill('SIGKILL')
      const killed = performance.now()
      expect(await answer).toEqual({ told: { again: 'what' } })
      expect(performance.now() - killed).toBeLessThan(10_000)
    } finally {
      child.kill('SIGKILL')
    }
  })

  it('whose process loses its line to the database is answered all the same, and so is the next', async () => {
    const { go, gone } = held()
    await takes(async (what) => {
      await gone
      return what
    })
    const first = ask('first')
    while ((await rows("SELECT id FROM pgboss.job WHERE state = 'active'")).length === 0);
    const cut = await rows(`
      SELECT pg_terminate_backend(pid) AS ended FROM pg_stat_activity
      WHERE datname = current_database() AND pid <> pg_backend_pid()`)
    expect(cut.length).toBeGreaterThan(2)
    go()
    expect(await first).toEqual({ told: 'first' })
    while ((await rows(TAKERS)).length === 0);
    expect(await ask('next')).toEqual({ told: 'next' })
  })

  it('at work when its process is asked to leave comes to its end; the next is not taken', async () => {
    const { go, gone } = held()
    const leave = await takes(async (what) => {
      await gone
      return what
    })
    const first = ask('first')
    while ((await rows("SELECT id FROM pgboss.job WHERE state = 'active'")).length === 0);
    const left = leave()
    const next = ask('next')
    go()
    await left
    expect([await first, await next]).toEqual([{ told: 'first' }, null])
  })

  it('is forgotten after an hour, and not before', async () => {
    await takes(async () => 'told')
    await ask('old')
    await ask('new')
    const { pool } = await queue()
    const { serialize } = await import('node:v8')
    const old = workId(queueOf('forecast'), serialize('old'))
    await pool.query(`UPDATE "Work" SET at = now() - interval '61 minutes' WHERE id = $1`, [old])
    await pool.query(`UPDATE "Work" SET at = now() - interval '59 minutes' WHERE id <> $1`, [old])
    await forget(pool)
    expect((await rows('SELECT id FROM "Work"')).map(({ id }) => id)).toEqual([
      workId(queueOf('forecast'), serialize('new')),
    ])
  })
})

describe('many jobs', () => {
  it('of one shoot keep no other waiting: whoever asks once is answered after one or two of them', async () => {
    const order: unknown[] = []
    const { go, gone } = held()
    await takes(async (what) => {
      order.push(what)
      await gone
      return what
    })
    const a = Array.from({ length: 40 }, (_, i) => ask({ a: i }, 'A'))
    await asked(40)
    const b = ask('b', 'B')
    await asked(41)
    go()
    await Promise.all([...a, b])
    expect(order).toHaveLength(41)
    expect(order.indexOf('b')).toBeLessThanOrEqual(1)
  })

  it('of one shoot go on while another asks again and again: they take turns', async () => {
    const order: string[] = []
    const { go, gone } = held()
    await takes(async (what) => {
      order.push(typeof what === 'string' ? 'B' : 'A')
      await gone
      return what
    })
    const a = Array.from({ length: 10 }, (_, i) => ask({ a: i }, 'A'))
    await asked(10)
    go()
    let asking = true
    const b = (async () => {
      for (let i = 0; asking && i < 100; i++) await Promise.all([ask(`b${i}`, 'B'), ask(`c${i}`, 'B')])
    })()
    await Promise.all(a)
    asking = false
    await b
    const untilLast = order.slice(0, order.lastIndexOf('A'))
    expect(untilLast.filter((one) => one === 'B').length).toBeLessThanOrEqual(12)
  })
})

describe('the queue', () => {
  it('is made once by processes that start at the same time', async () => {
    await database()
    const all = await Promise.all(
      [1, 2, 3, 4].map(() => {
        shared.emberslateQueue = undefined
        return queue()
      }),
    )
    await Promise.all(all.map(({ boss }) => boss.stop({ graceful: false, close: false })))
    const names = await all[0]?.boss.getQueues()
    expect(names?.map(({ name }) => name).sort()).toEqual(KINDS.map(queueOf).sort())
  })
})

/** Connections that take jobs in this database. */
const TAKERS = `SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND classid = ${TAKING}
  AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`

const says = (child: ChildProcess, word: string) =>
  new Promise<void>((resolve, reject) => {
    let said = ''
    child.stdout?.on('data', (bytes) => {
      said += bytes
      if (said.includes(word)) resolve()
    })
    child.once('exit', () => reject(new Error(`It ended before it said ${word}: ${said}`)))
  })
