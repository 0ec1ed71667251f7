import { createHash } from 'node:crypto'
import type { Sql } from '../../data/server/server-sql'

interface Table {
  readonly name: string
  /** The column that names the shoot, and the one that counts within it. */
  readonly shoot: string
  readonly count: string
  readonly page: number
}
const SHOOT: Table = { name: 'Shoot', shoot: 'id', count: 'version', page: 1 }
const VERSIONS: Table = { name: 'ShootVersion', shoot: 'shootId', count: 'version', page: 50 }
const LINES: Table = { name: 'LogLine', shoot: 'shootId', count: 'position', page: 5000 }

/** Rows as PostgreSQL itself writes them: documents letter for letter, times in UTC. */
interface Page {
  readonly rows: string
  readonly count: number
  readonly last: number
}
async function* pagesOf(sql: Sql, { name, shoot, count, page }: Table, id: string): AsyncGenerator<Page> {
  const select = `SELECT coalesce(json_agg(line ORDER BY "${count}")::text, '[]') AS "rows", count(*)::int AS "count",
    coalesce(max("${count}"), 0)::int AS "last"
    FROM (SELECT * FROM "${name}" WHERE "${shoot}" = $1 AND "${count}" > $2::int ORDER BY "${count}" LIMIT $3::int) AS line`
  for (let after = 0; ; ) {
    const [found] = await sql<Page>(select, [id, after, page])
    if (!found || found.count === 0) return
    after = found.last
    yield found
  }
}

export interface Sum {
  readonly hash: string
  readonly rows: number
}
/** Counts and sums up what a shoot has in a table; `each` hears the pages on the way. */
async function sumOf(sql: Sql, table: Table, id: string, each?: (page: Page) => Promise<unknown>): Promise<Sum> {
  const hash = createHash('sha256')
  let rows = 0
  for await (const page of pagesOf(sql, table, id)) {
    hash.update(page.rows)
    rows += page.count
    await each?.(page)
  }
  return { hash: hash.digest('hex'), rows }
}

async function copyTable(from: Sql, to: Sql, table: Table, id: string): Promise<number> {
  const insert = `INSERT INTO "${table.name}" SELECT * FROM json_populate_recordset(NULL::"${table.name}", $1::json)`
  const here = await sumOf(from, table, id, ({ rows }) => to(insert, [rows]))
  const there = await sumOf(to, table, id)
  if (here.rows === there.rows && here.hash === there.hash) return here.rows
  throw new Error(
    `Shoot ${id} did not come over whole (${table.name}: ${here.rows} rows here, ${there.rows} there). Nothing was moved; please report this.`,
  )
}

export interface MovedShoots {
  readonly shoots: number
  readonly versions: number
  readonly lines: number
}
/** Copies every shoot, row by row as it is, and reads back what arrived. */
export async function copyShoots(from: Sql, to: Sql): Promise<MovedShoots> {
  for (const sql of [from, to]) await sql("SELECT set_config('TimeZone', 'UTC', false)")
  const ids = (await from<{ readonly id: string }>('SELECT "id" FROM "Shoot" ORDER BY "id"')).map(({ id }) => id)
  let [versions, lines] = [0, 0]
  for (const id of ids) {
    await copyTable(from, to, SHOOT, id)
    versions += await copyTable(from, to, VERSIONS, id)
    lines += await copyTable(from, to, LINES, id)
  }
  return { shoots: ids.length, versions, lines }
}
