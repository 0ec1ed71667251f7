import { Temporal } from 'temporal-polyfill'
import { type Instant, instant } from '../units'

/** All that a time of day needs from a shoot. */
export type Calendar = { readonly date: string; readonly zone: string; readonly day?: { readonly call?: string } }

const zoned = (shoot: Calendar, clock: string, daysOn: number) =>
  Temporal.PlainDate.from(shoot.date)
    .add({ days: daysOn })
    // "compatible": of a time that occurs twice the first; one that is skipped moves on by the gap (the schema refuses those).
    .toZonedDateTime({ timeZone: shoot.zone, plainTime: Temporal.PlainTime.from(clock) })

const at = (shoot: Calendar, clock: string, daysOn: number) => instant(zoned(shoot, clock, daysOn).epochMilliseconds)

/** Days after the shoot's date on which a clock time falls: a time earlier than the call is the next day's. */
function daysOn(shoot: Calendar, clock: string, after?: Instant): number {
  const from = after ?? (shoot.day?.call === undefined ? undefined : at(shoot, shoot.day.call, 0))
  if (from === undefined) return 0
  let days = 0
  while (days < 7 && at(shoot, clock, days) < from) days++
  return days
}

/** The instant of a clock time: the first at or after `after`, else at or after the call, else on the shoot's date. */
export const toInstant = (shoot: Calendar, clock: string, after?: Instant): Instant =>
  at(shoot, clock, daysOn(shoot, clock, after))

/** Whether a clock change skips this time; if so, the first time that exists after it. */
export function skippedTo(shoot: Calendar, clock: string): string | null {
  const landed = zoned(shoot, clock, daysOn(shoot, clock)).toPlainTime().toString({ smallestUnit: 'minute' })
  return landed === clock ? null : landed
}

const there = (when: Instant, zone: string) => Temporal.Instant.fromEpochMilliseconds(when).toZonedDateTimeISO(zone)

/** ISO 8601 with the zone's offset; seconds only where there are any. */
export function toIso(when: Instant, zone: string): string {
  const local = there((Math.round(when / 1000) * 1000) as Instant, zone)
  return local.toString({
    timeZoneName: 'never',
    smallestUnit: local.second === 0 ? 'minute' : 'second',
  })
}
export const fromIso = (iso: string): Instant => instant(Temporal.Instant.from(iso).epochMilliseconds)

/** "18:30", to the nearest minute. */
export const formatClock = (when: Instant, zone: string): string =>
  there(instant(Math.round(when / 60000) * 60000), zone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' })

/** "18:30:07". */
export const formatClockSeconds = (when: Instant, zone: string): string =>
  there(instant(Math.round(when / 1000) * 1000), zone)
    .toPlainTime()
    .toString({ smallestUnit: 'second' })

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']
const MONTHS = 'January February March April May June July August September October November December'.split(' ')
/** "Saturday 15 May 2027". */
export function formatDay(when: Instant, zone: string): string {
  const local = there(when, zone)
  return `${DAYS[local.dayOfWeek - 1]} ${local.day} ${MONTHS[local.month - 1]} ${local.year}`
}
/** The shoot's own day in words. */
export const formatDate = (shoot: Calendar) => formatDay(at(shoot, '12:00', 0), shoot.zone)

/** The IANA zone as it is spelt, or null where there is none of that name. */
export function knownZone(zone: string): string | null {
  if (!/^[A-Za-z]/.test(zone)) return null
  try {
    Temporal.PlainDate.from('2027-01-01').toZonedDateTime(zone)
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone
  } catch {
    return null
  }
}
