/** Clock times of a zone, worked out here from the zone's own offsets, so that a fault in the plan's clock shows. */
export interface WallClock {
  /** Offset from UTC at an instant, ms. */
  readonly offsetMs: (ms: number) => number
  /** Instant of "HH:MM" on a date ("2027-05-15"); the first of two, where the clock goes back. */
  readonly instantOf: (date: string, clock: string) => number
  /** "14:35". */
  readonly show: (ms: number) => string
}

const DAY_MS = 86_400_000

export function wallClock(zone: string): WallClock {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  })
  const offsetMs = (ms: number): number => {
    if (!Number.isFinite(ms)) return 0
    const part = Object.fromEntries(format.formatToParts(ms).map((p) => [p.type, Number(p.value)]))
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = part
    return Date.UTC(year, month - 1, day, hour, minute, second) - Math.floor(ms / 1000) * 1000
  }
  const instantOf = (date: string, clock: string): number => {
    const asUtc = Date.parse(`${date}T${clock}:00Z`)
    const candidates = [offsetMs(asUtc - DAY_MS), offsetMs(asUtc + DAY_MS)].map((offset) => asUtc - offset)
    const right = candidates.filter((ms) => ms + offsetMs(ms) === asUtc)
    return Math.min(...(right.length > 0 ? right : candidates))
  }
  const show = (ms: number): string =>
    Number.isFinite(ms) ? new Date(ms + offsetMs(ms)).toISOString().slice(11, 16) : '--:--'
  return { offsetMs, instantOf, show }
}
