import 'server-only'
import { BorderError } from './border-error'
import { loadShoot, loadSteps } from './load-shoot'
import { nextUndo, type SavedShoot } from './saved-shoot'
import { inTurn } from './turns'
import { alreadyDone, keepVersion, requireWriteId } from './write-version'

/** Takes the last change back by saving the document before it as a new version; nothing is deleted. */
export async function undoShoot(id: string, writeId: string): Promise<SavedShoot> {
  requireWriteId(writeId)
  return inTurn(id, async (tx) => {
    const done = await alreadyDone(tx, id, writeId)
    if (done) return done
    const current = await loadShoot(id, undefined, tx)
    if (!current) throw new BorderError('not-found')
    const undo = nextUndo(await loadSteps(id, tx), current.version)
    const before = undo && (await loadShoot(id, undo.to, tx))
    if (!undo || !before) throw new BorderError('nothing-to-undo')
    const { document } = before
    return keepVersion(tx, { shootId: id, version: current.version + 1, writeId, document, undoOf: undo.undoOf })
  })
}
