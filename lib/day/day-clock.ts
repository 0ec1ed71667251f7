import { toInstant, toIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, instant } from '../units'
import { RULES } from './rules'

/** The search counts whole minutes from an origin two days before the day's first named time. */
export interface DayClock {
  readonly length: number
  readonly fromClock: (clock: string) => number
  readonly fromInstant: (at: Instant) => number
  readonly toInstant: (minute: number) => Instant
  readonly toIso: (minute: number) => string
}
const DAY_MIN = 1440

export function dayClock(shoot: Shoot): DayClock {
  const slice = shoot.day?.slice
  const named = shoot.day?.call ?? (slice && 'at' in slice ? slice.at : RULES.call)
  const origin = toInstant(shoot, named) - 2 * DAY_MIN * 60_000
  const fromInstant = (at: Instant) => (at - origin) / 60_000
  const back = (minute: number) => instant(Math.round((origin + minute * 60_000) / 1000) * 1000)
  return {
    length: 5 * DAY_MIN,
    fromClock: (clock) => fromInstant(toInstant(shoot, clock)),
    fromInstant,
    toInstant: back,
    toIso: (minute) => toIso(back(minute), shoot.zone),
  }
}
