import 'server-only'
import { loadLog } from '@/lib/data/load-log'
import type { Layout } from '@/lib/day/layout'
import { type HeatFacts, heatLineFacts } from '@/lib/export/heat-line'
import { EMPTY_LOG, merge } from '@/lib/log/log'
import { openSession, withLog } from '@/lib/session/session'
import { sessionDay } from '@/lib/session/session-day'
import type { UnitSystem } from '@/lib/units'
import { readLine } from '../announced'
import { liveDay } from '../live/live-days'
import { factsOfBoard } from '../set/facts-of'
import { heatNow } from '../set/live-roast'
import type { HeatLineProps } from '../ui/heat-line'
import type { OpenShoot } from '../workbench'
import type { Forecasts } from '../worked-out'

/** What a page's heat line is drawn from: on the day itself with what was read, marked and forecast since this morning. */
export async function heatOnTheDay(
  { id, shoot }: OpenShoot,
  layout: Layout,
  forecasts: Forecasts,
  plan: HeatLineProps,
  units: UnitSystem,
): Promise<HeatFacts | null> {
  const morning = heatLineFacts(plan)
  const now = Date.now()
  const cook = shoot.cooks[0]?.id
  if (!morning || cook === undefined || now < morning.from || now > morning.to) return morning
  const lines = (await loadLog(id, 0)).flatMap(readLine)
  const latest = await liveDay(id).latest()
  const told = withLog(openSession(sessionDay(shoot, layout)), merge(EMPTY_LOG, lines))
  const session = { ...told, forecast: latest && { id: latest.id, ...latest.forecast } }
  return heatNow(morning, session, factsOfBoard(shoot, forecasts, layout, units), cook)
}
