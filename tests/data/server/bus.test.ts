import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { endedNow, untilEnded } from '../../../lib/data/door/session-ends'
import { LogListeners, listen } from '../../../lib/data/listeners'
import { lastPosition, loadLog } from '../../../lib/data/load-log'
import { type Bus, bus, ServerBus } from '../../../lib/data/server/bus'
import { instant } from '../../../lib/units'
import { reading } from '../../unit/log/lines'
import { closeAll, freshDatabase } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
let shoot: string
/** Another process, as far as the server can tell. */
let other: Bus
beforeEach(async () => {
  const url = await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
  other = new ServerBus(url, async () => (await database()).prisma)
})
afterEach(async () => {
  await other.close()
  await closeAll()
})

const append = (minute: number) => appendLog(shoot, instant(Date.now()), [reading(minute, 20).document])
/** Positions as they are heard, in this process and in the other. */
async function heardBoth() {
  const [here, there]: [number[], { position: number; at: number }[]] = [[], []]
  await listen(shoot, (lines) => here.push(...lines.map(({ position }) => position)))
  const elsewhere = new LogListeners(other, { last: lastPosition, after: loadLog })
  await elsewhere.listen(shoot, (lines) =>
    there.push(...lines.map(({ position }) => ({ position, at: performance.now() }))),
  )
  return { here, there, positions: () => there.map(({ position }) => position) }
}
const upTo = (count: number) => Array.from({ length: count }, (_, i) => i + 1)
const WITHIN = { timeout: 5000, interval: 10 }
/** Ends all connections that listen. */
const cut = async () => {
  const { prisma } = await database()
  return prisma.$executeRaw`SELECT pg_terminate_backend(pid) FROM pg_stat_activity
    WHERE application_name = 'emberslate listens' AND datname = current_database()`
}
const listening = async (count: number) => {
  const { prisma } = await database()
  await vi.waitFor(async () => {
    const [row] = await prisma.$queryRaw<{ count: number }[]>`SELECT count(*)::int AS count FROM pg_stat_activity
      WHERE application_name = 'emberslate listens' AND datname = current_database()
        AND state = 'idle' AND (query LIKE 'LISTEN%' OR query LIKE '%advisory%')`
    expect(row?.count).toBe(count)
  }, WITHIN)
}

describe('processes on one PostgreSQL', () => {
  it('hear every line that one of them kept, once and in order', async () => {
    const { here, there, positions } = await heardBoth()
    await listening(2)
    const kept: number[] = []
    for (let i = 0; i < 60; i++) {
      await append(i)
      kept.push(performance.now())
    }
    await vi.waitFor(() => expect([here.length, there.length]).toEqual([60, 60]), WITHIN)
    expect([here, positions()]).toEqual([upTo(60), upTo(60)])
    const after = there.map(({ position, at }) => at - (kept[position - 1] as number)).sort((a, b) => a - b)
    console.log(
      `heard in the other process after the answer: p50 ${after[30]?.toFixed(1)} ms, p99 ${after[59]?.toFixed(1)} ms`,
    )
    expect(after[59]).toBeLessThan(1000)
  })
  it('miss nothing that was kept while their connection was cut', async () => {
    const { here, positions } = await heardBoth()
    await listening(2)
    for (let i = 0; i < 20; i++) {
      if (i === 5 || i === 12) await cut()
      await append(i)
    }
    await vi.waitFor(() => expect([here, positions()]).toEqual([upTo(20), upTo(20)]), WITHIN)
  })
  it('hear nothing of a transaction that did not come to its end', async () => {
    const heard: number[] = []
    other.hear('version', ({ version }) => heard.push(version))
    await listening(1)
    const { prisma } = await database()
    const undone = prisma.$transaction(async (tx) => {
      await bus().notify({ on: 'version', shoot, version: 7 }, tx)
      throw new Error('undone')
    })
    await expect(undone).rejects.toThrow('undone')
    await bus().notify({ on: 'version', shoot, version: 8 })
    await vi.waitFor(() => expect(heard).toEqual([8]), WITHIN)
  })
  it('end the streams of a session that ended in another, and ask again where they may have missed it', async () => {
    const gone = new AbortController()
    let good = true
    const told = untilEnded('told', gone.signal, async () => true)
    const asked = untilEnded('asked', gone.signal, async () => good)
    other.hear('again', () => {})
    await listening(2)
    await other.notify({ on: 'session-ended', id: 'told' })
    await vi.waitFor(() => expect([told.aborted, asked.aborted]).toEqual([true, false]), WITHIN)
    good = false
    await cut()
    await vi.waitFor(() => expect(asked.aborted).toBe(true), WITHIN)
    await endedNow('told')
  })
  it('have one that leads, and another within 5 s of its end', async () => {
    const said: string[] = []
    bus().lead(shoot, (leads) => said.push(`here ${leads}`))
    await vi.waitFor(() => expect(said).toEqual(['here true']), WITHIN)
    const stop = other.lead(shoot, (leads) => said.push(`there ${leads}`))
    await closeAll()
    await vi.waitFor(() => expect(said.at(-1)).toBe('there true'), WITHIN)
    stop()
    bus().lead(shoot, (leads) => said.push(`again ${leads}`))
    await vi.waitFor(() => expect(said.at(-1)).toBe('again true'), WITHIN)
    expect(said).toEqual(['here true', 'here false', 'there true', 'again true'])
  })
})
