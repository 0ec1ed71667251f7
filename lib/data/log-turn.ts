import 'server-only'
import type { EntryDocument } from '../log/entry'
import type { Instant } from '../units'
import { BorderError } from './border-error'
import { database, type Tx } from './client'
import { journalFirst } from './folder/journal-first'
import { appendToLogJournal, type KeptLine } from './folder/log-journal'
import { writeLines } from './folder/put-back-log'
import { tellListeners } from './listeners'
import { withoutErased } from './person/erased'
import { type Appended, appendOnServer } from './server/log-on-server'
import { inTurn, queued } from './turns'

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
  /** How an entry is kept: without whoever was taken out of this log. */
  readonly erased: Erased
}
type Erased = Awaited<ReturnType<typeof withoutErased>>

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
  const kept = inLine(shootId, (tx) => {
    close()
    return keepAll(shootId, all, tx)
  })
    .finally(close)
    .then((turn) => told(shootId, turn))
  const group: Group = { asked: all, entries: asked.entries.length, kept }
  groups.set(shootId, group)
  return kept
}

/** In a folder, its turn; on a server, where the statement itself takes the turn, behind those of this process. */
async function inLine<T>(shootId: string, work: (tx: Tx | null) => Promise<T>): Promise<T> {
  const { server } = await database()
  return server ? queued(`log ${shootId}`, () => work(null)) : inTurn(shootId, work)
}

/** What one sending after another brings, each entry once. */
function candidates(all: readonly Asked[], received: Instant, erased: Erased) {
  const brought = new Map<string, Omit<KeptLine, 'position'> & { by: Asked }>()
  for (const by of all)
    for (const document of by.entries)
      if (!brought.has(document.id))
        brought.set(document.id, { received, sent: by.sent, document: erased(document), by })
  return brought
}

async function keepAll(shootId: string, all: readonly Asked[], tx: Tx | null): Promise<LogTurn> {
  const received = Date.now() as Instant
  const erased = await withoutErased(shootId)
  const brought = candidates(all, received, erased)
  const lines = [...brought.values()].map(({ by: _, ...line }) => line)
  const { known, positions } = await (tx ? appendInFolder(tx, shootId, lines) : appendOnServer(shootId, lines))
  const fresh = new Map<string, { line: KeptLine; by: Asked }>()
  for (const [id, { by, ...line }] of brought) {
    const position = positions[id]
    if (position !== undefined) fresh.set(id, { line: { position, ...line }, by })
  }
  return { received, known: new Map(known.map((line) => [line.id, line])), fresh, erased }
}

interface Here {
  readonly last: number
  readonly known: Appended['known']
}
/** Their positions must be known before they are in the journal, and they must be there before they are in the database. */
async function appendInFolder(
  tx: Tx,
  shootId: string,
  lines: readonly Omit<KeptLine, 'position'>[],
): Promise<Appended> {
  const ids = lines.map(({ document }) => document.id)
  const [here] = await tx.$queryRaw<Here[]>`
    SELECT
      coalesce((SELECT max("position") FROM "LogLine" WHERE "shootId" = "Shoot"."id"), 0) AS "last",
      coalesce((
        SELECT json_agg(json_build_object('id', "entryId", 'position', "position", 'document', "document"))
        FROM "LogLine" WHERE "shootId" = "Shoot"."id" AND "entryId" = ANY(${ids}::text[])
      ), '[]') AS "known"
    FROM "Shoot" WHERE "id" = ${shootId}`
  if (!here) throw new BorderError('not-found')
  const had = new Set(here.known.map(({ id }) => id))
  const kept = lines
    .filter(({ document }) => !had.has(document.id))
    .map((line, i) => ({ position: here.last + 1 + i, ...line }))
  if (kept.length > 0)
    await journalFirst(
      (folder) => appendToLogJournal(folder, shootId, kept),
      (why) => `The disk did not take the entries (${why}); they were not kept.`,
      () => writeLines(tx, shootId, kept),
    )
  return {
    known: here.known,
    positions: Object.fromEntries(kept.map(({ document, position }) => [document.id, position])),
  }
}

/**
 * Told before it is answered, but after it is kept: a notice inside the transaction has all commits of a server wait for
 * each other. What a process that ended in between did not tell is told when its sender sends it again.
 */
async function told(shootId: string, turn: LogTurn): Promise<LogTurn> {
  const again = Math.max(0, ...[...turn.known.values()].map(({ position }) => position))
  await tellListeners(
    shootId,
    [...turn.fresh.values()].map(({ line }) => line),
    again,
  )
  return turn
}
