import type { Mark, Reading } from '../model/readings'
import { type Instant, seconds } from '../units'
import type { DayState } from './day-state'
import { sensorKind } from './sensor-kind'

/** A reading as a forecast takes it, with the probe it is of: another probe, or another place, is another offset. */
export interface LoggedReading extends Reading {
  /** "core#0", "core-2#1". */
  readonly probe: string
}

/** When the meat went on, as it was marked. */
export const meatOnOf = (day: DayState, cook: string): Instant | null => day.marks[`${cook}/meat-on`]?.at ?? null

const since = (zero: Instant, at: Instant) => seconds((at - zero) / 1000)

/**
 * The believable readings of a cook, in order of time. `meatOn` is time zero: as marked, else as planned; without
 * either there is nothing to hang them on.
 */
export function readingsOf(day: DayState, cook: string, meatOn = meatOnOf(day, cook)): LoggedReading[] {
  if (meatOn === null) return []
  const probes = Object.values(day.probes).filter((probe) => probe.cook === cook)
  return probes
    .flatMap(({ sensor, readings }) => {
      const kind = sensorKind(sensor)
      if (kind === 'air') return []
      return readings.map(({ at, temp, placed }): LoggedReading => {
        return { t: since(meatOn, at), sensor: kind, tempC: temp, probe: `${sensor}#${placed}` }
      })
    })
    .sort((a, b) => a.t - b.t || (a.probe < b.probe ? -1 : 1))
}

/** The moments of a cook that were marked, in order of time; each outranks the plan. */
export function marksOf(day: DayState, cook: string, meatOn = meatOnOf(day, cook)): Mark[] {
  if (meatOn === null) return []
  return Object.values(day.marks)
    .filter((mark) => mark.cook === cook)
    .map(({ moment, at }) => ({ moment, t: since(meatOn, at) }))
    .sort((a, b) => a.t - b.t)
}
