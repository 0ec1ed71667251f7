import 'server-only'
import { BorderError } from './border-error'
import { loadShoot, loadSteps } from './load-shoot'
import { nextUndo, type SavedShoot } from './saved-shoot'
import { alreadyDone, inTurn, keepVersion, requireWriteId } from './write-version'

/** Takes the last change back by saving the document before it as a new version; nothing is deleted. */
export async function undoShoot(id: string, writeId: string): Promise<SavedShoot> {
  requireWriteId(writeId)
  return inTurn(async () => {
    const done = await alreadyDone(id, writeId)
    if (done) return done
    const current = await loadShoot(id)
    if (!current) throw new BorderError('not-found')
    const undo = nextUndo(await loadSteps(id), current.version)
    const before = undo && (await loadShoot(id, undo.to))
    if (!undo || !before) throw new BorderError('nothing-to-undo')
    const { document } = before
    return keepVersion({ shootId: id, version: current.version + 1, writeId, document, undoOf: undo.undoOf })
  })
}
