import 'server-only'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { loadShoot } from '@/lib/data/load-shoot'
import { layOutWithLids } from '@/lib/day/lay-out-with-lids'
import type { Layout } from '@/lib/day/layout'
import type { LidOpenings } from '@/lib/day/lid-openings'
import { asServed } from '@/lib/day/slice-wait'
import { cutOf } from '@/lib/model/custom-cut'
import type { Forecast } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { MODEL_VERSION } from '@/lib/model/version'
import { formatDate } from '@/lib/plan/clock'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { cookerName } from '@/lib/plan/moments'
import { parseShoot, problemsForLayout } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { formatMass, type Instant, type UnitSystem } from '@/lib/units'
import { forecastsBeside } from './forecast-pool'

export const seedOf = (shoot: Shoot) => shoot.seed ?? 1
export type Forecasts = ReadonlyMap<string, Forecast>

const KEPT = 24
/** The last few results by what went in; the core is deterministic, so the same document never needs a second run. */
function remembered<T, Beside extends readonly unknown[]>(make: (shoot: Shoot, ...beside: Beside) => T) {
  const results = new Map<string, T>()
  const keyOf = (shoot: Shoot, beside: Beside) => JSON.stringify([shoot, ...beside])
  const keep = (made: T, shoot: Shoot, ...beside: Beside): T => {
    results.set(keyOf(shoot, beside), made)
    if (results.size > KEPT) results.delete(results.keys().next().value as string)
    return made
  }
  const known = (shoot: Shoot, ...beside: Beside) => results.get(keyOf(shoot, beside))
  const give = (shoot: Shoot, ...beside: Beside): T =>
    known(shoot, ...beside) ?? keep(make(shoot, ...beside), shoot, ...beside)
  return Object.assign(give, { known, keep })
}

const forecastEach = remembered(
  (shoot, lids: LidOpenings): Forecasts =>
    new Map(
      shoot.cooks.map((cook) => [
        cook.id,
        forecastCook(toCookPlan(shoot, cook, lids[cook.id]), { seed: seedOf(shoot), kernel: fastestKernel() }),
      ]),
    ),
)
/** Only what the fire and the meat depend on: editing a shot never re-runs the physics. */
const physicsOf = (shoot: Shoot): Shoot => ({
  ...shoot,
  title: MODEL_VERSION,
  shots: undefined,
  people: undefined,
  cameras: undefined,
  tasks: undefined,
  day: undefined,
  card: undefined,
  callSheet: undefined,
  coverage: undefined,
  risk: undefined,
})
/** `lids`: opened for shots. */
export const forecastsOf = (shoot: Shoot, lids: LidOpenings = {}): Forecasts => forecastEach(physicsOf(shoot), lids)

/** Has the forecasts worked out beside the server, so that `forecastsOf` knows them and no other request waits meanwhile. */
export async function forecastsReady(shoot: Shoot): Promise<void> {
  const physics = physicsOf(shoot)
  if (forecastEach.known(physics, {})) return
  const made = await forecastsBeside(physics, seedOf(shoot))
  if (made) forecastEach.keep(made, physics, {})
}

/** What a layout was made from: the lid is off when it says so, and a roast that waits for its light is served then. */
export const forecastsBehind = (shoot: Shoot, layout: Layout): Forecasts =>
  new Map(
    [...forecastsOf(shoot, layout.lidOpenings)].map(([id, forecast]) => [
      id,
      asServed(shoot, id, forecast, layout.meatOn[id] ?? layout.start),
    ]),
  )

export type LaidOut = { ok: true; layout: Layout } | { ok: false; problems: readonly Problem[] }
const layOut = remembered((shoot): LaidOut => {
  const problems = problemsForLayout(shoot)
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, layout: layOutWithLids(shoot, forecastsOf, { seed: seedOf(shoot) }).layout }
})
/** Words on paper move nobody. */
const withoutWords = (shoot: Shoot): Shoot => ({
  ...shoot,
  card: undefined,
  callSheet: undefined,
  coverage: undefined,
  risk: undefined,
})
export const layoutOf = (shoot: Shoot): LaidOut => layOut(withoutWords(shoot))
/** The layout if it is still remembered; nothing is searched for. */
export const rememberedLayout = (shoot: Shoot): Layout | undefined => {
  const laid = layOut.known(withoutWords(shoot))
  return laid?.ok ? laid.layout : undefined
}

export interface OpenShoot {
  readonly id: string
  readonly version: number
  readonly canUndo: boolean
  readonly savedAt: Instant
  readonly document: ShootDocument
  readonly shoot: Shoot
}

/** The shoot a page is about; a page that does not exist if there is none. */
export const openShoot = cache(async (id: string): Promise<OpenShoot> => {
  const saved = await loadShoot(id)
  if (!saved) notFound()
  const parsed = parseShoot(saved.document)
  if (!parsed.ok) throw new Error(`The saved shoot ${id} no longer reads: ${parsed.problems[0]?.sentence}`)
  await forecastsReady(parsed.value)
  return {
    id,
    version: saved.version,
    canUndo: saved.canUndo,
    savedAt: saved.savedAt,
    document: saved.document as ShootDocument,
    shoot: parsed.value,
  }
})

/** "Saturday 15 May 2027 · leg of lamb, bone in, 3.2 kg, kettle, charcoal". */
export function factsOf(shoot: Shoot, units: UnitSystem): string {
  const cooks = shoot.cooks.map(({ roast, cooker }) => {
    const cut = cutOf(roast)?.name ?? roast.cut
    return `${cut}, ${formatMass(roast.mass, units)}, ${cookerName(cooker.kind)}`
  })
  return [formatDate(shoot), ...cooks].join(' · ')
}
