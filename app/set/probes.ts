import type { Probe, Read } from '@/lib/log/day-state'
import { sensorKind } from '@/lib/log/sensor-kind'
import type { Session } from '@/lib/session/session'

export const sensorName = (sensor: string): string => sensor.replace('-', ' ')

/** The probes that may be read on this roast: those known, and the usual ones. */
export function sensorsOf({ told }: Session, cook: string): readonly string[] {
  const known = probesOf(told, cook).map(({ sensor }) => sensor)
  return [...new Set(['core', ...known, 'core-2', 'cooker', 'air'])].sort(byKind)
}
const KINDS = ['core', 'cooker', 'air']
const kindOf = (sensor: string) => KINDS.indexOf(sensorKind(sensor))
const byKind = (a: string, b: string) => kindOf(a) - kindOf(b) || (a < b ? -1 : 1)

export const probesOf = ({ probes }: Session['told'], cook: string): readonly Probe[] =>
  Object.values(probes).filter((probe) => probe.cook === cook)

export const probeOf = ({ told }: Session, cook: string, sensor: string): Probe | null =>
  probesOf(told, cook).find((probe) => probe.sensor === sensor) ?? null

/** The last that was read where the probe stands now; a moved probe starts anew. */
export function lastHere(probe: Probe | null): Read | null {
  if (!probe?.last) return null
  const here = probe.readings.findLast(({ placed }) => placed === probe.placed)
  return here ?? (probe.placed <= 1 ? probe.last : null)
}
