/**
 * Why the forecast moved, in words: how far each fitted quantity has shifted times what pull moves for each of its standard
 * deviations among the members before, quantities that a cook sees as one taken together.
 */
import { formatDuration, formatRise, kelvins, type Seconds, seconds, type UnitSystem } from '../units'
import type { Assimilated, Fit } from './assimilate'
import { COOKERS } from './cooker'
import { SHARED_WITH_SENSOR } from './cooker-fit'
import { cholesky, solve } from './dense'
import type { FittedName } from './fitted'
import type { Forecast } from './forecast'
import { type Prior, priorOf } from './memory-prior'
import { medianOf } from './quantiles'
import { drawLatents, type Latents, PRIORS } from './spread'

export interface Moved {
  /** Of the likely pull, s: later is positive. */
  readonly byS: number
  /** The greatest first; together about what it moved. */
  readonly reasons: readonly { readonly cause: string; readonly sentence: string; readonly byS: number }[]
}

/** What a cook sees as one thing. */
const GROUPS = {
  cooker: ['level'],
  thickness: ['thickness'],
  start: ['start'],
  skin: ['crust', 'crustHeat', 'vapour', 'emissivity', 'h', 'feed'],
  meat: ['time', 'k', 'shared', 'rhoC', 'juice'],
  probe: ['probeAt', 'probeBias'],
} as const satisfies Record<string, readonly FittedName[]>
type Group = keyof typeof GROUPS
const ALL = Object.values(GROUPS).flat() as readonly FittedName[]

/** A reason is told from this on: of the plan's pull, or in s. */
const WORTH_S = 60
const WORTH_SHARE = 0.15
const RIDGE = 4

/** `before` is the forecast without the readings, of the same seed. */
export function whyMoved(before: Forecast, now: Assimilated, units: UnitSystem = 'metric'): Moved {
  const [pulls, pullsNow] = [before.moments.pull, now.forecast.moments.pull]
  const byS = pulls && pullsNow ? medianOf(pullsNow) - medianOf(pulls) : 0
  const { levelSdK } = COOKERS[before.cook.cooker.kind]
  const fit = now.fit ?? cookerAlone(now.cooker, levelSdK)
  if (!pulls || !fit || !Number.isFinite(byS)) return { byS: Number.isFinite(byS) ? byS : 0, reasons: [] }
  const prior = priorOf(before.cook.cooker)
  const perSd = effects(before, pulls)
  const reasons = (Object.keys(GROUPS) as Group[])
    .map((group) => ({
      group,
      byS: group === 'cooker' ? cookerEffect(fit, perSd, levelSdK, prior) : effectOf(GROUPS[group], fit, perSd, prior),
    }))
    .filter((reason) => Math.abs(reason.byS) >= Math.max(WORTH_S, WORTH_SHARE * Math.abs(byS)))
    .sort((a, b) => Math.abs(b.byS) - Math.abs(a.byS))
    .map(({ group, byS: ownS }) => {
      const words = cause(group, ownS, now.cooker, now.forecast, fit, units)
      return { byS: ownS, cause: words, sentence: `${words}: ${laterWords(seconds(ownS))}.` }
    })
  return { byS, reasons }
}

type Found = Pick<Fit, 'names' | 'shift' | 'levelK' | 'driftK'>
/** Before the probe reads, the cooker's sensor may have told something. */
function cookerAlone({ seen, biasK, pastK }: Assimilated['cooker'], levelSdK: number): Found | undefined {
  if (!seen || levelSdK === 0) return undefined
  const driftK = pastK.reduce((sum, x) => sum + x, 0) / (pastK.length || 1)
  return { names: [], shift: [], levelK: SHARED_WITH_SENSOR * biasK, driftK }
}

type PerSd = ReadonlyMap<FittedName, number>
const effectOf = (names: readonly FittedName[], fit: Found, perSd: PerSd, { at }: Prior) =>
  names.reduce((sum, name) => {
    const { mean, sd } = at(name)
    const found = fit.names.includes(name) ? (shiftOf(fit, name) - mean) / sd : 0
    return sum + (perSd.get(name) ?? 0) * found
  }, 0)
/** Level and drift together. */
function cookerEffect(fit: Found, perSd: PerSd, levelSdK: number, { at }: Prior) {
  if (levelSdK === 0) return 0
  const { mean, sd } = at('level')
  return ((perSd.get('level') ?? 0) * ((fit.levelK + fit.driftK) / levelSdK - mean)) / sd
}
const shiftOf = ({ names, shift }: Found, name: FittedName) => shift[names.indexOf(name)] ?? 0
/** What is drawn between 0 and 1, in standard deviations of that. */
const drawOf = (z: Latents, name: FittedName) => (name === 'probeAt' ? (z.probeAt - 0.5) * Math.sqrt(12) : z[name])

/** Of ln(pull) on all draws, by least squares over the members; times the median, s. */
function effects({ seed, members }: Forecast, pulls: Float64Array): PerSd {
  const n = ALL.length
  const middleS = medianOf(pulls)
  const normal = new Float64Array(n * n)
  const right = new Float64Array(n)
  for (let i = 0; i < n; i++) normal[i * n + i] = RIDGE
  for (let m = 0; m < members; m++) {
    const y = Math.log((pulls[m] as number) / middleS)
    if (!Number.isFinite(y)) continue
    const z = drawLatents(seed, m)
    const x = ALL.map((name) => drawOf(z, name))
    for (let i = 0; i < n; i++) {
      right[i] = (right[i] as number) + (x[i] as number) * y
      for (let j = 0; j < n; j++)
        normal[i * n + j] = (normal[i * n + j] as number) + (x[i] as number) * (x[j] as number)
    }
  }
  const slopes = solve(cholesky(normal, n), n, right)
  return new Map(ALL.map((name, i) => [name, middleS * (slopes[i] as number)]))
}

/** "14 min later". */
export const laterWords = (by: Seconds) =>
  `${formatDuration(seconds(Math.round(Math.abs(by) / 60) * 60))} ${by > 0 ? 'later' : 'earlier'}`
function cause(
  group: Group,
  byS: number,
  cooker: Assimilated['cooker'],
  forecast: Forecast,
  fit: Found,
  units: UnitSystem,
): string {
  const slow = byS > 0
  switch (group) {
    case 'cooker':
      return cookerWords(cooker, fit.levelK + fit.driftK, slow, units)
    case 'thickness':
      return `The roast is ${slow ? 'thicker' : 'thinner'} than ${forecast.cook.roast.thickness === undefined ? 'usual for its mass' : 'said'}`
    case 'start': {
      const offK = PRIORS.startC.sd * shiftOf(fit, 'start')
      return `The meat started ${formatRise(kelvins(Math.abs(offK)), units)} ${offK > 0 ? 'warmer' : 'colder'} than said`
    }
    case 'skin':
      return `The skin ${slow ? 'takes less heat: it stays wet, or its crust holds heat back' : 'takes more heat than usual'}`
    case 'meat':
      return `The meat warms ${slow ? 'more slowly' : 'faster'} than usual`
    case 'probe':
      return `The probe's tip lies ${slow ? 'nearer the coldest point' : 'further from the coldest point'} than usual`
  }
}
/** What the sensor shows comes first: it is what the crew can see. */
function cookerWords(
  { seen, biasK, pastK }: Assimilated['cooker'],
  atMeatK: number,
  slow: boolean,
  units: UnitSystem,
): string {
  const shownK = seen ? biasK + (pastK.at(-1) ?? 0) : 0
  const agrees = Math.abs(shownK) >= 4 && shownK < 0 === slow
  const offK = agrees ? shownK : atMeatK
  const by = formatRise(kelvins(Math.abs(offK)), units)
  return agrees
    ? `The cooker runs ${by} ${offK < 0 ? 'under' : 'over'} its dial`
    : `At the meat the cooker is ${by} ${offK < 0 ? 'cooler' : 'hotter'} than its dial says`
}
