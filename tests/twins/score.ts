/** How a forecaster did on twins: the errors of its pulls, how often its intervals held, beside the baselines. */
import { type AssimilateOptions, assimilate } from '../../lib/model/assimilate'
import { forecastCook, prepared } from '../../lib/model/forecast-cook'
import { cookAllBy } from '../../lib/model/kernels'
import { medianOf, quantileOf, sortedCopy } from '../../lib/model/quantiles'
import { samplesOf } from '../../lib/model/readings'
import { LIVE_MEMBERS } from '../../lib/session/live-cook'
import { BASELINES } from './baselines'
import { type Twin, targetOf } from './twin'

export const HORIZONS_MIN = [60, 45, 30, 15, 5] as const
/** As on the day. */
const OPTIONS = { members: LIVE_MEMBERS, kernel: 'simd' } as const

export interface Row {
  readonly horizonMin: number
  readonly seen: boolean
  readonly errorMin: number
  readonly inside: boolean
  readonly widthMin: number
  readonly baselines: Readonly<Record<string, number>>
  /** Temperature at slicing, predicted less true. */
  readonly sliceErrorC: number
  readonly sliceInside: boolean
  /** The same of a probe that is left in. */
  readonly sliceProbeErrorC: number
}
/** A forecast that never gets there, or a baseline that says nothing, is as far off as this. */
const WORST_MIN = 60
const minutesOff = (predictedS: number | undefined, trueS: number) =>
  predictedS === undefined || !Number.isFinite(predictedS)
    ? WORST_MIN
    : Math.max(-WORST_MIN, Math.min(WORST_MIN, (predictedS - trueS) / 60))

export function scoreTwin(twin: Twin, seed: number): Row[] {
  const of = prepared(twin.plan, seed, cookAllBy(OPTIONS.kernel))
  return HORIZONS_MIN.flatMap((horizonMin) => {
    const nowS = Math.floor(twin.pullS / 60 - horizonMin) * 60
    return nowS < 300 ? [] : [scoreAt(twin, horizonMin, nowS, { ...OPTIONS, seed, of })]
  })
}
function scoreAt(twin: Twin, horizonMin: number, nowS: number, options: AssimilateOptions): Row {
  const readings = twin.readings.filter(({ t }) => t <= nowS)
  const { forecast } = assimilate(twin.plan, { readings, nowS }, options)
  const pulls = sortedCopy(forecast.moments.pull ?? new Float64Array([Infinity]))
  const [low, high] = [quantileOf(pulls, 0.1), quantileOf(pulls, 0.9)]
  const core = samplesOf(readings, 'core')
  const level = targetOf(twin.plan)
  const slices = sortedCopy(forecast.atSlice.coreC)
  return {
    horizonMin,
    seen: core.length > 0,
    errorMin: minutesOff(quantileOf(pulls, 0.5), twin.pullS),
    inside: low <= twin.pullS && twin.pullS <= high,
    widthMin: (high - low) / 60,
    baselines: Object.fromEntries(
      Object.entries(BASELINES).map(([name, ahead]) => [name, minutesOff(ahead(core, level, nowS), twin.pullS)]),
    ),
    sliceErrorC: quantileOf(slices, 0.5) - twin.sliceCoreC,
    sliceInside: quantileOf(slices, 0.1) <= twin.sliceCoreC && twin.sliceCoreC <= quantileOf(slices, 0.9),
    sliceProbeErrorC: medianOf(forecast.atSlice.probeC) - twin.sliceProbeC,
  }
}
export const preFireError = (twin: Twin, seed: number) =>
  minutesOff(medianOf(forecastCook(twin.plan, { ...OPTIONS, seed }).moments.pull as Float64Array), twin.pullS)

export interface Line {
  readonly horizonMin: number
  readonly count: number
  readonly maeMin: number
  readonly bestBaseline: number
  readonly coverage: number
  readonly widthMin: number
  readonly sliceMaeC: number
  readonly sliceCoverage: number
  readonly sliceProbeMaeC: number
}
const mean = (xs: readonly number[]) => xs.reduce((sum, x) => sum + x, 0) / (xs.length || 1)
export function linesOf(rows: readonly Row[], seen: boolean): Line[] {
  return HORIZONS_MIN.flatMap((horizonMin) => {
    const at = rows.filter((row) => row.horizonMin === horizonMin && row.seen === seen)
    if (at.length === 0) return []
    const off = Object.keys(BASELINES).map((name) => mean(at.map((row) => Math.abs(row.baselines[name] ?? WORST_MIN))))
    return [
      {
        horizonMin,
        count: at.length,
        maeMin: mean(at.map((row) => Math.abs(row.errorMin))),
        bestBaseline: Math.min(...off),
        coverage: mean(at.map((row) => (row.inside ? 1 : 0))),
        widthMin: mean(at.map((row) => row.widthMin)),
        sliceMaeC: mean(at.map((row) => Math.abs(row.sliceErrorC))),
        sliceCoverage: mean(at.map((row) => (row.sliceInside ? 1 : 0))),
        sliceProbeMaeC: mean(at.map((row) => Math.abs(row.sliceProbeErrorC))),
      },
    ]
  })
}
