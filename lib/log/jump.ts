import { type Celsius, formatTemp, type UnitSystem } from '../units'
import type { Read } from './day-state'
import type { Sensor } from './fields'
import { sensorKind } from './sensor-kind'

/** Faster than this no probe of the kind moves while it stays where it is, K/min. [estimate] */
const MOST_K_PER_MIN = { core: 4, cooker: 60, air: 10 } as const
/** Reading error and the hand that holds it, K. [estimate] */
const SLACK_K = { core: 3, cooker: 40, air: 5 } as const
const SURE_MIN = 0.25

/** A question to ask back before a typed reading is logged, or null where it may well be. */
export function jumpQuestion(
  sensor: Sensor,
  last: Read | null,
  next: Omit<Read, 'id' | 'hand'>,
  units?: UnitSystem,
): string | null {
  if (!last) return null
  const kind = sensorKind(sensor)
  const minutes = Math.max(SURE_MIN, Math.abs(next.at - last.at) / 60_000)
  if (Math.abs(next.temp - last.temp) <= SLACK_K[kind] + MOST_K_PER_MIN[kind] * minutes) return null
  const shown = (temp: Celsius) => formatTemp(temp, units)
  return `The last reading was ${shown(last.temp)}. Is ${shown(next.temp)} right, or was the probe moved?`
}
