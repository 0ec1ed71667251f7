import { layOutDay } from '@/lib/day/lay-out'
import type { Layout } from '@/lib/day/layout'
import { sliceAfterWrap } from '@/lib/day/slice-after-wrap'
import { cutFaceSentence, drawCutFace, tonesOf } from '@/lib/export/cut-face'
import { heatsBeside } from '@/lib/export/cut-face-beside'
import { type HeatFacts, heatLineFacts } from '@/lib/export/heat-line'
import { safetyPanel } from '@/lib/export/safety-panel'
import { cutOf } from '@/lib/model/custom-cut'
import type { Forecast } from '@/lib/model/forecast'
import { fuelSummary } from '@/lib/model/fuel-need'
import { spreadOf } from '@/lib/model/quantiles'
import { allAsRead, type ReadersWay } from '@/lib/plan/as-read'
import { formatClock } from '@/lib/plan/clock'
import { documentWarnings } from '@/lib/plan/document-warnings'
import type { Shoot } from '@/lib/plan/shoot'
import { celsius, formatShare, formatTemp, type UnitSystem } from '@/lib/units'
import { type HeatPictures, heatDraft, heatPictures, PLAN_SIZES } from '../ui/heat-line-shapes'
import {
  firstSlice,
  itLosesAbout,
  itNeverGetsThere,
  light,
  middleWhenSliced,
  ovenOn,
  safetyOf,
  safetyTitle,
  wouldClimb,
} from '../words/plan'
import type { Forecasts } from '../worked-out'
import { heatLineInput, meatOnOf, momentWords } from './heat-line-input'
import { placedCautions } from './placed-cautions'
import type { Preview } from './preview'

/** The day without its shots: only when the meat goes on matters here. */
const bareDay = (shoot: Shoot, forecasts: Forecasts): Layout =>
  layOutDay({ ...shoot, shots: undefined, tasks: undefined }, forecasts, { seed: shoot.seed ?? 1, sweeps: 1 })

const IN_THE_PLAN = { lanes: false, paper: false }

/** The heat line alone, in the shape that is `show`n, or in all. */
export function draftFrom(
  shoot: Shoot,
  forecasts: Forecasts,
  units: UnitSystem,
  way: ReadersWay,
  show: string | undefined,
): HeatPictures {
  const facts = heatLineFacts(heatLineInput(shoot, forecasts, bareDay(shoot, forecasts), false, units, way))
  const sizes = show === undefined ? PLAN_SIZES : PLAN_SIZES.filter((size) => size.show === show)
  return allAsRead(heatDraft(facts as HeatFacts, sizes, IN_THE_PLAN), way)
}

/** The plan page's pictures and sentences. */
export function previewFrom(shoot: Shoot, forecasts: Forecasts, units: UnitSystem, way: ReadersWay): Preview {
  const layout = bareDay(shoot, forecasts)
  const forecast = forecasts.get(shoot.cooks[0]?.id ?? '') as Forecast
  const facts = heatLineFacts(heatLineInput(shoot, forecasts, layout, false, units, way)) as HeatFacts
  const preview: Preview = {
    units,
    kernel: forecast.kernel,
    first: firstLine(shoot, forecasts, layout),
    second: secondLine(shoot, forecasts, layout),
    heatLine: heatPictures(facts, PLAN_SIZES, IN_THE_PLAN),
    cutFace: drawCutFace(forecast, units),
    slice: cutFaceSentence(forecast, units),
    heats: heatsBeside(forecast, units),
    tones: tonesOf(forecast, units),
    facts: factsOf(forecast, units),
    safety: safetyOfCooks(shoot, forecasts, units),
    conflicts: conflictsOf(shoot, forecasts, layout),
    warnings: documentWarnings(shoot, forecasts),
    cautions: placedCautions(shoot, forecasts),
  }
  return allAsRead(preview, way)
}

function conflictsOf(shoot: Shoot, forecasts: Forecasts, layout: Layout): readonly string[] {
  const wish = layout.conflicts.filter(({ rule }) => rule === 'slice-wish').map(({ sentence }) => sentence)
  const afterWrap = sliceAfterWrap(shoot, forecasts, layout)
  return afterWrap ? [...wish, afterWrap] : wish
}

function safetyOfCooks(shoot: Shoot, forecasts: Forecasts, units: UnitSystem): Preview['safety'] {
  return shoot.cooks.flatMap((cook) => {
    const forecast = forecasts.get(cook.id)
    const animal = cutOf(cook.roast)?.animal
    if (!forecast || !animal) return []
    const title = shoot.cooks.length > 1 ? safetyOf(cook.id) : safetyTitle
    return [{ title, panel: safetyPanel(forecast, animal, shoot.authority ?? 'US', units) }]
  })
}

function firstLine(shoot: Shoot, forecasts: Forecasts, layout: Layout): string {
  const fire = momentWords(shoot, forecasts, layout, 'fire-lit')
  const on = formatClock(meatOnOf(layout, shoot.cooks[0]?.id ?? ''), shoot.zone)
  const oven = ['oven', 'convection-oven'].includes(shoot.cooks[0]?.cooker.kind ?? '')
  return `${oven ? ovenOn : light} at ${fire?.likely ?? on}. Meat ${oven ? 'in' : 'on'} at ${on}.`
}
function secondLine(shoot: Shoot, forecasts: Forecasts, layout: Layout): string {
  const slice = momentWords(shoot, forecasts, layout, 'first-slice')
  if (slice?.likely) return firstSlice(slice.words)
  return itNeverGetsThere
}

const range = (low: number, high: number, print: (n: number) => string) =>
  print(low) === print(high) ? print(low) : `${print(low)} to ${print(high)}`

function factsOf(forecast: Forecast, units: UnitSystem): readonly string[] {
  const temp = (c: number) => formatTemp(celsius(c), units)
  const sliced = spreadOf(forecast.atSlice.coreC)
  const peak = spreadOf(forecast.peakCoreC)
  const loss = spreadOf(forecast.lossFrac)
  const share = (n: number) => formatShare(n)
  const fuel = fuelSummary(forecast, units)
  return [
    middleWhenSliced(temp(sliced.likely), range(sliced.low, sliced.high, temp)),
    wouldClimb(temp(peak.likely)),
    itLosesAbout(share(loss.likely), range(loss.low, loss.high, share)),
    ...(fuel ? [fuel.sentence] : []),
  ]
}
