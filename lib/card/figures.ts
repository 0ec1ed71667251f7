import type { Stage } from '../model/cook'
import type { Forecast } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { medianOf, spreadOf } from '../model/quantiles'
import type { Claim, Figure } from './claim'
import { coldestPeak } from './coldest'
import { cookedMeatKg } from './yield'

const figureOf = (samples: Float64Array): Figure => spreadOf(samples)
const point = (value: number): Figure => ({ low: value, likely: value, high: value })

/** Time from one moment to another in every member, s; null where the plan has not both. */
export function between(f: Forecast, from: MomentId, to: MomentId): Float64Array | null {
  const [a, b] = [f.moments[from], f.moments[to]]
  if (!a || !b) return null
  return b.map((end, m) => (Number.isFinite(end) ? end - (a[m] ?? 0) : Number.POSITIVE_INFINITY))
}
const time = (f: Forecast, from: MomentId, to: MomentId) => {
  const samples = between(f, from, to)
  return samples && figureOf(samples)
}

type StageOf<Do extends Stage['do']> = Extract<Stage, { do: Do }>
/** The stages of one kind, in order. */
export const stagesOf = <Do extends Stage['do']>(f: Forecast, kind: Do): StageOf<Do>[] =>
  f.cook.stages.filter((s): s is StageOf<Do> => s.do === kind)

/** The level a stage ends at, °C at the probe, where the plan says one. */
const coreOf = (stage: Stage | undefined) =>
  stage && 'until' in stage && 'core' in stage.until ? stage.until.core : null

/** What the probe reads at a moment, in every member that gets there. */
export function probeAt(f: Forecast, moment: MomentId): Figure | null {
  const times = f.moments[moment]
  const { startS, stepS, count, probeC } = f.trace
  if (!times) return null
  const read = [...times].map((t, m) => {
    const i = Math.min(count - 1, Math.max(0, Math.round((t - startS) / stepS)))
    return probeC[m * count + i] ?? Number.NaN
  })
  const reached = Float64Array.from(read.filter((_, m) => Number.isFinite(times[m])))
  return reached.length > 0 ? figureOf(reached) : null
}

/** The last heated stage: a sear where there is one. */
const lastHeated = (f: Forecast) => f.cook.stages.filter((s) => s.do === 'roast' || s.do === 'sear').at(-1)
const hasSear = (f: Forecast) => stagesOf(f, 'sear').length > 0

/** What the plan sets: null where it leaves it to the fire. */
function settingOf(f: Forecast, claim: Claim): number | null {
  const near = (claim.low + claim.high) / 2
  const nearest = (levels: readonly number[]) =>
    levels.reduce<number | null>(
      (best, x) => (best === null || Math.abs(x - near) < Math.abs(best - near) ? x : best),
      null,
    )
  const at = (stages: readonly { at: number }[]) => nearest(stages.map((s) => s.at))
  switch (claim.kind) {
    case 'cooker-temperature':
      return at([
        ...stagesOf(f, 'preheat'),
        ...stagesOf(f, 'roast'),
        ...stagesOf(f, 'hold').flatMap(({ at }) => (at === undefined ? [] : { at })),
      ])
    case 'sear-temperature':
      return at(stagesOf(f, 'sear'))
    case 'pull-temperature':
      return coreOf(stagesOf(f, 'roast').at(-1))
    case 'off-heat-temperature':
      return coreOf(lastHeated(f))
    case 'start-temperature':
      return f.cook.roast.start
    case 'mass':
      return f.cook.roast.mass
    case 'thickness':
      return f.cook.roast.thickness ?? f.cutFace.thickness
    case 'turn-time':
      return fixedTurn(f)
    case 'probe-time':
      return fixedProbe(f)
    default:
      return null
  }
}
function fixedTurn(f: Forecast): number | null {
  const turn = stagesOf(f, 'roast').find((s) => s.turn)?.turn
  if (!turn) return null
  if ('after' in turn) return turn.after
  const half = f.moments.turn
  return half ? medianOf(half) : null
}
function fixedProbe(f: Forecast): number | null {
  const at = stagesOf(f, 'roast').find((s) => s.probe)?.probe?.at
  if (at === 'start') return 0
  return at === 'turn' ? fixedTurn(f) : (at ?? null)
}

/** Rest as planned: what stands between `after` and `max` is the cook's own to choose. */
function restFigure(f: Forecast): Figure | null {
  const found = time(f, 'off-heat', 'first-slice')
  const rest = stagesOf(f, 'rest')[0]
  if (!found || !rest?.max) return found
  return { ...found, high: Math.max(found.high, rest.max) }
}

const cookedMass = (f: Forecast, boneShare: number): Figure =>
  figureOf(f.lossFrac.map((loss) => cookedMeatKg(f.cook.roast.mass, boneShare, loss)))
/** Cooked meat on a plate, kg: 250 g is generous, 175 g the rule, 125 g one dish of several. Common practice, no source. */
const PLATE_KG = { low: 0.25, likely: 0.175, high: 0.125 }
function servesFigure(f: Forecast, boneShare: number): Figure {
  const meat = cookedMass(f, boneShare)
  return { low: meat.low / PLATE_KG.low, likely: meat.likely / PLATE_KG.likely, high: meat.high / PLATE_KG.high }
}

/** How deep the cut face is no longer pink (its peak passed `limitC`), m, from the thin of the ensemble's areas. */
export const PINK_BELOW_C = 65
export const pinkShare = (f: Forecast): Figure | null =>
  f.cutFace.areaBelow.find((a) => a.limitC === PINK_BELOW_C)?.share ?? null
export function greyDepth(f: Forecast): Figure | null {
  const { depthM, peakC, thickness } = f.cutFace
  const first = peakC.findIndex((peak) => peak < PINK_BELOW_C)
  const share = pinkShare(f)
  if (!share) return null
  if (first < 0) return point(thickness / 2)
  const [a, b] = [peakC[first - 1] ?? PINK_BELOW_C, peakC[first] ?? PINK_BELOW_C]
  const part = a > b ? (a - PINK_BELOW_C) / (a - b) : 0
  const likely = first === 0 ? 0 : (depthM[first - 1] ?? 0) + part * ((depthM[first] ?? 0) - (depthM[first - 1] ?? 0))
  // The face keeps its shape: the depth goes as 1 − √share.
  const scale = (x: number) => (likely * (1 - Math.sqrt(x))) / Math.max(1e-6, 1 - Math.sqrt(share.likely))
  return { low: scale(share.high), likely, high: Math.min(thickness / 2, scale(share.low)) }
}

/** Where the figure comes from. */
export interface Found {
  readonly figure: Figure
  /** A setting is checked against the plan, an outcome against the ensemble. */
  readonly nature: 'setting' | 'outcome'
}

/** What plan or ensemble say on a claim of this kind, in the claim's unit; null where they say nothing. */
export function findFigure(f: Forecast, claim: Claim, boneShare: number): Found | null {
  const setting = settingOf(f, claim)
  if (setting !== null) return { figure: point(setting), nature: 'setting' }
  const figure = outcomeOf(f, claim, boneShare)
  return figure && { figure, nature: 'outcome' }
}

function outcomeOf(f: Forecast, claim: Claim, boneShare: number): Figure | null {
  switch (claim.kind) {
    case 'pull-temperature':
      return probeAt(f, 'pull')
    case 'off-heat-temperature':
      return figureOf(f.offHeat.probeC)
    case 'sliced-temperature':
      return claim.says === 'coldest' ? coldestPeak(f) : figureOf(f.atSlice.probeC)
    case 'carryover-rise':
      return figureOf(f.atSlice.probeC.map((c, m) => c - (f.offHeat.probeC[m] ?? Number.NaN)))
    case 'warm-up-time':
      return time(f, 'fire-lit', claim.says === 'lead' ? 'meat-on' : 'cooker-steady')
    case 'roast-time':
      return time(f, 'meat-on', 'pull')
    case 'sear-time':
      return hasSear(f) ? time(f, 'pull', 'off-heat') : null
    case 'rest-time':
      return restFigure(f)
    case 'total-time':
      return time(f, 'fire-lit', 'first-slice')
    case 'turn-time':
      return time(f, 'meat-on', 'turn')
    case 'probe-time':
      return time(f, 'meat-on', 'probe-in')
    case 'yield':
      return yieldOf(f, claim, boneShare)
    case 'edge-to-edge':
      return claim.unit === 'm' ? greyDepth(f) : pinkShare(f)
    default:
      return null
  }
}
function yieldOf(f: Forecast, claim: Claim, boneShare: number): Figure {
  if (claim.unit === 'kg') return cookedMass(f, boneShare)
  return claim.unit === 'people' ? servesFigure(f, boneShare) : figureOf(f.lossFrac)
}
