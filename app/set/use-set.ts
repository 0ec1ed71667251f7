'use client'
import { useCallback, useEffect, useState, useSyncExternalStore } from 'react'
import type { Instant } from '@/lib/units'
import type { SetFeed, SetSnapshot } from './set-feed'

export function useSnapshot(feed: SetFeed): SetSnapshot {
  const subscribe = useCallback((changed: () => void) => feed.subscribe(changed), [feed])
  const read = useCallback(() => feed.snapshot(), [feed])
  return useSyncExternalStore(subscribe, read, read)
}

const TICK_MS = 250
/** The feed's time to the second. */
export function useSecond(feed: SetFeed): Instant {
  const read = useCallback(() => (Math.floor(feed.now() / 1000) * 1000) as Instant, [feed])
  const subscribe = useCallback((changed: () => void) => {
    const timer = setInterval(changed, TICK_MS)
    return () => clearInterval(timer)
  }, [])
  return useSyncExternalStore(subscribe, read, read)
}

/** A choice that this device remembers; the first one until it is read, so that server and browser draw alike. */
export function useKept<T extends string>(key: string, first: T): [T, (next: T) => void] {
  const [value, setValue] = useState(first)
  useEffect(() => {
    try {
      const kept = localStorage.getItem(key)
      if (kept !== null) setValue(kept as T)
    } catch {
      // A browser that keeps nothing: the choice lasts as long as the page.
    }
  }, [key])
  const keep = useCallback(
    (next: T) => {
      setValue(next)
      try {
        localStorage.setItem(key, next)
      } catch {
        // As above.
      }
    },
    [key],
  )
  return [value, keep]
}
