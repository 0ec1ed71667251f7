import { layOutWithLids } from '@/lib/day/lay-out-with-lids'
import type { Layout } from '@/lib/day/layout'
import type { LidOpenings } from '@/lib/day/lid-openings'
import { asServed } from '@/lib/day/slice-wait'
import type { Forecast } from '@/lib/model/forecast'
import { forecastCook } from '@/lib/model/forecast-cook'
import { fastestKernel } from '@/lib/model/kernels'
import { MODEL_VERSION } from '@/lib/model/version'
import { toCookPlan } from '@/lib/plan/cook-plan'
import { problemsForLayout } from '@/lib/plan/parse'
import type { Shoot } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { remembered } from './remembered'

/** What a shoot comes to, kept for the next who asks; the server and the threads beside it each have their own. */
export type Forecasts = ReadonlyMap<string, Forecast>
export const seedOf = (shoot: Shoot) => shoot.seed ?? 1

const KEPT = 24
const forecastEach = remembered(
  KEPT,
  (shoot: Shoot, lids: LidOpenings): Forecasts =>
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
  sides: undefined,
  day: undefined,
  card: undefined,
  callSheet: undefined,
  coverage: undefined,
  risk: undefined,
  clips: undefined,
  publish: undefined,
})
/** `lids`: opened for shots. */
export const forecastsOf = (shoot: Shoot, lids: LidOpenings = {}): Forecasts => forecastEach(physicsOf(shoot), lids)
export const knownForecasts = (shoot: Shoot, lids: LidOpenings = {}) => forecastEach.known(physicsOf(shoot), lids)
export const keepForecasts = (made: Forecasts, shoot: Shoot, lids: LidOpenings = {}) =>
  forecastEach.keep(made, physicsOf(shoot), lids)

/** What a layout was made from: the lid is off when it says so, and a roast that waits for its light is served then. */
export const forecastsBehind = (shoot: Shoot, layout: Layout): Forecasts =>
  new Map(
    [...forecastsOf(shoot, layout.lidOpenings)].map(([id, forecast]) => [
      id,
      asServed(shoot, id, forecast, layout.meatOn[id] ?? layout.start),
    ]),
  )

export type LaidOut = { ok: true; layout: Layout } | { ok: false; problems: readonly Problem[] }
const layOut = remembered(KEPT, (shoot: Shoot): LaidOut => {
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
  clips: undefined,
  publish: undefined,
})
export const layoutOf = (shoot: Shoot): LaidOut => layOut(withoutWords(shoot))
export const knownLayout = (shoot: Shoot): LaidOut | undefined => layOut.known(withoutWords(shoot))
export const keepLayout = (made: LaidOut, shoot: Shoot): LaidOut => layOut.keep(made, withoutWords(shoot))
/** The layout if it is still remembered; nothing is searched for. */
export const rememberedLayout = (shoot: Shoot): Layout | undefined => {
  const laid = knownLayout(shoot)
  return laid?.ok ? laid.layout : undefined
}
