import 'server-only'
import type { ShootDocument } from '../plan/shoot'
import { BorderError } from './border-error'
import type { Tx } from './client'
import { appendToJournal, type JournalEntry } from './folder/journal'
import { journalFirst } from './folder/journal-first'
import { writeVersion } from './folder/put-back'
import { loadShoot } from './load-shoot'
import type { SavedShoot } from './saved-shoot'
import { notify } from './server/bus'

const WRITE_ID = /^[A-Za-z0-9_-]{8,64}$/

export function requireWriteId(writeId: string) {
  if (!WRITE_ID.test(writeId)) throw new BorderError('write-id-missing', { pointer: '/writeId' })
}

/** What an earlier sending of the same write made, if there was one. */
export async function alreadyDone(tx: Tx, shootId: string, writeId: string): Promise<SavedShoot | undefined> {
  const row = await tx.shootVersion.findUnique({
    where: { shootId_writeId: { shootId, writeId } },
    select: { version: true },
  })
  return row ? loadShoot(shootId, row.version, tx) : undefined
}

type NewVersion = { shootId: string; version: number; writeId: string; document: ShootDocument; undoOf?: number }

/** Keeps the next version of a shoot; to be called in its turn. */
export async function keepVersion(tx: Tx, next: NewVersion): Promise<SavedShoot> {
  const entry: JournalEntry = { ...next, at: Date.now() }
  await journalFirst(
    (folder) => appendToJournal(folder, next.shootId, [entry]),
    (why) => `The disk did not take the change (${why}); it was not saved.`,
    () => writeVersion(tx, entry),
  )
  await notify({ on: 'version', shoot: next.shootId, version: next.version }, tx)
  return (await loadShoot(next.shootId, next.version, tx)) as SavedShoot
}
