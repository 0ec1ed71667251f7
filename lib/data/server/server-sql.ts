import 'server-only'
import type { PoolClient } from 'pg'
import { readTwice } from '../away'
import { database } from '../client'
import type { Prisma } from '../generated/client'

/** Asks PostgreSQL in its own words; what Prisma has no words for. */
export type Sql = <Row = unknown>(text: string, values?: readonly unknown[]) => Promise<readonly Row[]>
/** Where kept files are on a server: each in a transaction of its own, or all within one that is under way. */
export interface Server {
  readonly read: Sql
  readonly write: Sql
  /** Runs work whose statements hold together. */
  allOrNone<T>(work: (sql: Sql) => Promise<T>): Promise<T>
}

async function pool() {
  const { server } = await database()
  if (!server) throw new Error('There is no server to ask: this is the embedded mode.')
  return server.pool
}

/** One statement by itself, in server mode. */
const ask: Sql = async <Row>(text: string, values: readonly unknown[] = []) =>
  (await (await pool()).query(text, [...values])).rows as Row[]

export const sqlOfClient =
  (client: Pick<PoolClient, 'query'>): Sql =>
  async <Row>(text: string, values: readonly unknown[] = []) =>
    (await client.query(text, [...values])).rows as Row[]

/** Statements of a transaction that is under way. */
export const sqlOf =
  (tx: Pick<Prisma.TransactionClient, '$queryRawUnsafe'>): Sql =>
  <Row>(text: string, values: readonly unknown[] = []) =>
    tx.$queryRawUnsafe<Row[]>(text, ...values)

/** A process that hangs half way must not keep what it locked from all others. */
const BEGIN = "BEGIN; SET LOCAL idle_in_transaction_session_timeout = '10s'"

/** A transaction of its own, in server mode. */
async function inTransaction<T>(work: (sql: Sql) => Promise<T>): Promise<T> {
  const client = await (await pool()).connect()
  let broken: Error | undefined
  try {
    await client.query(BEGIN)
    const value = await work(sqlOfClient(client))
    await client.query('COMMIT')
    return value
  } catch (fault) {
    // A connection that does not even take this is not given to the next one.
    await client.query('ROLLBACK').catch((worse: Error) => {
      broken = worse
    })
    throw fault
  } finally {
    client.release(broken)
  }
}

export const SERVER: Server = {
  read: (text, values) => readTwice(() => ask(text, values)),
  write: ask,
  allOrNone: inTransaction,
}
export const within = (sql: Sql): Server => ({ read: sql, write: sql, allOrNone: (work) => work(sql) })
