import 'server-only'
import { createHash, randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** The one connection that migrations go through, of either kind of database. */
export interface Sql {
  /** Runs a script of several statements. */
  run(script: string): Promise<unknown>
  rows(statement: string, values?: readonly unknown[]): Promise<readonly Record<string, unknown>[]>
}

/** The database knows changes that this program does not: nothing of it is touched. */
export class NewerDatabase extends Error {
  constructor(where: string, name: string) {
    super(
      `${where} was last used by a newer Emberslate (it has the change ${name}, which this one does not know). Start the newer version, or give this one a database of its own; nothing was changed.`,
    )
    this.name = 'NewerDatabase'
  }
}

/** Prisma's own table, to the letter, so that its command line tells the same story. */
const TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL, "checksum" VARCHAR(64) NOT NULL, "finished_at" TIMESTAMPTZ,
  "migration_name" VARCHAR(255) NOT NULL, "logs" TEXT, "rolled_back_at" TIMESTAMPTZ,
  "started_at" TIMESTAMPTZ NOT NULL DEFAULT now(), "applied_steps_count" INTEGER NOT NULL DEFAULT 0
)`
const DONE =
  'INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "finished_at", "applied_steps_count") VALUES ($1, $2, $3, now(), 1)'
const KNOWN =
  'SELECT "migration_name" AS name, "finished_at" IS NOT NULL AS done FROM "_prisma_migrations" WHERE "rolled_back_at" IS NULL'

const FOLDER = path.join(/* turbopackIgnore: true */ process.cwd(), 'prisma', 'migrations')

/**
 * What `prisma migrate deploy` does, each migration in a transaction with its row: an end in the middle of one leaves
 * nothing half done. Returns the names applied. Who may run beside others holds a lock around it.
 */
export async function applyMigrations(db: Sql, where: string, folder = FOLDER): Promise<readonly string[]> {
  const ours = migrationNames(folder)
  const known = await knownIn(db)
  const strange = [...known.keys()].sort().find((name) => !ours.includes(name))
  if (strange) throw new NewerDatabase(where, strange)
  const half = [...known].find(([, done]) => !done)
  if (half) throw new Error(`${where} has a change of its tables that was begun and not finished: ${half[0]}.`)
  const lacking = ours.filter((name) => !known.has(name))
  if (lacking.length > 0) await db.run(TABLE)
  for (const name of lacking) await apply(db, name, readFileSync(path.join(folder, name, 'migration.sql'), 'utf8'))
  return lacking
}

/** Every change of the tables that this program knows, in order. */
export function migrationNames(folder = FOLDER): readonly string[] {
  const entries = readdirSync(/* turbopackIgnore: true */ folder, { withFileTypes: true })
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
}

async function knownIn(db: Sql): Promise<ReadonlyMap<string, boolean>> {
  const [table] = await db.rows(`SELECT to_regclass('"_prisma_migrations"') IS NOT NULL AS there`)
  if (!table?.there) return new Map()
  return new Map((await db.rows(KNOWN)).map(({ name, done }) => [String(name), Boolean(done)]))
}

async function apply(db: Sql, name: string, script: string): Promise<void> {
  await db.run('BEGIN')
  try {
    await db.run(script)
    await db.rows(DONE, [randomUUID(), createHash('sha256').update(script).digest('hex'), name])
    await db.run('COMMIT')
  } catch (fault) {
    await db.run('ROLLBACK').catch(() => undefined)
    throw fault
  }
}
