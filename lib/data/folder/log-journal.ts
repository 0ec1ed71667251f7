import 'server-only'
import { rename } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import { appendSynced } from './append-synced'
import { requireFolder } from './disk-room'
import { type JournalFile, readJournalFiles } from './journal-lines'
import { summedLine } from './summed-line'

export const LOG_LINE = z.object({
  position: z.number().int().min(1),
  received: z.number(),
  sent: z.number(),
  document: z.looseObject({ id: z.string() }),
})
/** A line of a shoot's slate log as it is kept: `position` counts them as they came in; times are milliseconds. */
export type KeptLine = z.output<typeof LOG_LINE>
export type LogJournal = JournalFile<KeptLine>

const FOLDER = 'log'
const fileOf = (data: string, shootId: string) => path.join(data, FOLDER, `${shootId}.ndjson`)

/** Puts lines on the disk for good; returns a function that takes them back. */
export async function appendToLogJournal(data: string, shootId: string, lines: readonly KeptLine[]) {
  await requireFolder(data)
  return appendSynced(fileOf(data, shootId), lines.map(summedLine))
}

/** A log that belongs to no shoot here, left by an archive that was cut off on its way in, makes room; it is not deleted. */
export async function setLogAside(data: string, shootId: string) {
  const file = fileOf(data, shootId)
  await rename(file, `${file}.aside-${Date.now()}`).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'ENOENT') throw fault
  })
}

/** Every slate log beside the database. */
export const readLogJournals = (data: string) => readJournalFiles(data, FOLDER, LOG_LINE)
