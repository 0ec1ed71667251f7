import { toInstant } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { DayClock } from './day-clock'

/** When somebody is there at all, minutes of the day. */
export interface Hours {
  readonly from: number
  readonly to: number
}
export const ALL_DAY: Hours = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }

/** By person, in the shoot's order. A time earlier than the call is the next day's, an end is after its beginning. */
export const hoursOf = (shoot: Shoot, clock: DayClock): Hours[] =>
  (shoot.people ?? []).map(({ hours }) => {
    const from = hours?.from === undefined ? ALL_DAY.from : clock.fromClock(hours.from)
    if (hours?.to === undefined) return { from, to: ALL_DAY.to }
    const begin = hours.from === undefined ? undefined : toInstant(shoot, hours.from)
    return { from, to: clock.fromInstant(toInstant(shoot, hours.to, begin)) }
  })
export const within = ({ from, to }: Hours, start: number, end: number) => start >= from && end <= to
