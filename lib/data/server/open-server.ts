import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import pg from 'pg'
import { isAway, readTwice, wait } from '../away'
import type { Database } from '../client'
import { type Prisma, PrismaClient } from '../generated/client'
import { applyMigrations, NewerDatabase } from '../migrate'
import { type Named, placeOf, tooOld, whyNotOpened } from './server-words'

/** Beside these one more connection of each process listens. */
const CONNECTIONS = 10
/** A server that is gone without a word would else keep a statement waiting until TCP gives up, a quarter of an hour. */
const ANSWER_MS = 60_000
const CONNECT_MS = 5000
/** A server that is started together with us may take so long until it answers. */
const PATIENCE_MS = 20_000
const STEP_MS = 500
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
export async function openServer(
  url: string,
  patienceMs = PATIENCE_MS,
  named: Named = 'DATABASE_URL',
): Promise<Database> {
  const applied = await bringUpToDate(url, patienceMs, named)
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    connectionTimeoutMillis: CONNECT_MS,
    keepAlive: true,
    query_timeout: ANSWER_MS,
    application_name: 'emberslate',
  })
  // A connection that breaks while nobody uses it is replaced when somebody does.
  pool.on('error', () => undefined)
  // One that breaks in a transaction fails its statement too; that nobody listened would end the process.
  pool.on('connect', (client) => client.on('error', () => undefined))
  const client = new PrismaClient({ adapter: new PrismaPg(pool, { statementNameGenerator: nameOf }) })
  const close = async () => {
    await client.$disconnect()
    await pool.end()
  }
  const notes = applied.length > 0 ? [`${placeOf(url)} was brought up to date.`] : []
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

async function bringUpToDate(url: string, patienceMs: number, named: Named): Promise<readonly string[]> {
  const client = await connected(url, patienceMs, named)
  try {
    await refuseTooOld(client, url)
    const db = {
      run: (script: string) => client.query(script),
      rows: async (statement: string, values: readonly unknown[] = []) =>
        (await client.query(statement, [...values])).rows,
    }
    // Of two who start at once the second waits here, and then finds everything done; the lock ends with the connection.
    await client.query('SELECT pg_advisory_lock($1)', [MIGRATIONS_LOCK])
    return await applyMigrations(db, placeOf(url))
  } catch (fault) {
    throw fault instanceof NewerDatabase ? fault : new Error(whyNotOpened(url, fault, named))
  } finally {
    await client.end().catch(() => undefined)
  }
}
async function refuseTooOld(client: pg.Client, url: string) {
  const { rows } = await client.query(
    "SELECT current_setting('server_version_num')::int AS number, current_setting('server_version') AS said",
  )
  const refusal = tooOld(url, rows[0])
  if (refusal) throw new Error(refusal)
}

/** Tries until the server answers; what waiting does not mend ends it at once. */
async function connected(url: string, patienceMs: number, named: Named): Promise<pg.Client> {
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
      if (!isAway(fault) || Date.now() + STEP_MS > until) throw new Error(whyNotOpened(url, fault, named))
      if (!told) console.log(`${placeOf(url)} does not answer yet; waiting up to ${Math.round(patienceMs / 1000)} s.`)
      await wait(STEP_MS)
    }
  }
}
