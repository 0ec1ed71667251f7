import type { LiveLine, Session } from '@/lib/session/session'
import { celsius, formatTemp, type Instant, type UnitSystem } from '@/lib/units'
import { forecastExpects, forecastExpectsTo } from '../words/sheets'

/** The value of a forecast line at a time, linear between its points. */
function lineAt(line: LiveLine, values: readonly number[], at: Instant): number | null {
  const s = (at - line.meatOn) / 1000
  const i = line.t.findIndex((t) => t >= s)
  if (i < 0 || s < (line.t[0] ?? 0)) return null
  const [t0, t1] = [line.t[i - 1] ?? (line.t[i] as number), line.t[i] as number]
  const [a, b] = [values[i - 1] ?? (values[i] as number), values[i] as number]
  return t1 === t0 ? b : a + ((b - a) * (s - t0)) / (t1 - t0)
}

/** "The forecast expects 33 to 35 °C." */
export function expectedRead(session: Session, cook: string, sensor: string, now: Instant, units: UnitSystem): string {
  const line = session.forecast?.lines?.[cook]
  if (!line || !sensor.startsWith('core')) return ''
  const [low, high] = [lineAt(line, line.coreLowC, now), lineAt(line, line.coreHighC, now)]
  if (low === null || high === null) return ''
  const [a, b] = [formatTemp(celsius(low), units), formatTemp(celsius(high), units)]
  return a === b ? forecastExpects(b) : forecastExpectsTo(a.replace(/ .*/, ''), b)
}
