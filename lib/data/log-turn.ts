import 'server-only'
import type { EntryDocument } from '../log/entry'
import type { Instant } from '../units'
import { BorderError } from './border-error'
import type { Tx } from './client'
import { journalFirst } from './journal-first'
import { tellListeners } from './listeners'
import { appendToLogJournal, type KeptLine } from './log-journal'
import { writeLines } from './put-back-log'
import { inTurn } from './turns'

/** The entries of one sending that may be kept, and what the sender's clock said. */
export interface Asked {
  readonly sent: Instant
  readonly entries: readonly (EntryDocument & { readonly id: string })[]
}
/** What one turn found and kept: lines that were there, and new ones with the sending that brought them. */
export interface LogTurn {
  readonly received: Instant
  readonly known: ReadonlyMap<string, { readonly position: number; readonly document: unknown }>
  readonly fresh: ReadonlyMap<string, { readonly line: KeptLine; readonly by: Asked }>
}

/** Sendings that wait for the same turn; it is closed when the turn comes. */
interface Group {
  readonly asked: Asked[]
  entries: number
  readonly kept: Promise<LogTurn>
}
/** A group is one statement and one line of the journal's disk: this bounds both. */
const MOST_ENTRIES = 4000
const shared = globalThis as { emberslateLogGroups?: Map<string, Group> }

/**
 * Keeps entries, and tells who listens. Sendings to one shoot that wait for each other are kept together: they are read,
 * synced and stored once, however many they are, so that many small ones cost little more than one.
 */
export function keepInTurn(shootId: string, asked: Asked): Promise<LogTurn> {
  shared.emberslateLogGroups ??= new Map()
  const groups = shared.emberslateLogGroups
  const open = groups.get(shootId)
  if (open && open.entries + asked.entries.length <= MOST_ENTRIES) {
    open.asked.push(asked)
    open.entries += asked.entries.length
    return open.kept
  }
  const close = () => {
    if (groups.get(shootId) === group) groups.delete(shootId)
  }
  const all = [asked]
  const kept = inTurn(shootId, (tx) => {
    close()
    return keepAll(tx, shootId, all)
  }).finally(close)
  const group: Group = { asked: all, entries: asked.entries.length, kept }
  groups.set(shootId, group)
  return kept
}

async function keepAll(tx: Tx, shootId: string, all: readonly Asked[]): Promise<LogTurn> {
  const received = Date.now() as Instant
  const { known, last } = await knownLines(
    tx,
    shootId,
    all.flatMap(({ entries }) => entries.map(({ id }) => id)),
  )
  const fresh = new Map<string, { line: KeptLine; by: Asked }>()
  for (const by of all)
    for (const document of by.entries) {
      if (known.has(document.id) || fresh.has(document.id)) continue
      fresh.set(document.id, { line: { position: last + 1 + fresh.size, received, sent: by.sent, document }, by })
    }
  const lines = [...fresh.values()].map(({ line }) => line)
  if (lines.length > 0) await keepLines(tx, shootId, lines)
  return { received, known, fresh }
}

interface Known {
  readonly last: number
  readonly known: readonly { readonly id: string; readonly position: number; readonly document: unknown }[]
}
/** In one question: whether there is such a shoot, its last position, and which of the entries it has. */
async function knownLines(tx: Tx, shootId: string, ids: readonly string[]) {
  const [row] = await tx.$queryRaw<Known[]>`
    SELECT
      coalesce((SELECT max("position") FROM "LogLine" WHERE "shootId" = "Shoot"."id"), 0) AS "last",
      coalesce((
        SELECT json_agg(json_build_object('id', "entryId", 'position', "position", 'document', "document"))
        FROM "LogLine" WHERE "shootId" = "Shoot"."id" AND "entryId" = ANY(${[...ids]}::text[])
      ), '[]') AS "known"
    FROM "Shoot" WHERE "id" = ${shootId}`
  if (!row) throw new BorderError('not-found')
  return { known: new Map(row.known.map((line) => [line.id, line])), last: row.last }
}

async function keepLines(tx: Tx, shootId: string, lines: readonly KeptLine[]): Promise<void> {
  await journalFirst(
    (folder) => appendToLogJournal(folder, shootId, lines),
    (why) => `The disk did not take the entries (${why}); they were not kept.`,
    () => writeLines(tx, shootId, lines),
  )
  await tellListeners(shootId, lines, tx)
}
