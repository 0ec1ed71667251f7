import 'server-only'
import { KINDS } from '../../log/entry'
import type { Tx } from '../client'
import type { PrismaClient } from '../generated/client'
import { faultNotes } from './journal-notes'
import { appendToLogJournal, type KeptLine, type LogJournal, readLogJournals } from './log-journal'

/** So many lines go in one statement: they are one parameter, which must fit in memory a few times over. */
const ROWS = 5000

/** Makes database and log journals tell the same story at start-up, as `putBack` does for versions. */
export async function putBackLogs(prisma: PrismaClient, folder: string): Promise<readonly string[]> {
  const journals = await readLogJournals(folder)
  const shoots = new Set((await prisma.shoot.findMany({ select: { id: true } })).map(({ id }) => id))
  const notes: string[] = []
  for (const journal of journals) {
    if (shoots.has(journal.shootId)) notes.push(...(await fillDatabase(prisma, journal)))
    else notes.push(`The slate log of shoot ${journal.shootId} stays in its journal: there is no such shoot here.`)
  }
  for (const shootId of shoots) {
    const written = journals.find((one) => one.shootId === shootId)?.lines ?? []
    await fillJournal(prisma, folder, shootId, new Set(written.map(({ document }) => document.id)))
  }
  return notes
}

async function fillDatabase(prisma: PrismaClient, journal: LogJournal): Promise<readonly string[]> {
  const { shootId, lines } = journal
  const rows = await prisma.logLine.findMany({ where: { shootId }, select: { entryId: true, position: true } })
  const known = new Set(rows.map(({ entryId }) => entryId))
  const lacking = [...new Map(lines.map((line) => [line.document.id, line])).values()].filter(
    ({ document }) => !known.has(document.id),
  )
  await writeLines(prisma, shootId, apart(lacking, new Set(rows.map(({ position }) => position))))
  const notes = [...faultNotes(journal), ...strangeKinds(journal)]
  if (lacking.length > 0) notes.push(`Put back ${lacking.length} log line(s) of shoot ${shootId} from its journal.`)
  return notes
}

/** Two lines may claim one position where the disk did not take one of them back: one of them goes to the end. */
function apart(lines: readonly KeptLine[], taken: Set<number>): readonly KeptLine[] {
  const twice: KeptLine[] = []
  const first = lines.filter((line) => {
    const isFree = !taken.has(line.position)
    taken.add(line.position)
    if (!isFree) twice.push(line)
    return isFree
  })
  let last = 0
  for (const position of taken) last = Math.max(last, position)
  return [...first, ...twice.map((line, i) => ({ ...line, position: last + 1 + i }))]
}

/** Lines of kinds that only a newer version knows are kept, and no page here shows them. */
function strangeKinds({ shootId, lines }: LogJournal): readonly string[] {
  const strange = lines.filter(({ document }) => !KINDS.includes(String(document.kind)))
  if (strange.length === 0) return []
  const kinds = [...new Set(strange.map(({ document }) => String(document.kind)))].slice(0, 5).join(', ')
  return [
    `The slate log of shoot ${shootId} has ${strange.length} line(s) of a kind that this Emberslate does not know (${kinds}). They are kept; a newer version shows them.`,
  ]
}

async function fillJournal(prisma: PrismaClient, folder: string, shootId: string, written: ReadonlySet<string>) {
  const kept = await prisma.logLine.count({ where: { shootId } })
  if (kept <= written.size) return
  const rows = await prisma.logLine.findMany({ where: { shootId }, orderBy: { position: 'asc' } })
  const lacking = rows.filter(({ entryId }) => !written.has(entryId)).map(toLine)
  if (lacking.length > 0) await appendToLogJournal(folder, shootId, lacking)
}

type Row = { position: number; document: unknown; received: Date; sent: Date }
export const toLine = ({ position, document, received, sent }: Row): KeptLine => ({
  position,
  received: received.getTime(),
  sent: sent.getTime(),
  document: document as KeptLine['document'],
})

/** Adds lines to the database in pieces, each of them whole or not at all; a sending is one piece. */
export async function writeLines(tx: Tx, shootId: string, lines: readonly KeptLine[]): Promise<void> {
  for (let at = 0; at < lines.length; at += ROWS) {
    const rows = lines.slice(at, at + ROWS).map(({ position, document, received, sent }) => ({
      position,
      entryId: document.id,
      document,
      received: new Date(received).toISOString(),
      sent: new Date(sent).toISOString(),
    }))
    await tx.$executeRaw`
      INSERT INTO "LogLine" ("shootId", "position", "entryId", "document", "received", "sent")
      SELECT ${shootId}, * FROM json_to_recordset(${JSON.stringify(rows)}::json)
      AS line("position" int, "entryId" text, "document" json, "received" timestamptz, "sent" timestamptz)`
  }
}
