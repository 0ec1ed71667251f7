/** Readings and marks as they come in, and what of them is fitted. */
import type { Celsius, Seconds } from '../units'
import type { MomentId } from './moment-ids'

/** `core` is the probe in the meat, `cooker` the sensor where the crew clipped it. */
export const SENSORS = ['core', 'cooker'] as const
export type Sensor = (typeof SENSORS)[number]
/** `t` is after meat-on. */
export interface Reading {
  readonly t: Seconds
  readonly sensor: Sensor
  readonly tempC: Celsius
}
/** A moment that has happened: it outranks the plan. */
export interface Mark {
  readonly moment: MomentId
  readonly t: Seconds
}
export interface Sample {
  readonly timeS: number
  readonly tempC: number
}

/** One sensor's samples in the order of time; of two at the same instant the later counts. */
export function samplesOf(readings: readonly Reading[], sensor: Sensor): Sample[] {
  const byTime = new Map<number, number>()
  for (const reading of readings) if (reading.sensor === sensor) byTime.set(reading.t, reading.tempC)
  return [...byTime].sort((a, b) => a[0] - b[0]).map(([timeS, tempC]) => ({ timeS, tempC }))
}

/** A mean of samples that lie close together. */
export interface Bin extends Sample {
  readonly count: number
}
/** Bins of a minute lately, of five minutes before: what is older than this is known well enough. */
const LATELY_S = 2700
const LATE_BIN_S = 60
const EARLY_BIN_S = 300

export function binsOf(samples: readonly Sample[], nowS: number): Bin[] {
  const bins = new Map<number, { timeS: number; tempC: number; count: number }>()
  for (const { timeS, tempC } of samples) {
    const late = timeS > nowS - LATELY_S
    const key = late ? Math.floor(timeS / LATE_BIN_S) : -1 - Math.floor(timeS / EARLY_BIN_S)
    const bin = bins.get(key) ?? { timeS: 0, tempC: 0, count: 0 }
    bins.set(key, { timeS: bin.timeS + timeS, tempC: bin.tempC + tempC, count: bin.count + 1 })
  }
  return [...bins.values()]
    .map(({ timeS, tempC, count }) => ({ timeS: timeS / count, tempC: tempC / count, count }))
    .sort((a, b) => a.timeS - b.timeS)
}

/** The first instant from a time on at which samples have come to a level, between the two about it; none where they have not. */
export function whenReached(
  samples: readonly Sample[],
  levelC: number,
  fromS: number,
  rising = true,
): number | undefined {
  const beyond = (tempC: number) => (rising ? tempC >= levelC : tempC <= levelC)
  const at = samples.findIndex(({ timeS, tempC }) => timeS >= fromS && beyond(tempC))
  const after = samples[at]
  if (after === undefined) return undefined
  const before = samples[at - 1]
  if (before === undefined || before.timeS < fromS || beyond(before.tempC)) return after.timeS
  const share = (levelC - before.tempC) / (after.tempC - before.tempC)
  return before.timeS + share * (after.timeS - before.timeS)
}
