import 'server-only'
import { readdir, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import type { z } from 'zod'
import { eraseFromEntry } from '../../log/erase-from-log'
import { type Erasure, eraseFromShoot, erasureOf } from '../../plan/erase-person'
import { closeDatabase, database } from '../client'
import { type JournalEntry, VERSION_LINE } from '../folder/journal'
import { lockFolder } from '../folder/lock'
import { LOG_LINE } from '../folder/log-journal'
import { rewriteFile } from '../folder/rewrite-file'
import { readSummed, summedLine } from '../folder/summed-line'
import { eraseTold } from './erase-told'
import type { Erasing } from './erasing'

const AWAY = 'pg-erased'

/**
 * The journals are rewritten, and the database is made anew from them: changed in place, its files would keep the old rows
 * for long. Every step may be cut off; begun again, it comes to the same.
 */
export async function eraseInFolder(folder: string, erasing: Erasing, reached: (step: string) => void): Promise<void> {
  const erasure = erasureOf(erasing.plan)
  // Opening it has put into the journals whatever they lacked; from here on nobody writes to them.
  await closeDatabase()
  const unlock = await lockFolder(folder)
  try {
    await rewriteFile(path.join(folder, 'journal', `${erasing.shoot}.ndjson`), (lines) =>
      versionsOf(lines, erasing, erasure),
    )
    reached('journal')
    for (const name of await namesIn(path.join(folder, 'log'), `${erasing.shoot}.ndjson`))
      await rewriteFile(path.join(folder, 'log', name), (lines) => loggedOf(lines, erasure))
    reached('log')
    await rewriteFile(path.join(folder, 'forecasts', `${erasing.shoot}.ndjson`), (lines) =>
      lines.map((line) => eraseTold(line, erasure)),
    )
    reached('forecasts')
    // Databases that did not open and were moved aside hold the old rows too; so does one of an erasure that was cut off,
    // which must not keep this one in its place.
    const removeAside = async () => {
      for (const name of await namesIn(folder, 'pg-'))
        await rm(path.join(folder, name), { recursive: true, force: true })
    }
    await removeAside()
    await rename(path.join(folder, 'pg'), path.join(folder, AWAY)).catch(nothingThere)
    reached('database aside')
    await removeAside()
    reached('database away')
  } finally {
    unlock()
  }
  await database()
}

const nothingThere = (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'ENOENT') throw fault
}
async function namesIn(folder: string, begin: string): Promise<readonly string[]> {
  const names = await readdir(folder).catch(() => [] as string[])
  return names.filter((name) => name.startsWith(begin))
}

/** A line that a power cut left half written was never confirmed, and may name them: it goes. */
function readLines<T>(lines: readonly string[], schema: z.ZodType<T>): readonly T[] {
  return lines.flatMap((line) => {
    const value = readSummed(line)
    // Kept with keys that only a newer version knows.
    return schema.safeParse(value).success ? [value as T] : []
  })
}

function versionsOf(lines: readonly string[], { shoot, writeId, at }: Erasing, erasure: Erasure): readonly string[] {
  const erased = readLines(lines, VERSION_LINE).map((one) => ({
    ...one,
    document: eraseFromShoot(one.document, erasure).document,
  }))
  const newest = erased.reduce<JournalEntry | undefined>((a, b) => (a && a.version > b.version ? a : b), undefined)
  const said = erased.some((one) => one.writeId === writeId)
  if (newest && !said)
    erased.push({ shootId: shoot, version: newest.version + 1, writeId, at, document: newest.document })
  return erased.map(summedLine)
}
const loggedOf = (lines: readonly string[], erasure: Erasure): readonly string[] =>
  readLines(lines, LOG_LINE).map((one) =>
    summedLine({ ...one, document: eraseFromEntry(one.document, erasure).document }),
  )
