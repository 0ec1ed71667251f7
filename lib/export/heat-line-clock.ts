import { asRead, CORES_OWN, type ReadersWay } from '../plan/as-read'
import { type Instant, instant } from '../units'

/** How far a zone's clock is ahead of UTC, ms, from each instant on. Small enough to travel with a picture. */
export type ZoneClock = readonly { readonly from: number; readonly ahead: number; readonly way?: ReadersWay }[]

const MINUTE = 60_000
const formats = new Map<string, Intl.DateTimeFormat>()
function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone)
  if (known) return known
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  })
  formats.set(zone, made)
  return made
}

function aheadAt(at: number, zone: string): number {
  const parts = formatOf(zone).formatToParts(at)
  const part = (type: string) => Number(parts.find((p) => p.type === type)?.value)
  const local = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'))
  return local - Math.floor(at / MINUTE) * MINUTE
}

/** The zone's clock over a span; a picture is never so long that it changes twice. */
export function zoneClock(zone: string, from: Instant, to: Instant, way?: ReadersWay): ZoneClock {
  const [first, last] = [aheadAt(from, zone), aheadAt(to, zone)]
  if (first === last) return [{ from, ahead: first, way }]
  let [low, high] = [Math.floor(from / MINUTE), Math.ceil(to / MINUTE)]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (aheadAt(middle * MINUTE, zone) === first) low = middle
    else high = middle
  }
  return [
    { from, ahead: first, way },
    { from: high * MINUTE, ahead: last, way },
  ]
}

export const aheadOf = (clock: ZoneClock, at: number): number =>
  (clock.findLast((part) => part.from <= at) ?? clock[0])?.ahead ?? 0
const local = (clock: ZoneClock, at: number) => new Date(at + aheadOf(clock, at))

/** "18:30" or "6:30 pm", to the nearest minute. */
export function clockAt(clock: ZoneClock, at: number): string {
  const there = local(clock, Math.round(at / MINUTE) * MINUTE)
  const two = (n: number) => String(n).padStart(2, '0')
  return asRead(`${two(there.getUTCHours())}:${two(there.getUTCMinutes())}`, clock[0]?.way ?? CORES_OWN)
}

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ')
/** "Sat 15 May" or "Sat, May 15". */
export function dayAt(clock: ZoneClock, at: number): string {
  const there = local(clock, at)
  const [day, date, month] = [DAYS[there.getUTCDay()], there.getUTCDate(), MONTHS[there.getUTCMonth()]]
  return clock[0]?.way?.dates === 'month-first' ? `${day}, ${month} ${date}` : `${day} ${date} ${month}`
}

/** Steps between marks of a time axis, minutes. */
const STEPS = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440]
/** Round times of the zone's clock inside a span, as close as `least` allows at so many px a minute. */
export function roundTimes(clock: ZoneClock, from: number, to: number, pxPerMinute: number, least: number): Instant[] {
  const step = (STEPS.find((minutes) => minutes * pxPerMinute >= least) ?? 1440) * MINUTE
  const ahead = aheadOf(clock, from)
  const marks: Instant[] = []
  for (let at = Math.ceil((from + ahead) / step) * step - ahead; at <= to; at += step) marks.push(instant(at))
  return marks
}

/** Midnights inside a span: where one day ends and the next begins. */
export function midnights(clock: ZoneClock, from: number, to: number): Instant[] {
  return roundTimes(clock, from, to, 1, 1440).filter((at) => at > from && at < to)
}
