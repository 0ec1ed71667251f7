import type { DayState } from '../log/day-state'
import { readingsOf } from '../log/for-forecast'
import { markKey } from '../log/mark-key'
import { trustedReadings } from '../log/trusted-probe'
import type { MomentId } from '../model/moment-ids'
import { type Instant, later } from '../units'

/** A peak is one when the probe has come down by this again, K. */
const TURNED_K = 0.3

/** When the core was hottest between the fire and the slice; null where the probe was not read long enough to tell. */
export function peakRead(day: DayState, cook: string): Instant | null {
  const at = (moment: MomentId) => day.marks[markKey(cook, moment)]?.at
  const [meatOn, off, slice] = [at('meat-on'), at('off-heat'), at('first-slice')]
  if (meatOn === undefined || off === undefined) return null
  const since = (when: number) => (when - meatOn) / 1000
  const all = readingsOf(day, cook, meatOn).filter(({ sensor }) => sensor === 'core')
  const last = all.at(-1)
  if (!last) return null
  const rest = trustedReadings(all, last.t).filter(({ t }) => t >= since(off) && t <= since(slice ?? Infinity))
  const hottest = rest.reduce((best, one) => (one.tempC > best.tempC ? one : best), rest[0] ?? last)
  const end = rest.at(-1)
  return end && end.tempC <= hottest.tempC - TURNED_K ? later(meatOn, hottest.t) : null
}
