import 'server-only'
import type { ShootDocument } from '../plan/shoot'
import { BorderError } from './border-error'
import { database } from './client'
import { appendToJournal, type JournalEntry } from './journal'
import { loadShoot } from './load-shoot'
import { writeVersion } from './put-back'
import type { SavedShoot } from './saved-shoot'
import { tellVersion } from './version-listeners'

const WRITE_ID = /^[A-Za-z0-9_-]{8,64}$/
/** One queue for the process, whichever of Next's bundles a write comes through. */
const shared = globalThis as { emberslateTurn?: Promise<unknown> }

/** Writes wait for each other: a version number is read, journaled and stored before the next is read. */
export function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const turn = (shared.emberslateTurn ?? Promise.resolve()).then(work)
  shared.emberslateTurn = turn.catch(() => undefined)
  return turn
}

export function requireWriteId(writeId: string) {
  if (!WRITE_ID.test(writeId)) throw new BorderError('write-id-missing', { pointer: '/writeId' })
}

/** What an earlier sending of the same write made, if there was one. */
export async function alreadyDone(shootId: string, writeId: string): Promise<SavedShoot | undefined> {
  const { prisma } = await database()
  const row = await prisma.shootVersion.findUnique({ where: { shootId_writeId: { shootId, writeId } } })
  return row ? loadShoot(shootId, row.version) : undefined
}

type NewVersion = { shootId: string; version: number; writeId: string; document: ShootDocument; undoOf?: number }

/** Journal first, then the database, then the answer; if the database fails, the line is taken back and nothing was saved. */
export async function keepVersion(next: NewVersion): Promise<SavedShoot> {
  const { prisma, folder } = await database()
  const entry: JournalEntry = { ...next, at: Date.now() }
  const takeBack = await appendToJournal(folder, next.shootId, [entry]).catch((fault: Error) => {
    throw new BorderError('disk-refused', {
      sentence: `The disk did not take the change (${fault.message}); it was not saved.`,
    })
  })
  try {
    await writeVersion(prisma, entry)
  } catch (fault) {
    await takeBack()
    throw fault
  }
  tellVersion(next.shootId, next.version)
  return (await loadShoot(next.shootId, next.version)) as SavedShoot
}
