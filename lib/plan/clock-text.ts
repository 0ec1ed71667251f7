/** What a time of day is as text, "14:05", and one so many minutes later; without the schema library, for browsers too. */

export const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/

const DAY_MIN = 1440
const minuteOf = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
const aroundClock = (minute: number) => ((minute % DAY_MIN) + DAY_MIN) % DAY_MIN

/** How long after `from` the clock next shows `to`. */
export const minutesUntil = (from: string, to: string) => aroundClock(minuteOf(to) - minuteOf(from))

export function laterClock(clock: string, minutes: number): string {
  const at = aroundClock(minuteOf(clock) + Math.round(minutes))
  const two = (n: number) => String(n).padStart(2, '0')
  return `${two(Math.floor(at / 60))}:${two(at % 60)}`
}
