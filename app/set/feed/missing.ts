/** What a browser has of what a set screen would like. */
export interface Abilities {
  readonly isSecure: boolean
  readonly wakeLock: boolean
  readonly notifications: boolean
  readonly vibration: boolean
}

export const abilities = (): Abilities => ({
  isSecure: window.isSecureContext,
  wakeLock: 'wakeLock' in navigator,
  notifications: typeof Notification !== 'undefined' && window.isSecureContext,
  vibration: 'vibrate' in navigator,
})

const LOCKED = 'Keep this page open and the screen lit: a locked phone may tell you late.'

/** One sentence or two of what this device lacks and what to do about it; null where it lacks nothing. */
export function missingWords({ isSecure, wakeLock, notifications, vibration }: Abilities): string | null {
  if (!isSecure)
    return `Over plain http this board cannot keep the screen lit, be installed, reload without a network or notify you from outside. ${LOCKED}`
  const lacks = [
    ...(wakeLock ? [] : ['cannot keep the screen lit']),
    ...(notifications ? [] : ['cannot notify you from outside']),
    ...(vibration ? [] : ['does not shake']),
  ]
  if (lacks.length === 0) return null
  const last = lacks.pop() as string
  return `This browser ${lacks.length > 0 ? `${lacks.join(', ')} and ` : ''}${last}. ${LOCKED}`
}
