import 'server-only'
import { databaseUrl } from '../env'
import type { SmallFileKind } from '../small-file'
import { Together } from '../together'
import { SERVER, type Sql } from './server-sql'

interface Held {
  readonly revision: number
  readonly value: unknown
}
/** Next loads this file once per bundle; one memory for the process. By address too: a test has several servers. */
const shared = globalThis as { emberslateSmallFiles?: Map<string, Held> }

interface Row {
  readonly revision: number
  readonly content: string | null
}
/** The content only where the revision is another than the one that is held. */
const READ = `SELECT "revision", CASE WHEN "revision" = $2 THEN NULL ELSE "content"::text END AS "content"
  FROM "SmallFile" WHERE "name" = $1`
const LOCK = 'SELECT "revision", "content"::text AS "content" FROM "SmallFile" WHERE "name" = $1 FOR UPDATE'
/** So that there is a row to lock. */
const BEGIN = `INSERT INTO "SmallFile" ("name", "content", "revision") VALUES ($1, 'null', 0) ON CONFLICT DO NOTHING`
const CHANGE = 'UPDATE "SmallFile" SET "content" = $2::json, "revision" = $3 WHERE "name" = $1'

/** A row that every process asks for its revision before it trusts its memory, so that an end is felt at once everywhere. */
export class SmallFileOnServer<T> {
  readonly #kind: SmallFileKind<T>
  /** The door is asked with every request: many at once are one question. */
  readonly #reads = new Together(() => this.#readNow())

  constructor(kind: SmallFileKind<T>) {
    this.#kind = kind
  }

  read(): Promise<T> {
    return this.#reads.ask()
  }

  async #readNow(): Promise<T> {
    const held = this.#held()
    const [row] = await SERVER.read<Row>(READ, [this.#kind.name, held?.revision ?? -1])
    if (!row) return this.#kind.empty
    return this.#valueOf(row, held)
  }

  async change(next: (now: T) => T): Promise<T> {
    const { value, revision } = await SERVER.allOrNone(async (sql) => {
      const row = await this.#locked(sql)
      const now = this.#valueOf(row, this.#held())
      const value = next(now)
      if (value === now) return { value, revision: row.revision }
      const revision = row.revision + 1
      await sql(CHANGE, [this.#kind.name, JSON.stringify(value), revision])
      return { value, revision }
    })
    this.#hold({ value, revision })
    return value
  }

  /** The row, which nobody else changes until the transaction ends. */
  async #locked(sql: Sql): Promise<Row> {
    const { name } = this.#kind
    const [row] = await sql<Row>(LOCK, [name])
    if (row) return row
    await sql(BEGIN, [name])
    return (await sql<Row>(LOCK, [name]))[0] as Row
  }

  get #key() {
    return `${databaseUrl()} ${this.#kind.name}`
  }
  #held() {
    return shared.emberslateSmallFiles?.get(this.#key)
  }
  #hold(held: Held) {
    shared.emberslateSmallFiles ??= new Map()
    // Of two answers that overtook each other the newer one is right.
    if (held.revision >= (this.#held()?.revision ?? 0)) shared.emberslateSmallFiles.set(this.#key, held)
  }

  #valueOf({ revision, content }: Row, held: Held | undefined): T {
    if (revision === 0) return this.#kind.empty
    if (held && held.revision === revision) return held.value as T
    try {
      const value = this.#kind.schema.parse(JSON.parse(content as string))
      this.#hold({ revision, value })
      return value
    } catch {
      // Never taken for empty: a door that forgets its owner would let the next one in.
      throw new Error(
        `The row ${this.#kind.name} of the table SmallFile does not read. Mend it, or delete it and start again.`,
      )
    }
  }
}
