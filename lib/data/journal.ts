import 'server-only'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import { appendSynced } from './append-synced'

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

const folderIn = (data: string) => path.join(data, 'journal')
const fileOf = (data: string, shootId: string) => path.join(folderIn(data), `${shootId}.ndjson`)

/** Puts entries on the disk for good; returns a function that takes them back. */
export const appendToJournal = (data: string, shootId: string, entries: readonly JournalEntry[]) =>
  appendSynced(
    fileOf(data, shootId),
    entries.map((entry) => JSON.stringify(entry)),
  )

export type Journal = { readonly shootId: string; readonly entries: readonly JournalEntry[]; readonly unread: number }

function readLine(line: string): JournalEntry | undefined {
  try {
    return VERSION_LINE.safeParse(JSON.parse(line)).data
  } catch {
    return undefined
  }
}

/** Every journal beside the database, in order of writing; `unread` counts lines that do not read (cut off by a power cut). */
export async function readJournals(data: string): Promise<readonly Journal[]> {
  const names = await readdir(folderIn(data)).catch(() => [] as string[])
  const files = names.filter((name) => name.endsWith('.ndjson')).sort()
  return Promise.all(
    files.map(async (name) => {
      const lines = (await readFile(path.join(folderIn(data), name), 'utf8')).split('\n').filter((line) => line !== '')
      const entries = lines.map(readLine).filter((entry) => entry !== undefined)
      return { shootId: name.slice(0, -'.ndjson'.length), entries, unread: lines.length - entries.length }
    }),
  )
}
