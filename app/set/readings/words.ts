import type { Instant } from '@/lib/units'

export const readingsWord = (count: number) => `${count} ${count === 1 ? 'reading' : 'readings'}`

/** "Sat 15 May, 14:05:30" in the set's zone. */
export function dayAndClock(zone: string): (at: Instant) => string {
  const form = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  })
  return (at) => form.format(at)
}
