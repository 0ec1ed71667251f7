import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wallClock } from '../../../lib/day/check/wall-clock'
import { formatClock, toInstant, toIso } from '../../../lib/plan/clock'
import { instant } from '../../../lib/units'

const ZONES = ['Europe/Dublin', 'America/New_York', 'Asia/Kathmandu', 'Australia/Lord_Howe', 'America/St_Johns', 'UTC']
const MINUTE_MS = 60_000

describe("the checker's own clock", () => {
  it('agrees with the clock of the plan in any zone, at any minute', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ZONES), fc.integer({ min: 0, max: 50_000_000 }), (zone, minute) => {
        const ms = minute * MINUTE_MS
        const clock = wallClock(zone)
        expect(clock.show(ms)).toBe(formatClock(instant(ms), zone))
        const iso = toIso(instant(ms), zone)
        const [date, time] = [iso.slice(0, 10), iso.slice(11, 16)]
        expect(clock.instantOf(date, time)).toBe(toInstant({ date, zone }, time))
      }),
    )
  })
  it('takes the first of two where the clock goes back', () => {
    expect(wallClock('Europe/Dublin').instantOf('2027-10-31', '01:30')).toBe(Date.parse('2027-10-31T00:30Z'))
  })
})
