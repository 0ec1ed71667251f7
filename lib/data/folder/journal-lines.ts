import 'server-only'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import type { z } from 'zod'
import { unreadable } from './disk-words'
import { readSummed } from './summed-line'

/** A line that is not as it should be, by its number in its file. */
export interface LineFault {
  readonly line: number
  /** Cut off by a power cut and so never confirmed; changed on the disk since; or with keys that are not known here. */
  readonly is: 'cut-off' | 'damaged' | 'newer'
  readonly keys?: readonly string[]
}
export interface JournalFile<T> {
  readonly shootId: string
  /** By its place in the data folder. */
  readonly file: string
  readonly lines: readonly T[]
  readonly faults: readonly LineFault[]
}

const ENDING = '.ndjson'
const nothingThere = (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'ENOENT') throw fault
}

/** Every journal in a folder beside the database, in order of names. One that may not be read is never taken for empty. */
export async function readJournalFiles<T>(
  data: string,
  folder: string,
  schema: z.ZodObject & z.ZodType<T>,
): Promise<readonly JournalFile<T>[]> {
  const within = path.join(data, folder)
  const all = await readdir(within)
    .catch(nothingThere)
    .catch((fault) => {
      throw unreadable(within, fault)
    })
  const names = (all ?? []).filter((name) => name.endsWith(ENDING)).sort()
  return Promise.all(
    names.map(async (name) => {
      const text = await readFile(path.join(within, name), 'utf8').catch((fault) => {
        throw unreadable(path.join(within, name), fault)
      })
      return { shootId: name.slice(0, -ENDING.length), file: `${folder}/${name}`, ...readAll(text, schema) }
    }),
  )
}

function readAll<T>(text: string, schema: z.ZodObject & z.ZodType<T>) {
  const known = new Set(Object.keys(schema.shape))
  const texts = text.split('\n')
  const lines: T[] = []
  const faults: LineFault[] = []
  for (const [i, one] of texts.entries()) {
    if (one === '') continue
    const value = readSummed(one)
    const { data } = schema.safeParse(value)
    if (data === undefined) {
      faults.push({ line: i + 1, is: wasWhole(one, i < texts.length - 1) ? 'damaged' : 'cut-off' })
      continue
    }
    lines.push(data)
    const keys = Object.keys(value as object).filter((key) => !known.has(key))
    if (keys.length > 0) faults.push({ line: i + 1, is: 'newer', keys })
  }
  return { lines, faults }
}

/** A line that was written to its end has a brace there, or most of its sum; whatever is the last of its file may not. */
const wasWhole = (line: string, isEnded: boolean) => isEnded && (line.endsWith('}') || /"sum":/.test(line.slice(-24)))
