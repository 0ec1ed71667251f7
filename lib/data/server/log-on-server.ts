import 'server-only'
import pg from 'pg'
import { BorderError } from '../border-error'
import { database } from '../client'
import { lockOf } from '../turns'

/** A line that may be new; `received` and `sent` are milliseconds. */
export interface NewLine {
  readonly received: number
  readonly sent: number
  readonly document: { readonly id: string }
}
/** What was there of them, and where the others were put. */
export interface Appended {
  readonly known: readonly { readonly id: string; readonly position: number; readonly document: unknown }[]
  readonly positions: Readonly<Record<string, number>>
}

/**
 * A turn of its shoot that keeps lines, as one message to the server and its answer: on a busy machine each wait for an
 * answer costs more than the work. Statements of one message are one transaction, and each sees what was committed before
 * it, so the second one has what another process kept while the first one waited for the lock.
 */
export async function appendOnServer(shootId: string, lines: readonly NewLine[]): Promise<Appended> {
  const { server } = await database()
  // Several statements have as many answers, which the driver's types do not know of.
  const answers = (await server?.pool.query(scriptOf(shootId, lines))) as unknown as { rows: Appended[] }[]
  const told = answers[1]?.rows[0]
  if (!told) throw new BorderError('not-found')
  return told
}

function scriptOf(shootId: string, lines: readonly NewLine[]): string {
  const rows = lines.map(({ document, received, sent }, order) => ({
    order,
    entryId: document.id,
    document,
    received: new Date(received).toISOString(),
    sent: new Date(sent).toISOString(),
  }))
  const [shoot, asked, lock] = [shootId, JSON.stringify(rows), lockOf(shootId)].map((text) => pg.escapeLiteral(text))
  return `
    SELECT pg_advisory_xact_lock(hashtextextended(${lock}, 0));
    WITH asked AS (
      SELECT * FROM json_to_recordset(${asked})
      AS line("order" int, "entryId" text, "document" json, "received" timestamptz, "sent" timestamptz)
    ),
    known AS (
      SELECT "entryId", "position", "document" FROM "LogLine"
      WHERE "shootId" = ${shoot} AND "entryId" = ANY(ARRAY(SELECT "entryId" FROM asked))
    ),
    kept AS (
      INSERT INTO "LogLine" ("shootId", "position", "entryId", "document", "received", "sent")
      SELECT "id",
        coalesce((SELECT max("position") FROM "LogLine" WHERE "shootId" = ${shoot}), 0) + row_number() OVER (ORDER BY "order"),
        "entryId", "document", "received", "sent"
      FROM asked, "Shoot" WHERE "id" = ${shoot} AND "entryId" NOT IN (SELECT "entryId" FROM known)
      RETURNING "entryId", "position"
    )
    SELECT
      coalesce((SELECT json_agg(json_build_object('id', "entryId", 'position', "position", 'document', "document")) FROM known), '[]') AS known,
      coalesce((SELECT json_object_agg("entryId", "position") FROM kept), '{}') AS positions
    FROM "Shoot" WHERE "id" = ${shoot}`
}
