'use client'
import { useSyncExternalStore } from 'react'
import { timesIn } from '../words/shared'

const never = () => () => {}
const shown = (at: number, zone?: string) =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'short', timeStyle: 'short', timeZone: zone }).format(at)

/** Whose clock the page's times are by, where this device's shows another at that instant. The server cannot know. */
export function TimesIn({ zone, at }: { zone: string; at: number }) {
  const differs = useSyncExternalStore(
    never,
    () => shown(at) !== shown(at, zone),
    () => false,
  )
  return differs ? <span className="whitespace-nowrap"> · {timesIn(placeOf(zone))}</span> : null
}

/** "Buenos Aires" of "America/Argentina/Buenos_Aires". */
const placeOf = (zone: string) => (zone.split('/').at(-1) ?? zone).replaceAll('_', ' ')
