import 'server-only'
import type { Prisma, PrismaClient } from './generated/client'
import { appendToJournal, type Journal, type JournalEntry, readJournals } from './journal'

/**
 * Makes database and journals tell the same story at start-up: the database gets the versions it lacks, and a journal that
 * lacks versions (somebody removed it) gets them from the database. Returns a sentence for each thing mended.
 */
export async function putBack(prisma: PrismaClient, folder: string): Promise<readonly string[]> {
  const journals = await readJournals(folder)
  const notes: string[] = []
  for (const journal of journals) notes.push(...(await fillDatabase(prisma, journal)))
  for (const shoot of await prisma.shoot.findMany({ select: { id: true } })) {
    const journal = journals.find((one) => one.shootId === shoot.id)
    await fillJournal(prisma, folder, shoot.id, journal?.entries ?? [])
  }
  return notes
}

async function fillDatabase(prisma: PrismaClient, journal: Journal): Promise<readonly string[]> {
  const { shootId } = journal
  const rows = await prisma.shootVersion.findMany({ where: { shootId }, select: { version: true } })
  const known = new Set(rows.map((row) => row.version))
  const lacking = journal.entries.filter((entry) => !known.has(entry.version))
  for (const entry of lacking) await writeVersion(prisma, entry)
  const notes: string[] = []
  if (lacking.length > 0)
    notes.push(`Put back ${lacking.length} saved version(s) of shoot ${shootId} from its journal.`)
  if (journal.unread > 0)
    notes.push(
      `Skipped ${journal.unread} half-written line(s) in the journal of shoot ${shootId}; they were never confirmed.`,
    )
  return notes
}

async function fillJournal(prisma: PrismaClient, folder: string, shootId: string, entries: readonly JournalEntry[]) {
  const written = entries.map((entry) => entry.version)
  const rows = await prisma.shootVersion.findMany({
    where: { shootId, version: { notIn: written } },
    orderBy: { version: 'asc' },
  })
  if (rows.length === 0) return
  const lines = rows.map((row) => ({
    shootId,
    version: row.version,
    writeId: row.writeId,
    at: row.at.getTime(),
    ...(row.undoOf === null ? {} : { undoOf: row.undoOf }),
    document: row.document as JournalEntry['document'],
  }))
  await appendToJournal(folder, shootId, lines)
}

/** Adds one version and makes it current if it is the newest. */
export async function writeVersion(prisma: PrismaClient, entry: JournalEntry): Promise<void> {
  const { shootId, version, writeId, undoOf } = entry
  const document = entry.document as Prisma.InputJsonObject
  const face = { title: String(entry.document.title), date: String(entry.document.date), version }
  await prisma.$transaction(async (tx) => {
    await tx.shoot.upsert({ where: { id: shootId }, create: { id: shootId, ...face }, update: {} })
    await tx.shootVersion.create({ data: { shootId, version, writeId, undoOf, document, at: new Date(entry.at) } })
    await tx.shoot.updateMany({ where: { id: shootId, version: { lt: version } }, data: face })
  })
}
