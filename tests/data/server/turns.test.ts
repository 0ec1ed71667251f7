import { readFileSync } from 'node:fs'
import pg from 'pg'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { POST } from '../../../app/api/shoots/[id]/log/route'
import { appendLog } from '../../../lib/data/append-log'
import { isAway } from '../../../lib/data/away'
import { createShoot } from '../../../lib/data/create-shoot'
import type { KeptLine } from '../../../lib/data/folder/log-journal'
import { writeLines } from '../../../lib/data/folder/put-back-log'
import { loadLog } from '../../../lib/data/load-log'
import { SERVER } from '../../../lib/data/server/server-sql'
import { inTurn } from '../../../lib/data/turns'
import { instant } from '../../../lib/units'
import { type OwnPostgres, startPostgres } from '../../postgres'
import { reading } from '../../unit/log/lines'
import { closeAll, freshDatabase, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const SENT = instant(1_800_000_000_000)
const line = (position: number): KeptLine => ({
  position,
  received: SENT,
  sent: SENT,
  document: reading(position, position).document as KeptLine['document'],
})
const positions = async () => (await loadLog(shoot, 0)).map(({ position }) => position)

let url: string
let shoot: string
beforeEach(async () => {
  url = await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
})
afterEach(closeAll)

describe('a turn on a server', () => {
  it('waits for another process that writes to the same shoot, and for none that writes to another', async () => {
    const other = new pg.Client({ connectionString: url })
    await other.connect()
    await other.query('BEGIN')
    await other.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [`shoot ${shoot}`])
    const mine = appendLog(shoot, SENT, [reading(9, 9).document])
    const elsewhere = await createShoot(DOCUMENT, 'write-000002')
    expect(elsewhere.ok).toBe(true)
    await expect.poll(async () => (await other.query('SELECT 1 FROM pg_locks WHERE NOT granted')).rowCount).toBe(1)
    await other.query(
      `INSERT INTO "LogLine" ("shootId", "position", "entryId", "document", "received", "sent")
       VALUES ($1, 1, 'theirs', '{}', now(), now())`,
      [shoot],
    )
    await other.query('COMMIT')
    await other.end()
    expect((await mine).entries).toMatchObject([{ became: 'kept', position: 2 }])
  })
  it('whose connection breaks is not acknowledged and keeps nothing; sent again it is kept once', async () => {
    const broken = inTurn(shoot, async (tx) => {
      await writeLines(tx, shoot, [line(1)])
      await tx.$executeRaw`SELECT pg_terminate_backend(pg_backend_pid())`
    })
    expect(
      await broken.then(
        () => 'acknowledged',
        (fault) => isAway(fault),
      ),
    ).toBe(true)
    expect(await positions()).toEqual([])
    const { document } = line(1)
    const again = () => appendLog(shoot, SENT, [document])
    expect([(await again()).entries[0]?.became, (await again()).entries[0]?.became]).toEqual(['kept', 'known'])
    expect(await positions()).toEqual([1])
  })
  it('of a kept file whose connection breaks ends neither the process nor the next one', async () => {
    const pidOf = 'SELECT pg_backend_pid() AS pid'
    const broken = SERVER.allOrNone(async (sql) => {
      const [own] = await sql<{ readonly pid: number }>(pidOf)
      await SERVER.write('SELECT pg_terminate_backend($1, 5000)', [own?.pid])
      await sql(pidOf)
    })
    await expect(broken).rejects.toSatisfy((fault) => isAway(fault))
    expect(await SERVER.allOrNone((sql) => sql('SELECT 1 AS one'))).toEqual([{ one: 1 }])
  })
  it('that fails lets the next one in', async () => {
    const failed = inTurn(shoot, async (tx) => {
      await writeLines(tx, shoot, [line(1), line(1)])
    })
    await expect(failed).rejects.toThrow()
    expect((await appendLog(shoot, SENT, [line(1).document])).entries).toMatchObject([{ became: 'kept', position: 1 }])
  })
})

describe('a server that goes away', () => {
  let own: OwnPostgres | undefined
  afterEach(() => own?.stop())

  it('is a 503 with a time to come back, and goes on by itself when it is there again', async () => {
    await closeAll()
    own = await startPostgres({ synced: false })
    await reopen(await own.createDatabase())
    await createShoot(DOCUMENT, 'write-000001')
    const post = (at: number) =>
      POST(
        new Request(`http://127.0.0.1:3000/api/shoots/${shoot}/log`, {
          method: 'POST',
          body: JSON.stringify({ sent: '2027-05-15T12:00:00Z', entries: [reading(at, at).document] }),
        }),
        { params: Promise.resolve({ id: shoot }) },
      )
    expect((await post(1)).status).toBe(200)
    await own.halt('immediate')
    const away = await post(2)
    expect([away.status, away.headers.get('retry-after'), (await away.json()).code]).toEqual([
      503,
      '2',
      'database-away',
    ])
    await own.start()
    expect((await post(2)).status).toBe(200)
    expect(await positions()).toEqual([1, 2])
  })
})
