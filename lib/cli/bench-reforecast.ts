/** How long the forecast takes to move after one more reading: from the last fit, with the fast kernel. */
import { assimilate, type Fit } from '../model/assimilate'
import type { CookPlan } from '../model/cook'
import { forecastCook, prepared } from '../model/forecast-cook'
import { cookAllBy } from '../model/kernels'
import type { Reading } from '../model/readings'
import { LIVE_MEMBERS } from '../session/live-cook'
import { celsius, seconds } from '../units'

const OPTIONS = { seed: 1, members: LIVE_MEMBERS, kernel: 'simd' } as const
const TIMES = 40
const AHEAD_S = 1800

/** Readings a minute of one member of the plan's own forecast, until half an hour before its pull. */
function readingsOf(plan: CookPlan): Reading[] {
  const { trace, moments } = forecastCook(plan, OPTIONS)
  const untilS = (moments.pull?.[0] ?? 7200) - AHEAD_S
  const fromS = moments['probe-in']?.[0] ?? 0
  const readings: Reading[] = []
  for (let i = 0; i < trace.count; i++) {
    const t = seconds(trace.startS + i * trace.stepS)
    if (t < 0 || t > untilS) continue
    readings.push({ t, sensor: 'cooker', tempC: celsius(trace.cookerC[i] as number) })
    if (t >= fromS) readings.push({ t, sensor: 'core', tempC: celsius(trace.probeC[i] as number) })
  }
  return readings
}

/** The least of a few: what others do on the machine only ever adds. */
export function reforecastMs(plan: CookPlan): number {
  const readings = readingsOf(plan)
  const of = prepared(plan, OPTIONS.seed, cookAllBy(OPTIONS.kernel))
  let last: Fit | undefined
  let leastMs = Infinity
  for (let n = TIMES; n >= 0; n--) {
    const until = readings.slice(0, readings.length - 2 * n)
    const start = performance.now()
    last = assimilate(plan, { readings: until }, { ...OPTIONS, last, of, endsAtSlice: true }).fit
    if (n < TIMES) leastMs = Math.min(leastMs, performance.now() - start)
  }
  return leastMs
}
