import type { Layout } from '@/lib/day/layout'
import { cutOf } from '@/lib/model/custom-cut'
import { minimumFor } from '@/lib/model/minimums'
import { windowOf } from '@/lib/model/quantiles'
import { allAsRead, CORES_OWN, type ReadersWay } from '@/lib/plan/as-read'
import { formatClock, fromIso } from '@/lib/plan/clock'
import { momentName } from '@/lib/plan/moments'
import type { Shoot } from '@/lib/plan/shoot'
import { celsius, formatDuration, formatTemp, type Instant, later, minutes, type UnitSystem } from '@/lib/units'
import type { HeatLineProps } from '../ui/heat-line'
import { aboutTo, authoritysMinimum, firstSlice, heatLineOf, mayNeverCome } from '../words/plan'
import type { Forecasts } from '../worked-out'

export const meatOnOf = (layout: Layout, cook: string): Instant => fromIso(layout.meatOn[cook] ?? layout.start)

/** "about 20:33, 20:00 to 21:11", or that it may never come. */
export function momentWords(
  shoot: Shoot,
  forecasts: Forecasts,
  layout: Layout,
  id: 'fire-lit' | 'first-slice' | 'pull',
) {
  const cook = shoot.cooks[0]?.id ?? ''
  const samples = forecasts.get(cook)?.moments[id]
  if (!samples) return null
  const { early, likely, late } = windowOf(samples)
  const clock = (s: number) => formatClock(later(meatOnOf(layout, cook), s as never), shoot.zone)
  return {
    likely: likely === null ? null : clock(likely),
    words:
      likely === null
        ? mayNeverCome(momentName(id, shoot.cooks[0]?.cooker.kind ?? 'oven'))
        : aboutTo(clock(likely), early === null ? '' : clock(early), late === null ? 'never' : clock(late)),
  }
}

/** The authority's minimum for the first roast, as the line across the picture says it. */
export function minimumLine(shoot: Shoot, units: UnitSystem = 'metric'): HeatLineProps['minimum'] {
  const cut = shoot.cooks[0] && cutOf(shoot.cooks[0].roast)
  if (!cut) return undefined
  const { tempC, restMin } = minimumFor(cut, shoot.authority)
  const held = restMin > 0 ? `, then ${formatDuration(minutes(restMin))}` : ''
  return {
    at: celsius(tempC),
    words: authoritysMinimum(formatTemp(celsius(tempC), units), held),
  }
}

/** What the heat line of this shoot is drawn from. */
export function heatLineInput(
  shoot: Shoot,
  forecasts: Forecasts,
  layout: Layout,
  lanes: boolean,
  units: UnitSystem = 'metric',
  way: ReadersWay = CORES_OWN,
): HeatLineProps {
  const slice = allAsRead(momentWords(shoot, forecasts, layout, 'first-slice'), way)
  return {
    zone: shoot.zone,
    place: shoot.place,
    title: heatLineOf(shoot.title, slice?.words ?? 'not planned'),
    cooks: shoot.cooks.flatMap((cook) => {
      const forecast = forecasts.get(cook.id)
      return forecast ? [{ forecast, meatOn: meatOnOf(layout, cook.id), title: cook.id }] : []
    }),
    shoot,
    layout: lanes ? layout : undefined,
    say: lanes && slice?.likely ? { main: firstSlice(slice.words), why: [] } : undefined,
    minimum: minimumLine(shoot, units),
    units,
    way,
    lanes,
  }
}
