/** A forecast as the command line and the interface for machines print it: quantiles, medians, nothing per member. */
import type { Warning } from '../refusals'
import type { Frac } from '../units'
import type { CutFace, Forecast, Levels, Spread, Window } from './forecast'
import { type FuelSummary, fuelSummary } from './fuel-need'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import { medianOf, quantileOf, sortedCopy, spreadOf, windowOf } from './quantiles'
import { type SafetySummary, safetyOf } from './safety-summary'

export interface Summary {
  readonly id: string
  readonly moments: readonly ({ readonly id: MomentId } & Window)[]
  readonly curve: readonly CurvePoint[]
  readonly peakCore: { readonly t: number | null } & Levels
  readonly atSlice: { readonly core: Levels; readonly probe: Levels }
  readonly offHeat: { readonly core: Levels; readonly probe: Levels }
  readonly yield: { readonly lossFrac: Spread<Frac> }
  /** Absent for electric and gas cookers. */
  readonly fuel?: FuelSummary
  readonly safety: SafetySummary
  readonly cutFace: CutFace
  readonly warnings: readonly Warning[]
}
/** Medians over members at a time after meat-on, s and °C; `coreLow` and `coreHigh` are the 5 and 95 % quantiles. */
export interface CurvePoint {
  readonly t: number
  readonly cooker: number
  readonly surface: number
  readonly core: number
  readonly coreLow: number
  readonly coreHigh: number
  readonly probe: number
}

/** `at` is the JSON pointer of the cook in its document, put before the paths of its warnings; `authority` whose safety is asked for. */
export function summarise(forecast: Forecast, at = '', authority = 'US'): Summary {
  const moments = MOMENT_IDS.flatMap((id) => {
    const samples = forecast.moments[id]
    return samples ? [{ id, ...windowOf(samples) }] : []
  })
  const fuel = fuelSummary(forecast)
  const peak = moments.find(({ id }) => id === 'carryover-peak')
  return {
    id: forecast.cook.id,
    moments,
    curve: curveOf(
      forecast,
      moments.map(({ likely }) => likely),
    ),
    peakCore: { t: peak?.likely ?? null, ...spreadOf(forecast.peakCoreC) },
    atSlice: { core: spreadOf(forecast.atSlice.coreC), probe: spreadOf(forecast.atSlice.probeC) },
    offHeat: { core: spreadOf(forecast.offHeat.coreC), probe: spreadOf(forecast.offHeat.probeC) },
    yield: { lossFrac: spreadOf<Frac>(forecast.lossFrac) },
    ...(fuel ? { fuel } : {}),
    safety: safetyOf(forecast, authority),
    cutFace: forecast.cutFace,
    warnings: forecast.warnings.map((warning) => ({ ...warning, path: at + warning.path })),
  }
}

/** Each minute and each likely moment, in order. */
function curveOf(forecast: Forecast, moments: readonly (number | null)[]): CurvePoint[] {
  const { startS, stepS, count } = forecast.trace
  const lastS = startS + (count - 1) * stepS
  const minutes = Array.from({ length: count }, (_, i) => startS + i * stepS)
  const times = new Set([...minutes, ...moments.filter((t): t is number => t !== null && t >= startS && t <= lastS)])
  return [...times].sort((a, b) => a - b).map((t) => pointAt(forecast, t))
}

function pointAt({ trace, members }: Forecast, t: number): CurvePoint {
  const at = (t - trace.startS) / trace.stepS
  const i = Math.min(trace.count - 1, Math.floor(at))
  const j = Math.min(trace.count - 1, i + 1)
  const samples = (column: Float32Array) =>
    Float64Array.from({ length: members }, (_, m) => {
      const before = column[m * trace.count + i] as number
      return before + (at - i) * ((column[m * trace.count + j] as number) - before)
    })
  const core = sortedCopy(samples(trace.coreC))
  return {
    t,
    cooker: medianOf(samples(trace.cookerC)),
    surface: medianOf(samples(trace.surfaceC)),
    core: quantileOf(core, 0.5),
    coreLow: quantileOf(core, 0.05),
    coreHigh: quantileOf(core, 0.95),
    probe: medianOf(samples(trace.probeC)),
  }
}
