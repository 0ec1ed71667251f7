import { markKey } from '../log/mark-key'
import { type Celsius, celsius, type Instant, later, type Seconds, seconds } from '../units'
import type { Session } from './session'
import type { SessionCook } from './session-day'

/** [fsis-safe-minimum] not out for more than 2 h, 1 h above 90 °F (32 °C). */
export const OUT_S = 7200
export const OUT_HOT_S = 3600
export const HOT_AIR_C = 32.2

/** How long cooked food has stood out, and until when it may. */
export interface FoodClock {
  readonly food: string
  readonly is: 'not-out' | 'out' | 'back' | 'served' | 'discarded'
  /** Since when it is where it is. */
  readonly since: Instant | null
  readonly limit: Seconds
  /** It goes into the bin then; only while it stands out. */
  readonly discardAt: Instant | null
  readonly past: boolean
  /** The air that was read beside it, where anybody read it. */
  readonly air: Celsius | null
}

/** From the slice, or from when somebody said that it stands out; hotter air than planned shortens the limit. */
export function foodClock(session: Session, { id, outLimit }: Pick<SessionCook, 'id' | 'outLimit'>): FoodClock {
  const said = session.told.food[id]
  const sliced = session.told.marks[markKey(id, 'first-slice')]?.at ?? null
  const is = said?.is ?? (sliced === null ? 'not-out' : 'out')
  const since = said?.at ?? sliced
  const air = hottestAir(session, id, since)
  const limit = seconds(air !== null && air > HOT_AIR_C ? Math.min(outLimit, OUT_HOT_S) : outLimit)
  const discardAt = is === 'out' && since !== null ? later(since, limit) : null
  return { food: id, is, since, limit, discardAt, past: discardAt !== null && session.now >= discardAt, air }
}

/** Of the last reading before it came out and all since. */
function hottestAir({ told }: Session, cook: string, since: Instant | null): Celsius | null {
  const read = Object.values(told.probes)
    .filter((probe) => probe.cook === cook && probe.sensor.startsWith('air') && !probe.wrong)
    .flatMap(({ readings }) => {
      const before = readings.findLast(({ at }) => at <= (since ?? at))
      return [...(before ? [before] : []), ...readings.filter(({ at }) => since !== null && at > since)]
    })
  return read.length === 0 ? null : celsius(Math.max(...read.map(({ temp }) => temp)))
}
