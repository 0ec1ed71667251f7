import 'server-only'

/** Called when a version of the shoot was saved; must not throw and must not wait. */
export type VersionListener = (version: number) => void

/** One for the process, whichever of Next's bundles it is loaded in. */
const shared = globalThis as { emberslateVersionListeners?: Map<string, Set<VersionListener>> }
const listeners = () => {
  shared.emberslateVersionListeners ??= new Map()
  return shared.emberslateVersionListeners
}

/** Hears of the versions of a shoot from now on; returns how to stop. */
export function listenForVersions(shootId: string, listener: VersionListener): () => void {
  const own = listeners().get(shootId) ?? new Set()
  listeners().set(shootId, own.add(listener))
  return () => {
    own.delete(listener)
    if (own.size === 0 && listeners().get(shootId) === own) listeners().delete(shootId)
  }
}
export function tellVersion(shootId: string, version: number): void {
  for (const listener of listeners().get(shootId) ?? []) listener(version)
}
