/** Two slices of one roast side by side: which band is narrower, by how much, and what that costs in time and juice. */
import type { AnotherHeat } from '../model/another-heat'
import { knownCutOf } from '../model/custom-cut'
import type { Forecast } from '../model/forecast'
import { medianOf } from '../model/quantiles'
import { depthOf } from '../model/section'
import { celsius, formatDuration, formatShare, formatTemp, seconds, type UnitSystem } from '../units'
import { cutFaceSentence, depthWords, drawCutFace } from './cut-face'
import type { Drawing, DrawingTable } from './drawing'
import { lookScale } from './tones'

export interface Beside {
  /** "At 110 °C". */
  readonly title: string
  readonly drawing: Drawing
  readonly sentence: string
  /** What the other heat gains and costs, in one sentence each. */
  readonly says: readonly string[]
  readonly table: DrawingTable
}
/** Bands nearer than this are told as equal: the model cannot part them. [own-trial] within 1 mm under all skin laws. */
const SAME_BAND_M = 0.0015
const SAME_TIME_S = 150

const roastC = (forecast: Forecast) => forecast.cook.stages.find((stage) => stage.do === 'roast')?.at

/** Heats worth asking after: well away from the plan's own. [common practice, no source] */
const CHOICES_C = [110, 150, 180, 220]
const APART_K = 15
export const heatsBeside = (forecast: Forecast, units: UnitSystem): string[] => {
  const own = roastC(forecast)
  if (own === undefined) return []
  return CHOICES_C.filter((choice) => Math.abs(choice - own) > APART_K)
    .sort((a, b) => Math.abs(a - own) - Math.abs(b - own))
    .slice(0, 3)
    .sort((a, b) => a - b)
    .map((choice) => (units === 'us' ? `${5 * Math.round((1.8 * choice + 32) / 5)} °F` : `${choice} °C`))
}

export function besideOf(plan: Forecast, other: AnotherHeat, units: UnitSystem): Beside {
  const found = other.forecast
  return {
    title: `At ${formatTemp(celsius(roastC(found) ?? 0), units)}`,
    drawing: drawCutFace(found, units),
    sentence: cutFaceSentence(found, units),
    says: [
      sameMiddle(plan, other, units),
      bandWords(plan, found, units),
      timeWords(plan, found),
      lossWords(plan, found),
    ],
    table: tableOf(plan, found, units),
  }
}

/** "To the same middle when sliced (54 °C) it is pulled and taken off 4 °C hotter." */
function sameMiddle(plan: Forecast, { shiftK, timeFactor }: AnotherHeat, units: UnitSystem): string {
  const middle = formatTemp(celsius(plan.slice.cutFace.slicedC.at(-1) ?? 0), units)
  const lead = `Compared at the same middle when sliced, about ${middle}`
  if (timeFactor !== 1) return `${lead}: the roast takes ${Math.round(timeFactor * 100)} % of the plan’s time.`
  const degrees = Math.round(Math.abs(shiftK) * (units === 'us' ? 1.8 : 1))
  if (degrees === 0) return `${lead}: the plan’s own targets.`
  return `${lead}: every target is ${degrees} °${units === 'us' ? 'F' : 'C'} ${shiftK > 0 ? 'higher' : 'lower'}.`
}

const bandOf = (forecast: Forecast) => {
  const limitC = lookScale(knownCutOf(forecast.cook.roast).animal).bandC
  const { section } = forecast.slice
  const { thinM } = depthOf(section, 'peakC', limitC)
  return { limitC, thinM, through: thinM >= section.halfThicknessM * 0.999 }
}
function bandWords(plan: Forecast, other: Forecast, units: UnitSystem): string {
  const [own, its] = [bandOf(plan), bandOf(other)]
  const limit = formatTemp(celsius(own.limitC), units)
  if (own.through && its.through) return `Either way the whole face has been above ${limit}.`
  const narrower = own.thinM - its.thinM
  if (Math.abs(narrower) < SAME_BAND_M)
    return `The band above ${limit} is ${depthWords(its.thinM, units)} deep, the plan’s ${depthWords(own.thinM, units)}: no difference that can be told.`
  const by = depthWords(Math.abs(narrower), units)
  return `The band above ${limit} is ${depthWords(its.thinM, units)} deep instead of ${depthWords(own.thinM, units)}: ${by} ${narrower > 0 ? 'narrower' : 'wider'}.`
}

const sliceS = (forecast: Forecast) => medianOf(forecast.moments['first-slice'] ?? new Float64Array([Infinity]))
function timeWords(plan: Forecast, other: Forecast): string {
  const [own, its] = [sliceS(plan), sliceS(other)]
  const takes = `First slice about ${formatDuration(seconds(its))} after the meat goes on`
  if (!Number.isFinite(own) || Math.abs(its - own) < SAME_TIME_S) return `${takes}, as in the plan.`
  return `${takes}: ${formatDuration(seconds(Math.abs(its - own)))} ${its > own ? 'longer' : 'sooner'}.`
}
const lossWords = (plan: Forecast, other: Forecast) =>
  `It loses about ${formatShare(medianOf(other.lossFrac))} of its weight instead of ${formatShare(medianOf(plan.lossFrac))}.`

function tableOf(plan: Forecast, other: Forecast, units: UnitSystem): DrawingTable {
  const heat = (forecast: Forecast) => formatTemp(celsius(roastC(forecast) ?? 0), units)
  const both = (of: (forecast: Forecast) => string) => [of(plan), of(other)]
  const { limitC } = bandOf(plan)
  const deep = (forecast: Forecast) =>
    bandOf(forecast).through ? 'right through' : depthWords(bandOf(forecast).thinM, units)
  return {
    caption: 'The plan and the other heat',
    head: ['', `plan, ${heat(plan)}`, heat(other)],
    rows: [
      ['middle when sliced', ...both((f) => formatTemp(celsius(f.slice.cutFace.slicedC.at(-1) ?? 0), units))],
      ['first slice after', ...both((f) => formatDuration(seconds(sliceS(f))))],
      ['weight lost', ...both((f) => formatShare(medianOf(f.lossFrac)))],
      [`band above ${formatTemp(celsius(limitC), units)}`, ...both(deep)],
      [
        `face above ${formatTemp(celsius(limitC), units)}`,
        ...both((f) => formatShare(f.cutFace.shareAbove.find((a) => a.limitC === limitC)?.share.likely ?? 0)),
      ],
    ],
  }
}
