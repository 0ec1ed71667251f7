import 'server-only'
import { type FileHandle, mkdir, open, readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'

const ENTRY = z.object({
  shootId: z.string(),
  version: z.number().int().min(1),
  writeId: z.string(),
  at: z.number(),
  undoOf: z.number().int().optional(),
  document: z.record(z.string(), z.unknown()),
})
/** One saved version, as one line of the journal. `at` is milliseconds since the epoch. */
export type JournalEntry = z.output<typeof ENTRY>

const folderIn = (data: string) => path.join(data, 'journal')
const fileOf = (data: string, shootId: string) => path.join(folderIn(data), `${shootId}.ndjson`)
const NEWLINE = 0x0a

async function lacksNewline(file: FileHandle, size: number) {
  if (size === 0) return false
  const { buffer } = await file.read(Buffer.alloc(1), 0, 1, size - 1)
  return buffer[0] !== NEWLINE
}

async function syncFolder(folder: string) {
  const handle = await open(folder, 'r')
  await handle.sync().finally(() => handle.close())
}

/**
 * Puts entries on the disk for good, before anybody is told that they are saved: the database itself never calls fsync.
 * A write that fails half way (a full disk) leaves the file as it was. Returns a function that takes the lines back.
 */
export async function appendToJournal(data: string, shootId: string, entries: readonly JournalEntry[]) {
  await mkdir(folderIn(data), { recursive: true })
  const file = await open(fileOf(data, shootId), 'a+')
  const { size } = await file.stat()
  try {
    // A line that a power cut left half written must not swallow the next one.
    const start = (await lacksNewline(file, size)) ? '\n' : ''
    await file.appendFile(start + entries.map((entry) => `${JSON.stringify(entry)}\n`).join(''))
    await file.datasync()
    if (size === 0) await syncFolder(folderIn(data))
  } catch (fault) {
    await file.truncate(size).catch(() => undefined)
    throw fault
  } finally {
    await file.close()
  }
  return async () => {
    const again = await open(fileOf(data, shootId), 'r+')
    await again.truncate(size).finally(() => again.close())
  }
}

export type Journal = { readonly shootId: string; readonly entries: readonly JournalEntry[]; readonly unread: number }

function readLine(line: string): JournalEntry | undefined {
  try {
    return ENTRY.safeParse(JSON.parse(line)).data
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
