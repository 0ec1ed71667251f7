import 'server-only'
import { createHash } from 'node:crypto'
import { parseShoot } from '../plan/parse'
import type { ShootDocument } from '../plan/shoot'
import type { Result } from '../refusals'
import type { SavedShoot } from './saved-shoot'
import { inTurn } from './turns'
import { alreadyDone, keepVersion, requireWriteId } from './write-version'

/** The id follows from the write id, so that a creation sent twice makes one shoot. */
export const shootIdFrom = (writeId: string) => createHash('sha256').update(writeId).digest('hex').slice(0, 12)

/** Saves a new shoot; a document that does not read comes back as its problems and nothing is stored. */
export async function createShoot(document: unknown, writeId: string): Promise<Result<SavedShoot>> {
  requireWriteId(writeId)
  const read = parseShoot(document)
  if (!read.ok) return read
  const shootId = shootIdFrom(writeId)
  const value = await inTurn(
    shootId,
    async (tx) =>
      (await alreadyDone(tx, shootId, writeId)) ??
      keepVersion(tx, { shootId, version: 1, writeId, document: document as ShootDocument }),
  )
  return { ok: true, value }
}
