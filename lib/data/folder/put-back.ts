import 'server-only'
import type { Tx } from '../client'
import type { PrismaClient } from '../generated/client'
import { appendToJournal, type Journal, type JournalEntry, readJournals } from './journal'
import { faultNotes, gapsIn } from './journal-notes'

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
    await fillJournal(prisma, folder, shoot.id, journal?.lines ?? [])
  }
  return notes
}

async function fillDatabase(prisma: PrismaClient, journal: Journal): Promise<readonly string[]> {
  const { shootId, lines, faults } = journal
  const rows = await prisma.shootVersion.findMany({ where: { shootId }, select: { version: true } })
  const known = new Set(rows.map((row) => row.version))
  // Of two lines for one version the first was never confirmed: its database refused it, and the disk to take it back.
  const lacking = [...new Map(lines.map((line) => [line.version, line])).values()].filter(
    ({ version }) => !known.has(version),
  )
  for (const entry of lacking) await writeVersion(prisma, entry)
  const notes = [...faultNotes(journal)]
  if (lacking.length > 0)
    notes.push(`Put back ${lacking.length} saved version(s) of shoot ${shootId} from its journal.`)
  const lost = faults.length > 0 ? gapsIn(new Set([...known, ...lacking.map(({ version }) => version)])) : []
  if (lost.length > 0)
    notes.push(
      `Version ${lost.join(', ')} of shoot ${shootId} is in no file that reads. Every other version is there; a backup may have it.`,
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

/** Adds one version and makes it current if it is the newest; one statement, so that all of it is kept or nothing. */
export async function writeVersion(tx: Tx, entry: JournalEntry): Promise<void> {
  const { shootId, version, writeId, undoOf = null, document, at } = entry
  const [title, date, now] = [String(document.title), String(document.date), new Date()]
  await tx.$executeRaw`
    WITH face AS (
      INSERT INTO "Shoot" ("id", "title", "date", "version", "createdAt", "updatedAt")
      VALUES (${shootId}, ${title}, ${date}, ${version}, ${now}, ${now})
      ON CONFLICT ("id") DO UPDATE
      SET "title" = excluded."title", "date" = excluded."date", "version" = excluded."version", "updatedAt" = excluded."updatedAt"
      WHERE "Shoot"."version" < excluded."version"
    )
    INSERT INTO "ShootVersion" ("shootId", "version", "writeId", "undoOf", "document", "at")
    VALUES (${shootId}, ${version}, ${writeId}, ${undoOf}, ${JSON.stringify(document)}::json, ${new Date(at)})`
}
