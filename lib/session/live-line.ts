import type { Forecast } from '../model/forecast'
import { quantileOf } from '../model/quantiles'
import type { Instant } from '../units'
import type { LiveLine } from './session'

/** As many points as a phone's picture can show. */
const MOST_POINTS = 150
const LEAST_STEP_S = 120
const tenth = (tempC: number) => Math.round(tempC * 10) / 10

/** What the ensemble of a cook looks like in time: the middle, and 5 to 95 % of the core and of what the probe reads. */
export function liveLine({ trace, members }: Forecast, meatOn: Instant, lastS: number): LiveLine {
  const { startS, stepS, count } = trace
  const spanS = Math.min(lastS, startS + (count - 1) * stepS) - startS
  const every = Math.max(1, Math.round(LEAST_STEP_S / stepS), Math.ceil(spanS / stepS / MOST_POINTS))
  const places: number[] = []
  for (let i = 0; i <= spanS / stepS; i += every) places.push(i)
  const sorted = (row: Float32Array, i: number) => {
    const at = new Float64Array(members)
    for (let m = 0; m < members; m++) at[m] = row[m * count + i] as number
    return at.sort()
  }
  const middle = (row: Float32Array) => places.map((i) => tenth(quantileOf(sorted(row, i), 0.5)))
  const core = places.map((i) => sorted(trace.coreC, i))
  const probe = places.map((i) => sorted(trace.probeC, i))
  return {
    meatOn,
    t: places.map((i) => startS + i * stepS),
    coreC: core.map((at) => tenth(quantileOf(at, 0.5))),
    coreLowC: core.map((at) => tenth(quantileOf(at, 0.05))),
    coreHighC: core.map((at) => tenth(quantileOf(at, 0.95))),
    probeC: probe.map((at) => tenth(quantileOf(at, 0.5))),
    probeLowC: probe.map((at) => tenth(quantileOf(at, 0.05))),
    probeHighC: probe.map((at) => tenth(quantileOf(at, 0.95))),
    cookerC: middle(trace.cookerC),
  }
}
