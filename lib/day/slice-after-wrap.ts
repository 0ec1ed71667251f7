import { windowOf } from '../model/quantiles'
import { formatClock, fromIso, toInstant } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { later, seconds } from '../units'
import type { DayForecast } from './day-forecast'
import type { Layout } from './layout'
import { asServed } from './slice-wait'
import { cooksOf } from './words'

/** Told from this share of cooks on, as other risks of the day are. */
const TOLD = 0.05

/** A first slice that comes when the day has wrapped, in a sentence; null where it comes in time. */
export function sliceAfterWrap(
  shoot: Shoot,
  forecasts: ReadonlyMap<string, DayForecast>,
  layout: Pick<Layout, 'meatOn' | 'start'>,
): string | null {
  const cook = shoot.cooks[0]?.id ?? ''
  const forecast = forecasts.get(cook)
  const wrap = shoot.day?.wrap
  if (wrap === undefined || !forecast) return null
  const meatOn = layout.meatOn[cook] ?? layout.start
  const slice = asServed(shoot, cook, forecast, meatOn).moments['first-slice']
  if (!slice) return null
  const on = fromIso(meatOn)
  const roomS = (toInstant(shoot, wrap) - on) / 1000
  const late = slice.filter((s) => s > roomS).length / slice.length
  if (late < TOLD) return null
  const { likely } = windowOf(slice)
  const way = 'Write a later wrap, or let it be done sooner.'
  if (likely !== null && likely <= roomS)
    return `In ${cooksOf(late)} the first slice comes after the wrap at ${wrap}. ${way}`
  const comes =
    likely === null ? 'may never come' : `is likely at ${formatClock(later(on, seconds(likely)), shoot.zone)}`
  return `The first slice ${comes}, and the day wraps at ${wrap}. ${way}`
}
