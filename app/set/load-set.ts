import 'server-only'
import { lastErasure } from '@/lib/data/person/erasure-version'
import type { Layout } from '@/lib/day/layout'
import type { Problem } from '@/lib/refusals'
import { sessionDay } from '@/lib/session/session-day'
import { instant, type UnitSystem } from '@/lib/units'
import { liveDay } from '../live/live-days'
import { readersWay } from '../locale'
import { chosenUnits } from '../units'
import { layoutReady, type OpenShoot, openShoot } from '../workbench'
import { forecastsBehind } from '../worked-out'
import { factsOfBoard } from './facts-of'
import type { SetFacts } from './set-facts'
import type { SetOpening } from './set-feed'

export type SetPage = { readonly open: OpenShoot; readonly units: UnitSystem } & (
  | { readonly ok: true; readonly facts: SetFacts; readonly opening: SetOpening; readonly layout: Layout }
  | { readonly ok: false; readonly problems: readonly Problem[] }
)

/** What every screen of the set opens with. */
export async function loadSet(shootId: string): Promise<SetPage> {
  const open = await openShoot(shootId)
  const units = await chosenUnits()
  const laid = await layoutReady(open.shoot)
  if (!laid.ok) return { open, units, ok: false, problems: laid.problems }
  const { layout } = laid
  const facts = factsOfBoard(open.shoot, forecastsBehind(open.shoot, layout), layout, units, await readersWay())
  const live = liveDay(shootId)
  const [latest, state] = [await live.latest(), await live.state()]
  const { start, meatOn, lidOpenings } = layout
  const opening: SetOpening = {
    version: open.version,
    day: sessionDay(open.shoot, layout),
    forecast: latest && { id: latest.id, at: latest.at, forecast: latest.forecast },
    people: facts.people,
    state,
    now: instant(Date.now()),
    erased: await lastErasure(shootId),
    plan: { document: open.document, layout: { start, meatOn, lidOpenings } },
  }
  return { open, units, ok: true, facts, opening, layout }
}
