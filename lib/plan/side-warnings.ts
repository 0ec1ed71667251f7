import type { Forecast, Trace } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { medianOf, quantileOf, sortedCopy } from '../model/quantiles'
import type { Warning } from '../refusals'
import { celsius, formatDuration, formatTemp, seconds } from '../units'
import type { Shoot } from './shoot'
import { roastOf, type Side, sideLastsS, sideSlot } from './side-tasks'

/** So far from the heat that its time is meant at a dish is not done by then; common practice, no source. */
const FAR_OFF_K = 25
/** The cooker is looked up so often. */
const LOOKS_S = 120

/** Where the cooker is not near the heat that a side's time is meant at, while it is in. */
export function sideWarnings(shoot: Shoot, forecasts: ReadonlyMap<string, Forecast>): Warning[] {
  return (shoot.sides ?? []).flatMap((side, i) => {
    const forecast = forecasts.get(roastOf(shoot, side.id) ?? '')
    const sentence = forecast && side.at !== undefined ? wrongHeat(side, side.at, forecast) : null
    return sentence ? [{ code: 'side-heat', path: `/sides/${i}/at`, sentence }] : []
  })
}

function wrongHeat(side: Side, wantedC: number, forecast: Forecast): string | null {
  const isIn = timeIn(side, forecast)
  if (!isIn) return null
  // With the meat off it the forecast follows the meat, not the cooker.
  const off = medianOf(forecast.moments['off-heat'] ?? Float64Array.of(Infinity))
  const levels: number[] = []
  for (let t = isIn.fromS; t <= Math.min(isIn.toS, off); t += LOOKS_S) levels.push(cookerAt(forecast.trace, t))
  const wanted = formatTemp(celsius(wantedC))
  if (levels.length === 0)
    return `"${side.title}" is in after the roast is off the heat; this forecast does not follow the cooker then and cannot say whether it holds ${wanted}.`
  const mean = levels.reduce((sum, c) => sum + c, 0) / levels.length
  if (Math.abs(mean - wantedC) <= FAR_OFF_K) return null
  const takes = formatDuration(seconds(side.takes))
  const does = mean < wantedC ? `give it longer than ${takes}` : `look at it well before its ${takes} are over`
  return `While "${side.title}" is in, the cooker holds about ${formatTemp(celsius(Math.round(mean / 5) * 5))}, not ${wanted}: ${does}, or plan another heat.`
}

function timeIn(side: Side, { moments }: Forecast): { readonly fromS: number; readonly toS: number } | null {
  const slot = sideSlot(side, (moment: MomentId, which) => {
    const times = moments[moment]
    const at = times ? quantileOf(sortedCopy(times), which === 'early' ? 0.05 : 0.5) : Infinity
    return Number.isFinite(at) ? at : null
  })
  return slot && { fromS: slot.lastS - sideLastsS(side), toS: slot.lastS }
}

function cookerAt({ startS, stepS, count, cookerC }: Trace, atS: number): number {
  const i = Math.min(count - 1, Math.max(0, Math.round((atS - startS) / stepS)))
  const members = cookerC.length / count
  return medianOf(Float64Array.from({ length: members }, (_, m) => cookerC[m * count + i] as number))
}
