import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import pg from 'pg'
import { isAway, readTwice, wait } from './away'
import type { Database } from './client'
import { type Prisma, PrismaClient } from './generated/client'
import { applyMigrations } from './migrate'

/** Beside these one more connection of each process listens. */
const CONNECTIONS = 10
const CONNECT_MS = 5000
/** A server that is started together with us may take so long until it answers. */
const PATIENCE_MS = 20_000
const STEP_MS = 500
/** The oldest that its makers still kept up in 2025, and that the queue of jobs runs on. */
const OLDEST = 130_000
/** Who changes the tables holds this lock; the number only has to be the same for all. */
const MIGRATIONS_LOCK = 7_310_001

const READS = new Set<string>([
  'findMany',
  'findFirst',
  'findFirstOrThrow',
  'findUnique',
  'findUniqueOrThrow',
  'count',
  'aggregate',
  'groupBy',
] satisfies Prisma.PrismaAction[])

/** The PostgreSQL at this address, its tables up to date; where it cannot be had, an error of one sentence. */
export async function openServer(url: string, patienceMs = PATIENCE_MS): Promise<Database> {
  const applied = await bringUpToDate(url, patienceMs)
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    connectionTimeoutMillis: CONNECT_MS,
    keepAlive: true,
    application_name: 'emberslate',
  })
  // A connection that breaks while nobody uses it is replaced when somebody does.
  pool.on('error', () => undefined)
  const client = new PrismaClient({ adapter: new PrismaPg(pool, { statementNameGenerator: nameOf }) })
  const close = async () => {
    await client.$disconnect()
    await pool.end()
  }
  const notes = applied.length > 0 ? [`The tables of ${placeOf(url)} were brought up to date.`] : []
  return { prisma: readingTwice(client), folder: null, server: { url, pool }, notes, close }
}

/** The same statement is planned once in each connection. */
const names = new Map<string, string>()
function nameOf({ sql }: { readonly sql: string }): string {
  const known = names.get(sql)
  if (known) return known
  // Statements with a list in them come in any number; those past the first few hundred share no plan.
  const name = names.size < 300 ? `emberslate_${names.size}` : ''
  if (name) names.set(sql, name)
  return name
}

const readingTwice = (client: PrismaClient): PrismaClient =>
  client.$extends({
    query: {
      $allModels: {
        $allOperations: ({ operation, args, query }) =>
          READS.has(operation) ? readTwice(() => query(args)) : query(args),
      },
    },
    // The extended client has every method of the plain one that we use; only its type is another.
  }) as unknown as PrismaClient

/** Where the database is, without its password. */
export function placeOf(url: string): string {
  const { host, pathname, searchParams } = new URL(url)
  return `the database ${decodeURIComponent(pathname.slice(1))} at ${host || searchParams.get('host') || 'localhost'}`
}

async function bringUpToDate(url: string, patienceMs: number): Promise<readonly string[]> {
  const client = await connected(url, patienceMs)
  try {
    await refuseTooOld(client, url)
    const db = {
      run: (script: string) => client.query(script),
      rows: async (statement: string, values: readonly unknown[] = []) =>
        (await client.query(statement, [...values])).rows,
    }
    // Of two who start at once the second waits here, and then finds everything done; the lock ends with the connection.
    await client.query('SELECT pg_advisory_lock($1)', [MIGRATIONS_LOCK])
    return await applyMigrations(db, capital(placeOf(url)))
  } catch (fault) {
    throw inWords(fault, url)
  } finally {
    await client.end().catch(() => undefined)
  }
}
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

async function refuseTooOld(client: pg.Client, url: string) {
  const { rows } = await client.query(
    "SELECT current_setting('server_version_num')::int AS number, current_setting('server_version') AS said",
  )
  if (rows[0].number >= OLDEST) return
  throw new Error(
    `PostgreSQL at ${new URL(url).host} is version ${rows[0].said}, and Emberslate needs ${OLDEST / 10_000} or newer.`,
  )
}

/** Tries until the server answers; what waiting does not mend ends it at once. */
async function connected(url: string, patienceMs: number): Promise<pg.Client> {
  const until = Date.now() + patienceMs
  for (let told = false; ; told = true) {
    const client = new pg.Client({
      connectionString: url,
      connectionTimeoutMillis: CONNECT_MS,
      application_name: 'emberslate-start',
    })
    client.on('error', () => undefined)
    try {
      await client.connect()
      return client
    } catch (fault) {
      await client.end().catch(() => undefined)
      if (!isAway(fault) || Date.now() + STEP_MS > until) throw inWords(fault, url)
      if (!told) console.log(`Waiting for ${placeOf(url)}, up to ${Math.round(patienceMs / 1000)} s.`)
      await wait(STEP_MS)
    }
  }
}

const WORDS: Readonly<Record<string, string>> = {
  '28P01': 'does not take this user and password. Correct them in DATABASE_URL.',
  '28000': 'does not let this user in. Correct DATABASE_URL, or allow it in pg_hba.conf.',
  '3D000': 'is not there. Make it (createdb), or correct its name in DATABASE_URL.',
  '42501': 'does not let this user make tables. Make it theirs: ALTER DATABASE … OWNER TO …',
}

/** One sentence for whoever starts the app. */
function inWords(fault: unknown, url: string): Error {
  const place = capital(placeOf(url))
  const { code = '', message = String(fault) } = fault as { code?: string; message?: string }
  if (WORDS[code]) return new Error(`${place} ${WORDS[code]}`)
  if (isAway(fault))
    return new Error(
      `${place} does not answer (${code || message}). Start PostgreSQL there, or correct DATABASE_URL; without DATABASE_URL everything is kept in a folder.`,
    )
  return fault instanceof Error ? fault : new Error(message)
}
