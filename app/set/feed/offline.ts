/** What a page asks of the service worker: to keep these for when there is no network. */
export interface KeepThese {
  readonly keep: readonly string[]
}

/** So long the first page waits for the service worker to stand between it and the network. */
const TAKES_OVER_WITHIN_MS = 5000

/** So that the board opens again without a network: over TLS or on this computer, where browsers allow it. */
export const keepForOffline = (shootId: string) =>
  keepPages([
    location.pathname,
    `/shoots/${shootId}/set`,
    `/shoots/${shootId}/set/continuity`,
    `/shoots/${shootId}/card`,
    '/help/run-a-day',
  ])

/** These pages and what they loaded; whether something stands between this page and the network that keeps them. */
export async function keepPages(pages: readonly string[]): Promise<boolean> {
  if (!window.isSecureContext || !('serviceWorker' in navigator)) return false
  const registered = await navigator.serviceWorker.register('/sw.js').catch((fault) => {
    console.warn('No service worker:', fault)
    return null
  })
  if (!registered) return false
  const worker = await takenOver()
  worker?.postMessage({ keep: [...new Set([...pages, ...filesLoaded()])] } satisfies KeepThese)
  return worker !== null
}

function takenOver(): Promise<ServiceWorker | null> {
  const { serviceWorker } = navigator
  if (serviceWorker.controller) return Promise.resolve(serviceWorker.controller)
  return new Promise((resolve) => {
    const take = () => resolve(serviceWorker.controller)
    serviceWorker.addEventListener('controllerchange', take, { once: true })
    setTimeout(take, TAKES_OVER_WITHIN_MS)
  })
}

/** What was loaded before the service worker stood between is not kept yet. */
function filesLoaded(): string[] {
  return performance
    .getEntriesByType('resource')
    .map(({ name }) => new URL(name))
    .filter(({ origin, pathname }) => origin === location.origin && pathname.startsWith('/_next/static/'))
    .map(({ pathname }) => pathname)
}
