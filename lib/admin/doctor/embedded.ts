import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { PGlite } from '@electric-sql/pglite'
import { lockFolder } from '../../data/folder/lock'
import { migrationNames } from '../../data/migrate'
import { broken, type Finding, howMany, look, ok } from './finding'
import type { Journaled } from './folder'

interface Counted {
  readonly versions: ReadonlyMap<string, number>
  readonly lines: ReadonlyMap<string, number>
  readonly migrations: readonly string[]
}
type Count = { readonly id: string; readonly n: number }

async function countedIn(folder: string): Promise<Counted> {
  const db = await PGlite.create(folder)
  try {
    const rows = async <T>(sql: string) => (await db.query<T>(sql)).rows
    const counts = async (table: string) => {
      const found = await rows<Count>(`SELECT "shootId" AS id, count(*)::int AS n FROM "${table}" GROUP BY 1`)
      return new Map(found.map(({ id, n }) => [id, n]))
    }
    const done = await rows<{ name: string }>(
      'SELECT migration_name AS name FROM "_prisma_migrations" WHERE finished_at IS NOT NULL',
    )
    return {
      versions: await counts('ShootVersion'),
      lines: done.some(({ name }) => name.endsWith('_log')) ? await counts('LogLine') : new Map(),
      migrations: done.map(({ name }) => name),
    }
  } finally {
    await db.close()
  }
}

/** Opens a copy: looking changes nothing, not even the log that a database writes when it opens. Null where it does not open. */
async function countedInCopy(folder: string): Promise<Counted | null> {
  const copy = mkdtempSync(path.join(tmpdir(), 'emberslate-doctor-'))
  try {
    // That it cannot be copied, for want of room say, tells nothing of the database.
    cpSync(path.join(folder, 'pg'), path.join(copy, 'pg'), { recursive: true })
    return await countedIn(path.join(copy, 'pg')).catch(() => null)
  } finally {
    rmSync(copy, { recursive: true, force: true })
  }
}

const lacking = (has: ReadonlyMap<string, number>, asked: ReadonlyMap<string, number>) =>
  [...asked].reduce((all, [id, n]) => all + Math.max(0, n - (has.get(id) ?? 0)), 0)

/** Whether the database opens and holds what the journals hold. Nobody else may have the folder open. */
export async function embeddedFindings(folder: string, journaled: Journaled): Promise<readonly Finding[]> {
  const about = 'Database'
  if (!existsSync(path.join(folder, 'pg')))
    return [ok(about, 'None yet: the next npm start makes it from the journals.')]
  const unlock = await lockFolder(folder)
  try {
    const counted = await countedInCopy(folder)
    if (counted) return [migrationsFinding(counted.migrations), countsFinding(counted, journaled)]
    const todo =
      'npm start moves it aside and makes it anew from the journals; nothing confirmed is lost. Look at the disk.'
    return [broken(about, 'It does not open.', todo)]
  } finally {
    unlock()
  }
}

function migrationsFinding(done: readonly string[]): Finding {
  const ours = migrationNames()
  const strange = done.filter((name) => !ours.includes(name))
  if (strange.length > 0)
    return broken(
      'Database',
      'It was last used by a newer Emberslate.',
      'Start the newer one; this one would refuse it.',
    )
  const due = ours.filter((name) => !done.includes(name)).length
  if (due > 0)
    return look(
      'Database',
      `It opens; changes of its tables that are due: ${due}.`,
      'The next npm start makes them. npm run backup before it, to be able to go back.',
    )
  return ok('Database', 'It opens, and its tables are up to date.')
}

function countsFinding(counted: Counted, journaled: Journaled): Finding {
  const about = 'Agreement'
  const [versions, lines] = [lacking(counted.versions, journaled.versions), lacking(counted.lines, journaled.lines)]
  const unjournaled = lacking(journaled.versions, counted.versions) + lacking(journaled.lines, counted.lines)
  if (unjournaled > 0)
    return broken(
      about,
      `The database has ${howMany(unjournaled, 'row')} that no journal has.`,
      'Save the archive of each shoot now, and keep the data folder: its journals were cut or removed.',
    )
  if (versions + lines > 0)
    return look(
      about,
      `The database lacks ${howMany(versions, 'version')} and ${howMany(lines, 'line')} that the journals have.`,
      'Nothing: the next npm start puts them back.',
    )
  return ok(about, 'Journals and database hold the same.')
}
