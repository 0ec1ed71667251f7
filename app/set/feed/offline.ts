/** What a page asks of the service worker: to keep these for when there is no network. */
export interface KeepThese {
  readonly keep: readonly string[]
}

/** So that the board opens again without a network: over TLS or on this computer, where browsers allow it. */
export async function keepForOffline(shootId: string): Promise<void> {
  if (!window.isSecureContext || !('serviceWorker' in navigator)) return
  await navigator.serviceWorker.register('/sw.js').catch((fault) => console.warn('No service worker:', fault))
  const { active } = await navigator.serviceWorker.ready
  // What was loaded before the service worker stood between is not kept yet.
  const loaded = performance
    .getEntriesByType('resource')
    .map(({ name }) => new URL(name))
    .filter(({ origin, pathname }) => origin === location.origin && pathname.startsWith('/_next/static/'))
    .map(({ pathname }) => pathname)
  const pages = [location.pathname, `/shoots/${shootId}/set`, `/shoots/${shootId}/card`]
  active?.postMessage({ keep: [...new Set([...pages, ...loaded])] } satisfies KeepThese)
}
