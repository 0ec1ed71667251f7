import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, describe, expect, it } from 'vitest'
import { databaseUrl } from '../../../lib/data/env'
import { applyMigrations, migrationNames } from '../../../lib/data/migrate'
import { openServer } from '../../../lib/data/server/open-server'
import { testServer } from '../../migrated-database'
import { createDatabase, startPostgres } from '../../postgres'

const open: pg.Client[] = []
afterAll(() => Promise.all(open.map((client) => client.end())))
async function connect(url: string) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  open.push(client)
  return {
    run: (script: string) => client.query(script),
    rows: async (statement: string, values: readonly unknown[] = []) =>
      (await client.query(statement, [...values])).rows,
  }
}
const refusal = (work: Promise<unknown>) =>
  work.then(
    () => 'none',
    (fault: Error) => fault.message,
  )

describe('a start on a PostgreSQL', () => {
  it('with others at the same moment brings an empty database up to date once', async () => {
    const url = await createDatabase(testServer())
    const all = await Promise.all(Array.from({ length: 4 }, () => openServer(url)))
    expect(all.flatMap(({ notes }) => notes)).toHaveLength(1)
    expect(await all[0]?.prisma.shoot.count()).toBe(0)
    await Promise.all(all.map((one) => one.close()))
    const rows = await (await connect(url)).rows('SELECT migration_name AS name FROM _prisma_migrations ORDER BY 1')
    expect(rows.map(({ name }) => name)).toEqual(migrationNames())
  })
  it('on the database of a newer Emberslate is refused, and changes nothing', async () => {
    const url = await createDatabase(testServer())
    const db = await connect(url)
    await applyMigrations(db, 'It')
    await db.run(`INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at)
      VALUES ('x', 'x', '29990101000000_later', now())`)
    const said = await refusal(openServer(url))
    expect(said).toMatch(/newer Emberslate .*29990101000000_later.* Start the newer version/)
    expect(await db.rows('SELECT * FROM _prisma_migrations')).toHaveLength(migrationNames().length + 1)
  })
  it('that cannot be had says in one sentence why, and not the password', async () => {
    const server = new URL(testServer())
    const at = (change: (url: URL) => void) => {
      const url = new URL(server)
      url.password = 'secret'
      change(url)
      return refusal(openServer(url.href, 0))
    }
    const said = [
      await at((url) => {
        url.pathname = '/none_such'
      }),
      await at((url) => {
        url.port = '1'
      }),
    ]
    expect(said[0]).toBe(
      `The database none_such at ${server.host} is not there. Make it (createdb), or correct its name in DATABASE_URL.`,
    )
    expect(said[1]).toMatch(/at 127.0.0.1:1 does not answer \(ECONNREFUSED\). Start PostgreSQL there/)
    expect(said.join()).not.toContain('secret')
  })
  it('waits for a server that starts beside it', async () => {
    const beside = await startPostgres({ synced: false })
    try {
      await beside.halt()
      const opening = openServer(beside.url, 60_000)
      await beside.start()
      await (await opening).close()
    } finally {
      await beside.stop()
    }
  })
})

describe('a change of the tables', () => {
  it('that breaks off leaves nothing of itself, and is done whole when it is tried again', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-migrations-'))
    cpSync('prisma/migrations', folder, { recursive: true })
    mkdirSync(path.join(folder, '29990101000000_later'))
    const write = (script: string) => writeFileSync(path.join(folder, '29990101000000_later', 'migration.sql'), script)
    const db = await connect(await createDatabase(testServer()))
    write('CREATE TABLE "Later" (id int); SELECT 1 / 0;')
    expect(await refusal(applyMigrations(db, 'It', folder))).toContain('division by zero')
    expect(await db.rows(`SELECT to_regclass('"Later"') AS there`)).toEqual([{ there: null }])
    write('CREATE TABLE "Later" (id int);')
    expect(await applyMigrations(db, 'It', folder)).toEqual(['29990101000000_later'])
    expect(await applyMigrations(db, 'It', folder)).toEqual([])
  })
})

describe('DATABASE_URL', () => {
  const read = (said: string) => {
    process.env.DATABASE_URL = said
    try {
      return databaseUrl()
    } catch (fault) {
      return (fault as Error).message
    } finally {
      process.env.DATABASE_URL = ''
    }
  }
  it('is the address of a PostgreSQL or nothing; anything else is refused without being repeated', () => {
    expect([read(''), read(' postgres://a@b/c '), read('postgresql:///c?host=/run/postgresql')]).toEqual([
      null,
      'postgres://a@b/c',
      'postgresql:///c?host=/run/postgresql',
    ])
    for (const wrong of ['mysql://a:secret@b/c', 'b:5432/secret', 'postgres://a:secret@b', 'file:secret.db'])
      expect(read(wrong)).toMatch(/^DATABASE_URL is no address of a PostgreSQL(?!.*secret)/)
  })
})
