import 'server-only'
import type { EntryDocument } from '../log/entry'
import { sameDocument } from '../log/log'
import { readEntry } from '../log/read-entry'
import type { Problem } from '../refusals'
import type { Instant } from '../units'
import { BorderError } from './border-error'
import { database } from './client'
import { tellListeners } from './listeners'
import { requireShoot } from './load-log'
import { appendToLogJournal, type KeptLine } from './log-journal'
import { writeLines } from './put-back-log'
import { inTurn } from './write-version'

/** What became of one entry of a sending: `known` was kept before, `refused` is not kept. */
export type Kept =
  | { readonly id: string; readonly became: 'kept' | 'known'; readonly position: number }
  | { readonly id: string | null; readonly became: 'refused'; readonly problems: readonly Problem[] }
export type Sending = { readonly received: Instant; readonly entries: readonly Kept[] }

const OTHER_CONTENT =
  'Another entry is kept under this id, with other content. Log a new entry; to change one, log a correction that names it.'

/**
 * Keeps the entries of one sending, late or out of order as they may be: journal first, then the database, then the
 * answer. `sent` is what the sender's clock said. An entry that came before is answered as it was then; one that does not
 * read, or that the sender may not log, is refused by itself.
 */
export async function appendLog(
  shootId: string,
  sent: Instant,
  documents: readonly unknown[],
  faultsOf: (entry: EntryDocument) => readonly Problem[] = () => [],
): Promise<Sending> {
  await requireShoot(shootId)
  const read = documents.map((document) => readOne(document, faultsOf))
  const wanted = read.filter((one): one is EntryDocument & { id: string } => !('problems' in one))
  return inTurn(async () => {
    const received = Date.now() as Instant
    const { known, next } = await knownLines(
      shootId,
      wanted.map(({ id }) => id),
    )
    const fresh = new Map<string, KeptLine>()
    for (const document of wanted) {
      const twice = known.has(document.id) || fresh.has(document.id)
      if (!twice) fresh.set(document.id, { position: next + fresh.size, received, sent, document })
    }
    await keep(shootId, [...fresh.values()])
    return { received, entries: read.map((one, i) => becameOf(one, i, { known, fresh })) }
  })
}

type Refused = { readonly id: string | null; readonly problems: readonly Problem[] }
function readOne(
  document: unknown,
  faultsOf: (entry: EntryDocument) => readonly Problem[],
): (EntryDocument & { id: string }) | Refused {
  const read = readEntry(document)
  const problems = read.ok ? faultsOf(document as EntryDocument) : read.problems
  if (problems.length === 0) return document as EntryDocument & { id: string }
  const { id } = (document ?? {}) as { id?: unknown }
  return { id: typeof id === 'string' ? id : null, problems }
}

async function knownLines(shootId: string, ids: readonly string[]) {
  const { prisma } = await database()
  const where = { shootId, entryId: { in: [...ids] } }
  const rows = await prisma.logLine.findMany({ where, select: { entryId: true, position: true, document: true } })
  const last = await prisma.logLine.aggregate({ where: { shootId }, _max: { position: true } })
  return { known: new Map(rows.map((row) => [row.entryId, row])), next: (last._max.position ?? 0) + 1 }
}

async function keep(shootId: string, lines: readonly KeptLine[]): Promise<void> {
  if (lines.length === 0) return
  const { prisma, folder } = await database()
  const takeBack = await appendToLogJournal(folder, shootId, lines).catch((fault: Error) => {
    throw new BorderError('disk-refused', {
      sentence: `The disk did not take the entries (${fault.message}); they were not kept. Send them again.`,
    })
  })
  try {
    await writeLines(prisma, shootId, lines)
  } catch (fault) {
    await takeBack()
    throw fault
  }
  tellListeners(shootId, lines)
}

interface Lines {
  readonly known: ReadonlyMap<string, { readonly position: number; readonly document: unknown }>
  readonly fresh: ReadonlyMap<string, KeptLine>
}
function becameOf(one: (EntryDocument & { id: string }) | Refused, i: number, { known, fresh }: Lines): Kept {
  if ('problems' in one) {
    const { id, problems } = one as Refused
    return { id, became: 'refused', problems: problems.map((p) => ({ ...p, pointer: `/entries/${i}${p.pointer}` })) }
  }
  const earlier = known.get(one.id)
  const line = earlier ?? (fresh.get(one.id) as KeptLine)
  if (!sameDocument(line.document as EntryDocument, one))
    return { id: one.id, became: 'refused', problems: [{ pointer: `/entries/${i}/id`, sentence: OTHER_CONTENT }] }
  return { id: one.id, became: earlier ? 'known' : 'kept', position: line.position }
}
