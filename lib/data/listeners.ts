import 'server-only'
import type { KeptLine } from './log-journal'

/** Called with every line that was kept, in order of position; must not throw and must not wait. */
export type Listener = (lines: readonly KeptLine[]) => void

/** Next loads this file once per bundle; those who write and those who listen may sit in different ones. */
const shared = globalThis as { emberslateListeners?: Map<string, Set<Listener>> }
const listeners = () => {
  shared.emberslateListeners ??= new Map()
  return shared.emberslateListeners
}

/** Hears the lines of a shoot from now on; returns how to stop. */
export function listen(shootId: string, listener: Listener): () => void {
  const all = listeners()
  const own = all.get(shootId) ?? new Set()
  all.set(shootId, own.add(listener))
  return () => {
    own.delete(listener)
    if (own.size === 0 && all.get(shootId) === own) all.delete(shootId)
  }
}

export function tellListeners(shootId: string, lines: readonly KeptLine[]): void {
  for (const listener of listeners().get(shootId) ?? []) listener(lines)
}
export const listenerCount = (shootId: string) => listeners().get(shootId)?.size ?? 0
