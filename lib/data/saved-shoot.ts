import type { ShootDocument } from '../plan/shoot'
import type { Instant } from '../units'

/** A shoot as it stands. `document` is what the person wrote, to the letter. */
export type SavedShoot = {
  readonly id: string
  readonly version: number
  readonly document: ShootDocument
  readonly canUndo: boolean
  readonly savedAt: Instant
}

/** A version in the history: an undo names the version that it took back. */
export type Step = { readonly version: number; readonly undoOf: number | null }

/** The version whose document `version` shows: itself, or what an undo went back to. */
function shownBy(steps: ReadonlyMap<number, Step>, version: number): number {
  let shown = version
  for (let undo = steps.get(shown)?.undoOf; undo != null; undo = steps.get(shown)?.undoOf) shown = undo - 1
  return shown
}

/** The change that the next undo takes back, and the version it goes back to; nothing if the first version is shown. */
export function nextUndo(steps: ReadonlyMap<number, Step>, current: number) {
  const undoOf = shownBy(steps, current)
  return undoOf === 1 ? undefined : { undoOf, to: shownBy(steps, undoOf - 1) }
}
