import type { Sensor } from '../model/readings'
import type { Seconds } from '../units'
import type { LoggedReading } from './for-forecast'

/** A probe that has been silent for longer gives way to one that reads. [estimate] */
const SILENT_S = 900
const LATELY_S = 600

/**
 * The readings of one probe of each kind, in the place where it stands now, for a fit knows one offset. Of several core
 * probes the coldest lately, which is nearest the coldest point; of several in the cooker the first by name.
 */
export function trustedReadings(readings: readonly LoggedReading[], now: Seconds): LoggedReading[] {
  const chosen = (['core', 'cooker'] as const).map((kind) => trustedOf(readings, kind, now))
  return readings.filter(({ probe }) => chosen.includes(probe))
}

function trustedOf(readings: readonly LoggedReading[], kind: Sensor, now: Seconds): string | undefined {
  const last = new Map<string, LoggedReading>()
  for (const reading of readings) if (reading.sensor === kind) last.set(reading.probe.split('#')[0] as string, reading)
  const all = [...last.values()]
  const alive = all.filter(({ t }) => t > now - SILENT_S)
  const among = alive.length > 0 ? alive : all.sort((a, b) => b.t - a.t).slice(0, 1)
  const rank = ({ probe }: LoggedReading) => (kind === 'core' ? lateMean(readings, probe) : 0)
  const best = among
    .map((reading) => ({ reading, rank: rank(reading) }))
    .sort((a, b) => a.rank - b.rank || (a.reading.probe < b.reading.probe ? -1 : 1))[0]
  return best?.reading.probe
}

/** Two probes that are read in turn are compared by what each has read lately, not by whose turn it was. */
function lateMean(readings: readonly LoggedReading[], probe: string): number {
  const own = readings.filter((reading) => reading.probe === probe)
  const until = own.at(-1)?.t ?? 0
  const late = own.filter(({ t }) => t > until - LATELY_S)
  return late.reduce((sum, { tempC }) => sum + tempC, 0) / late.length
}
