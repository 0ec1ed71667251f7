import 'server-only'
import { parseShoot } from '../plan/parse'
import type { ShootDocument } from '../plan/shoot'
import type { Result } from '../refusals'
import { BorderError } from './border-error'
import { loadShoot } from './load-shoot'
import type { SavedShoot } from './saved-shoot'
import { inTurn } from './turns'
import { alreadyDone, keepVersion, requireWriteId } from './write-version'

/**
 * Saves a changed document as the next version. A document that does not read comes back as its problems.
 * `baseVersion` is the version the change was made on: if that is no longer the newest, the save is refused as stale.
 */
export async function saveShoot(
  id: string,
  document: unknown,
  writeId: string,
  baseVersion?: number,
): Promise<Result<SavedShoot>> {
  requireWriteId(writeId)
  const read = parseShoot(document)
  if (!read.ok) return read
  const value = await inTurn(id, async (tx) => {
    const done = await alreadyDone(tx, id, writeId)
    if (done) return done
    const current = await loadShoot(id, undefined, tx)
    if (!current) throw new BorderError('not-found')
    if (baseVersion !== undefined && baseVersion !== current.version)
      throw new BorderError('stale', { pointer: '/baseVersion', version: current.version })
    return keepVersion(tx, { shootId: id, version: current.version + 1, writeId, document: document as ShootDocument })
  })
  return { ok: true, value }
}
