import { cpSync, mkdtempSync, openSync, readdirSync, readFileSync, readSync, rmSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { PGlite } from '@electric-sql/pglite'
import { afterEach, describe, expect, it } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { isAway } from '../../../lib/data/away'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { trimWal } from '../../../lib/data/folder/trim-wal'
import { loadLog } from '../../../lib/data/load-log'
import { loadShoot } from '../../../lib/data/load-shoot'
import { applyMigrations, migrationNames } from '../../../lib/data/migrate'
import { saveShoot } from '../../../lib/data/save-shoot'
import { instant } from '../../../lib/units'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
const LONG = 60_000
const SENT = instant(1_800_000_000_000)
const lines = Array.from({ length: 40 }, (_, i) => reading(i, 20).document)
const kept = async (shoot: string) => (await loadLog(shoot, 0)).map(({ document }) => document.id)
const aside = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('pg-unreadable-'))
afterEach(closeAll)

/** A shoot with a log, closed; and the file that this statement names. */
async function filled(statement: string) {
  const folder = freshFolder()
  const made = await createShoot(DOCUMENT, 'write-000001')
  const shoot = made.ok ? made.value.id : ''
  await appendLog(shoot, SENT, lines)
  const { prisma } = await database()
  const [at] = await prisma.$queryRawUnsafe<{ file: string }[]>(statement)
  await closeAll()
  return { folder, shoot, file: path.join(folder, 'pg', at?.file ?? '') }
}
function flip(file: string, place: number) {
  const open = openSync(file, 'r+')
  const byte = Buffer.alloc(1)
  readSync(open, byte, 0, 1, place)
  byte[0] = (byte[0] as number) ^ 16
  writeSync(open, byte, 0, 1, place)
}

describe('a database with a flipped bit', () => {
  it(
    'is moved aside at the start and rebuilt from the journals',
    async () => {
      const { folder, shoot, file } = await filled(`SELECT pg_relation_filepath('"LogLine"') AS file`)
      flip(file, 8000)
      const { notes } = await reopen(folder)
      expect(notes[0]).toMatch(
        /did not open \(invalid page in block 0 .* moved aside to pg-unreadable-.* rebuilt from the journals/,
      )
      expect(await kept(shoot)).toEqual(lines.map(({ id }) => id))
      expect(aside(folder)).toHaveLength(1)
    },
    LONG,
  )

  it(
    'where only a page of the app looks at it is rebuilt while the app runs: a write is answered "try again", and then done once',
    async () => {
      // A long document lies in a file of its own, which opening does not read.
      const { folder, shoot, file } = await filled(
        `SELECT pg_relation_filepath(reltoastrelid) AS file FROM pg_class WHERE relname = 'ShootVersion'`,
      )
      flip(file, 8000)
      expect((await reopen(folder)).notes).toEqual([])
      const save = () => saveShoot(shoot, { ...DOCUMENT, title: 'Saved' }, 'write-000002')
      const fault = await save().catch((thrown) => thrown)
      expect([isAway(fault), fault]).toEqual([true, expect.anything()])
      expect(await save()).toMatchObject({ ok: true, value: { version: 2 } })
      expect(aside(folder)).toHaveLength(1)
      expect(await kept(shoot)).toHaveLength(lines.length)
      expect(
        readFileSync(path.join(folder, 'journal', `${shoot}.ndjson`), 'utf8')
          .trimEnd()
          .split('\n'),
      ).toHaveLength(2)
    },
    LONG,
  )
})

/** A database as it was when only so many of the migrations were known, with a shoot in it and no journal. */
async function olderDatabase(migrations: number): Promise<string> {
  const folder = freshFolder()
  const known = mkdtempSync(path.join(tmpdir(), 'emberslate-migrations-'))
  for (const name of migrationNames().slice(0, migrations))
    cpSync(path.join('prisma/migrations', name), path.join(known, name), { recursive: true })
  const pglite = await PGlite.create(path.join(folder, 'pg'))
  await pglite.exec('DROP SCHEMA public CASCADE; CREATE SCHEMA public')
  const db = {
    run: (script: string) => pglite.exec(script),
    rows: async (statement: string, values: readonly unknown[] = []) =>
      (await pglite.query<Record<string, unknown>>(statement, [...values])).rows,
  }
  expect(await applyMigrations(db, folder, known)).toHaveLength(migrations)
  await db.rows(`INSERT INTO "Shoot" VALUES ('older', 'An older one', '2027-05-15', 2, now(), now())`)
  for (const version of [1, 2])
    await db.rows(
      `INSERT INTO "ShootVersion" ("shootId", "version", "document", "writeId", "at") VALUES ('older', $1, $2, $3, now())`,
      [version, JSON.stringify({ ...DOCUMENT, title: `Version ${version}` }), `write-00000${version}`],
    )
  if (migrations > 1)
    await db.rows(
      `INSERT INTO "LogLine" ("shootId", "position", "entryId", "document", "received", "sent") VALUES ('older', 1, $1, $2, now(), now())`,
      [lines[0]?.id, JSON.stringify(lines[0])],
    )
  await pglite.close()
  rmSync(known, { recursive: true })
  return folder
}

describe('the write-ahead log', () => {
  it(
    'is trimmed while the app runs, and does not grow for ever',
    async () => {
      const folder = freshFolder()
      const { prisma } = await reopen(folder)
      const database = {
        query: async <T>(statement: string) => ({ rows: await prisma.$queryRawUnsafe<T[]>(statement) }),
      }
      const files = () =>
        readdirSync(path.join(folder, 'pg', 'pg_wal')).filter((name) => /^[0-9A-F]{24}$/.test(name)).length
      const write30MB = () =>
        prisma.$executeRawUnsafe(
          `DO $$ BEGIN FOR i IN 1..300 LOOP PERFORM pg_logical_emit_message(false, 'x', repeat('x', 100000)); END LOOP; END $$`,
        )
      for (const _ of [1, 2, 3]) await write30MB()
      const most = files()
      expect(most).toBeGreaterThan(4)
      for (const _ of [1, 2, 3]) {
        await trimWal(folder, database, 20_000_000)
        await write30MB()
      }
      expect(files()).toBeLessThanOrEqual(most)
    },
    LONG,
  )
})

describe('a database of an earlier version', () => {
  // The newest migration is what every other test runs on.
  it.each(
    migrationNames()
      .slice(0, -1)
      .map((name, i) => [name, i + 1] as const),
  )(
    'at %s, with data in it, opens with all of it',
    async (_name, count) => {
      const folder = await olderDatabase(count)
      const { notes } = await reopen(folder)
      expect(notes).toEqual([])
      expect([(await loadShoot('older'))?.version, (await loadShoot('older', 1))?.document.title]).toEqual([
        2,
        'Version 1',
      ])
      expect(await kept('older')).toEqual(count > 1 ? [lines[0]?.id] : [])
      await saveShoot('older', { ...DOCUMENT, title: 'Third' }, 'write-000003')
      expect((await appendLog('older', SENT, [lines[1]])).entries[0]?.became).toBe('kept')
      expect(
        readFileSync(path.join(folder, 'journal', 'older.ndjson'), 'utf8')
          .trimEnd()
          .split('\n'),
      ).toHaveLength(3)
    },
    LONG,
  )

  it(
    'of a newer one is refused with a sentence and left as it is',
    async () => {
      const folder = freshFolder()
      const { prisma } = await reopen(folder)
      await prisma.$executeRaw`INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "finished_at") VALUES ('n', '', '20990101000000_later', now())`
      await closeAll()
      await expect(reopen(folder)).rejects.toThrow(
        /last used by a newer Emberslate \(it has the change 20990101000000_later.*Start the newer version.*nothing was changed/,
      )
      expect(aside(folder)).toEqual([])
      // The folder is free again for the newer one.
      await expect(reopen(folder)).rejects.toThrow(/newer Emberslate/)
    },
    LONG,
  )
})
