/** The predicted slice: temperatures against depth in the likely member, and how much of the face stayed below each limit. */
import { frac, metres } from '../units'
import type { CutFace } from './forecast'
import { medianOf, spreadOf } from './quantiles'
import type { Geometry } from './shape'
import type { Run } from './simulate'

/** Peaks that decide how meat looks, °C. */
const LIMITS_C = [58, 60, 65, 70]

export function cutFaceOf(runs: readonly Run[], geometry: Geometry): CutFace {
  const likely = likelyRun(runs)
  const half = geometry.thicknessM / 2
  const outermostFirst = <T>(row: Iterable<T>) => [...row].reverse()
  return {
    thickness: metres(geometry.thicknessM),
    width: metres(geometry.widthM),
    depthM: outermostFirst(likely.place).map((place) => half * (1 - place)),
    peakC: outermostFirst(likely.peakC),
    slicedC: outermostFirst(likely.slicedC),
    areaBelow: LIMITS_C.map((limitC) => {
      const share = spreadOf(Float64Array.from(runs, (run) => areaBelow(run, limitC)))
      return { limitC, share: { low: frac(share.low), likely: frac(share.likely), high: frac(share.high) } }
    }),
  }
}

/** The member nearest the middle in what the slice shows: the core's temperature and the loss. */
function likelyRun(runs: readonly Run[]): Run {
  const core = scaled(runs.map((run) => run.atSlice.coreC))
  const loss = scaled(runs.map((run) => run.lossFrac))
  const distance = runs.map((_, m) => {
    const d = (core[m] as number) ** 2 + (loss[m] as number) ** 2
    // A member that is never sliced has no face.
    return Number.isFinite(d) ? d : Number.POSITIVE_INFINITY
  })
  return runs[distance.indexOf(Math.min(...distance))] as Run
}
function scaled(values: readonly number[]) {
  const sample = Float64Array.from(values)
  const { low, high } = spreadOf(sample)
  const middle = medianOf(sample)
  return values.map((value) => (value - middle) / (high - low || 1))
}

/**
 * Share of the face whose peak stayed below a limit. Layers keep their proportions: the face within r/R is (r/R)^p of it,
 * p = 2 for a round face, 1 for a slab, between as the shape exponent is.
 */
function areaBelow(run: Run, limitC: number): number {
  const power = 1 + Math.min(1, run.exponent)
  const outer = run.peakC.findIndex((peak) => peak >= limitC)
  if (outer < 0) return 1
  if (outer === 0) return 0
  const [a, b] = [run.peakC[outer - 1] as number, run.peakC[outer] as number]
  const [r, s] = [run.place[outer - 1] as number, run.place[outer] as number]
  return (r + ((s - r) * (limitC - a)) / (b - a)) ** power
}
