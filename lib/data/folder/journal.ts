import 'server-only'
import path from 'node:path'
import { z } from 'zod'
import { appendSynced } from './append-synced'
import { requireFolder } from './disk-room'
import { type JournalFile, readJournalFiles } from './journal-lines'
import { summedLine } from './summed-line'

/** A line of a shoot's journal. */
export const VERSION_LINE = z.object({
  shootId: z.string(),
  version: z.number().int().min(1),
  writeId: z.string(),
  at: z.number(),
  undoOf: z.number().int().optional(),
  document: z.record(z.string(), z.unknown()),
})
/** One saved version, as one line of the journal. `at` is milliseconds since the epoch. */
export type JournalEntry = z.output<typeof VERSION_LINE>
export type Journal = JournalFile<JournalEntry>

const FOLDER = 'journal'

/** Puts entries on the disk for good; returns a function that takes them back. */
export async function appendToJournal(data: string, shootId: string, entries: readonly JournalEntry[]) {
  await requireFolder(data)
  return appendSynced(path.join(data, FOLDER, `${shootId}.ndjson`), entries.map(summedLine))
}

/** Every journal beside the database. */
export const readJournals = (data: string) => readJournalFiles(data, FOLDER, VERSION_LINE)
