import 'server-only'
import { readdir, readFile, rename } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import { appendSynced } from './append-synced'

export const LOG_LINE = z.object({
  position: z.number().int().min(1),
  received: z.number(),
  sent: z.number(),
  document: z.looseObject({ id: z.string() }),
})
/** A line of a shoot's slate log as it is kept: `position` counts them as they came in; times are milliseconds. */
export type KeptLine = z.output<typeof LOG_LINE>

const folderIn = (data: string) => path.join(data, 'log')
const fileOf = (data: string, shootId: string) => path.join(folderIn(data), `${shootId}.ndjson`)

/** Puts lines on the disk for good; returns a function that takes them back. */
export const appendToLogJournal = (data: string, shootId: string, lines: readonly KeptLine[]) =>
  appendSynced(
    fileOf(data, shootId),
    lines.map((line) => JSON.stringify(line)),
  )

/** A log that belongs to no shoot here, left by an archive that was cut off on its way in, makes room; it is not deleted. */
export async function setLogAside(data: string, shootId: string) {
  const file = fileOf(data, shootId)
  await rename(file, `${file}.aside-${Date.now()}`).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'ENOENT') throw fault
  })
}

export type LogJournal = { readonly shootId: string; readonly lines: readonly KeptLine[]; readonly unread: number }

function readLine(text: string): KeptLine | undefined {
  try {
    return LOG_LINE.safeParse(JSON.parse(text)).data
  } catch {
    return undefined
  }
}

/** Every slate log beside the database; `unread` counts lines that were cut off and so never confirmed. */
export async function readLogJournals(data: string): Promise<readonly LogJournal[]> {
  const names = await readdir(folderIn(data)).catch(() => [] as string[])
  const files = names.filter((name) => name.endsWith('.ndjson')).sort()
  return Promise.all(
    files.map(async (name) => {
      const texts = (await readFile(path.join(folderIn(data), name), 'utf8')).split('\n').filter((line) => line !== '')
      const lines = texts.map(readLine).filter((line) => line !== undefined)
      return { shootId: name.slice(0, -'.ndjson'.length), lines, unread: texts.length - lines.length }
    }),
  )
}
