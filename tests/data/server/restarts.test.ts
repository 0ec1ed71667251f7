import { readFileSync } from 'node:fs'
import { setTimeout } from 'node:timers/promises'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { isAway } from '../../../lib/data/away'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { LogListeners, listen } from '../../../lib/data/listeners'
import { lastPosition, loadLog } from '../../../lib/data/load-log'
import { ServerBus } from '../../../lib/data/server/bus'
import { SERVER } from '../../../lib/data/server/server-sql'
import { instant } from '../../../lib/units'
import { type OwnPostgres, startPostgres } from '../../postgres'
import { reading } from '../../unit/log/lines'
import { closeAll, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const WRITES = 80
const EACH_MS = 30
let postgres: OwnPostgres
let shoot: string
beforeAll(async () => {
  postgres = await startPostgres({ synced: false })
  await reopen(await postgres.createDatabase())
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
})
afterAll(async () => {
  await closeAll()
  await postgres.stop()
})

it('a connection that breaks in the middle of a transaction fails it as the database being away, and ends no process', async () => {
  const { prisma } = await database()
  const broken = SERVER.allOrNone(async (sql) => {
    const [own] = await sql<{ pid: number }>('SELECT pg_backend_pid() AS pid')
    await prisma.$queryRaw`SELECT pg_terminate_backend(${own?.pid}::int)`
    // Nothing is asked on it when it breaks: only whoever listens to the connection hears of it.
    await vi.waitFor(async () => {
      const left = await prisma.$queryRaw<unknown[]>`SELECT FROM pg_stat_activity WHERE pid = ${own?.pid}::int`
      expect(left).toHaveLength(0)
    }, 5000)
    return sql('SELECT 1')
  })
  expect(isAway(await broken.catch((fault) => fault))).toBe(true)
})

it('a database that crashes under writes keeps what it acknowledged, once each, and all who listen have it within 5 s', async () => {
  const other = new ServerBus(process.env.DATABASE_URL ?? '', async () => (await database()).prisma)
  const [here, there]: [string[], string[]] = [[], []]
  await listen(shoot, (lines) => here.push(...lines.map(({ document }) => String(document.id))))
  const elsewhere = new LogListeners(other, { last: lastPosition, after: loadLog })
  await elsewhere.listen(shoot, (lines) => there.push(...lines.map(({ document }) => String(document.id))))
  let away = 0
  const write = async (document: ReturnType<typeof reading>['document']): Promise<void> => {
    for (;;)
      try {
        await appendLog(shoot, instant(Date.now()), [document])
        return
      } catch (fault) {
        if (!isAway(fault)) throw fault
        away++
        await setTimeout(200)
      }
  }
  const writes: Promise<void>[] = []
  const ids: string[] = []
  for (let i = 0; i < WRITES; i++) {
    const { document } = reading(i, 20)
    ids.push(String(document.id))
    writes.push(write(document))
    if (i === 20) await postgres.halt('immediate')
    if (i === 50) await postgres.start()
    await setTimeout(EACH_MS)
  }
  const back = Date.now()
  await Promise.all(writes)
  const kept = (await loadLog(shoot, 0)).map(({ document }) => String(document.id))
  await vi.waitFor(() => expect([here, there]).toEqual([kept, kept]), { timeout: 5000, interval: 20 })
  console.log(`${away} writes met no database; all heard ${Date.now() - back} ms after the last was sent`)
  expect(away).toBeGreaterThan(0)
  expect([...kept].sort()).toEqual([...ids].sort())
  await other.close()
})
