/** Only a secure origin has them. */
const has = () => typeof Notification !== 'undefined' && window.isSecureContext

const mayNotify = () => has() && Notification.permission === 'granted'

/** Asked in a tap, as browsers want it. */
export async function askToNotify(): Promise<boolean> {
  if (!has()) return false
  return (await Notification.requestPermission().catch(() => 'denied')) === 'granted'
}

export async function showNotification(title: string, body: string, tag: string, aloud: boolean): Promise<void> {
  if (!mayNotify()) return
  const options = { body, tag, silent: !aloud, icon: '/icons/icon-192.png' }
  const worker = await navigator.serviceWorker?.getRegistration().catch(() => undefined)
  // Phones show only those of a service worker.
  if (worker) await worker.showNotification(title, options).catch(() => {})
  else new Notification(title, options)
}
