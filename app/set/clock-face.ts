import { asRead, type ReadersWay } from '@/lib/plan/as-read'
import type { Instant } from '@/lib/units'

/** "18:30" or "6:30 pm" in the shoot's zone, to the nearest minute. The browser's own calendar, so that a phone need not load one. */
export function clockFace(zone: string, way: ReadersWay): (at: Instant) => string {
  const format = new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone: zone,
  })
  return (at) => asRead(format.format(Math.round(at / 60_000) * 60_000), way)
}
/** "16:05:12:00": a timecode from the clock of the day. */
export function timecodeFace(zone: string): (at: Instant) => string {
  const format = new Intl.DateTimeFormat('en-GB', { timeStyle: 'medium', hourCycle: 'h23', timeZone: zone })
  return (at) => `${format.format(at)}:00`
}
