import 'server-only'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { loadShoot } from '@/lib/data/load-shoot'
import { cutOf } from '@/lib/model/custom-cut'
import { formatDate } from '@/lib/plan/clock'
import { cookerName } from '@/lib/plan/moments'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { formatMass, type Instant, type UnitSystem } from '@/lib/units'
import { dayBeside } from './day-pool'
import { forecastsBeside } from './forecast-pool'
import { keepForecasts, keepLayout, knownForecasts, knownLayout, type LaidOut, layoutOf, seedOf } from './worked-out'

export type { Forecasts } from './worked-out'

/** Has the forecasts worked out beside the server, so that `forecastsOf` knows them and no other request waits meanwhile. */
export async function forecastsReady(shoot: Shoot): Promise<void> {
  if (knownForecasts(shoot)) return
  const made = await forecastsBeside(shoot, seedOf(shoot))
  if (made) keepForecasts(made, shoot)
}

/** The day, laid out beside the server; what it was made from is kept with it, so that `forecastsBehind` knows that too. */
export async function layoutReady(shoot: Shoot): Promise<LaidOut> {
  const known = knownLayout(shoot)
  const behind = known?.ok ? known.layout.lidOpenings : undefined
  if (known && (!known.ok || knownForecasts(shoot, behind))) return known
  const day = await dayBeside(shoot)
  if (!day) return layoutOf(shoot)
  if (day.forecasts && day.laid.ok) keepForecasts(day.forecasts, shoot, day.laid.layout.lidOpenings)
  return keepLayout(day.laid, shoot)
}

/** The digest is all that a page may tell the browser of a fault: `app/error.tsx` has the words. */
const unreadable = (id: string, why: string | undefined) =>
  Object.assign(new Error(`The saved shoot ${id} does not read here: ${why}`), { digest: `shoot-unreadable/${id}` })

export interface OpenShoot {
  readonly id: string
  readonly version: number
  readonly canUndo: boolean
  readonly savedAt: Instant
  readonly document: ShootDocument
  readonly shoot: Shoot
}

/** The shoot a page is about, as it was saved: nothing is worked out yet. A page that does not exist if there is none. */
export const savedShoot = cache(async (id: string): Promise<OpenShoot> => {
  const saved = await loadShoot(id)
  if (!saved) notFound()
  const parsed = parseShoot(saved.document)
  if (!parsed.ok) throw unreadable(id, parsed.problems[0]?.sentence)
  return {
    id,
    version: saved.version,
    canUndo: saved.canUndo,
    savedAt: saved.savedAt,
    document: saved.document as ShootDocument,
    shoot: parsed.value,
  }
})

/** The same with its forecasts worked out. */
export const openShoot = cache(async (id: string): Promise<OpenShoot> => {
  const saved = await savedShoot(id)
  await forecastsReady(saved.shoot)
  return saved
})

/** "Saturday 15 May 2027 · leg of lamb, bone in, 3.2 kg, kettle, charcoal". */
export function factsOf(shoot: Shoot, units: UnitSystem): string {
  const cooks = shoot.cooks.map(({ roast, cooker }) => {
    const cut = cutOf(roast)?.name ?? roast.cut
    return `${cut}, ${formatMass(roast.mass, units)}, ${cookerName(cooker.kind)}`
  })
  return [formatDate(shoot), ...cooks].join(' · ')
}
