import 'server-only'
import type { Layout } from '@/lib/day/layout'
import { type HeatPlan, heatLineFacts } from '@/lib/export/heat-line'
import type { Forecast } from '@/lib/model/forecast'
import type { MomentId } from '@/lib/model/moment-ids'
import { windowOf } from '@/lib/model/quantiles'
import { safetyOf } from '@/lib/model/safety-summary'
import type { ReadersWay } from '@/lib/plan/as-read'
import { burnsSolidFuel, momentsOf } from '@/lib/plan/moments'
import type { Cook, Shoot } from '@/lib/plan/shoot'
import { boardFacts, type PlannedCook, type Span95 } from '@/lib/session/board-facts'
import { celsius, formatTemp, type Instant, later, type Seconds, type UnitSystem } from '@/lib/units'
import { heatLineInput, meatOnOf } from '../shoots/heat-line-input'
import { belowMinimum, keepsMinimum, usdaFsisNoTable } from '../words/set'
import type { Forecasts } from '../worked-out'
import type { SetFacts } from './set-facts'

/** What a set screen knows of this shoot besides the live session. */
export function factsOfBoard(
  shoot: Shoot,
  forecasts: Forecasts,
  layout: Layout,
  units: UnitSystem,
  way?: ReadersWay,
): SetFacts {
  const planned = shoot.cooks.flatMap((cook) => {
    const forecast = forecasts.get(cook.id)
    return forecast ? [[cook.id, plannedCook(shoot, cook, forecast, meatOnOf(layout, cook.id), units)] as const] : []
  })
  const facts = boardFacts(shoot, layout, Object.fromEntries(planned), burnsSolidFuel)
  return { ...facts, heat: heatOfCooks(shoot, heatLineInput(shoot, forecasts, layout, true, units, way)) }
}

/** This morning's picture of each roast; the shots belong to all of them. */
function heatOfCooks(shoot: Shoot, plan: HeatPlan): SetFacts['heat'] {
  return Object.fromEntries(
    shoot.cooks.flatMap(({ id }) => {
      const own = plan.cooks.filter(({ title }) => title === id)
      const facts = heatLineFacts({ ...plan, cooks: own })
      return facts ? [[id, facts] as const] : []
    }),
  )
}

function plannedCook(shoot: Shoot, cook: Cook, forecast: Forecast, meatOn: Instant, units: UnitSystem): PlannedCook {
  const windows = momentsOf(cook).map((moment) => [moment, spanOf(forecast, moment, meatOn)] as const)
  return { windows: Object.fromEntries(windows), ...foodRules(shoot, forecast, units) }
}

function spanOf(forecast: Forecast, moment: MomentId, meatOn: Instant): Span95 {
  const samples = forecast.moments[moment]
  const at = (s: Seconds | null) => (s === null ? null : later(meatOn, s))
  const { early, likely, late } = samples ? windowOf(samples) : { early: null, likely: null, late: null }
  return { early: at(early), likely: at(likely), late: at(late) }
}

/** A plan is safe to taste where nearly every likely cook of it keeps the minimum. */
const NEARLY_ALL = 0.95

function foodRules(shoot: Shoot, forecast: Forecast, units: UnitSystem): Pick<PlannedCook, 'tasting' | 'whose'> {
  const authority = shoot.authority ?? 'US'
  const { metShare, minimum } = safetyOf(forecast, authority)
  const asks = `${formatTemp(celsius(minimum.tempC), units)}${minimum.restMin > 0 ? `, then ${minimum.restMin} min` : ''}`
  const allowed = metShare >= NEARLY_ALL
  const whose = authority === 'US' ? 'USDA FSIS' : usdaFsisNoTable(authority)
  return {
    tasting: {
      allowed,
      why: allowed ? keepsMinimum(asks) : belowMinimum(asks),
    },
    whose,
  }
}
