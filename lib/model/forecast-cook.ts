/** A cook plan to its forecast: geometry, material, a first look where the plan hangs on it, then every member. */

import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import { type Course, courseOf, type FirstLook, needsFirstLook, searOf } from './course'
import { knownCutOf } from './custom-cut'
import type { Solid } from './cut-cells'
import { likelyOf, type Slice, sliceOf } from './cut-face'
import { type Fire, fireOf } from './fire'
import type { Forecast, ForecastOptions } from './forecast'
import { fuelNeeded } from './fuel-need'
import { type CookAll, cookAllBy } from './kernels'
import { habitsOf, priorOf } from './memory-prior'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import { medianOf } from './quantiles'
import { settingOf } from './setting'
import { type Geometry, geometryOf } from './shape'
import { type Run, type Setting, simulate } from './simulate'
import { drawMember, type Member } from './spread'
import { traceOf } from './trace'
import { boilingC } from './vapour'
import { MODEL_VERSION } from './version'
import { warningsOf } from './warnings'

export const DEFAULT_MEMBERS = 256
/** Members of the first look; always the same ones, so that an ensemble does not depend on its size. */
const FIRST_LOOK = 64
/** Planned times are told in whole minutes. */
const PLANNED_S = 60
const PLANNER_SEED = 0

export type Prepared = ReturnType<typeof prepared>
/** What every member of a forecast shares, and who they are. */
export function prepared(plan: CookPlan, seed: number, cookAll: CookAll) {
  const cut = knownCutOf(plan.roast)
  const geometry = geometryOf(cut, plan.roast.mass, plan.roast)
  const draw = memberDrawer(plan, geometry, seed)
  // "Half the likely time" is a time of the plan: one for every ensemble of it.
  const planner = memberDrawer(plan, geometry, PLANNER_SEED)
  const setting = settingOf(plan, cut, geometry)
  const course = courseOf(plan, needsFirstLook(plan) ? firstLook(plan, setting, planner, cookAll) : undefined)
  return { cut, geometry, draw, setting: { ...setting, course }, course }
}

/** One member's cook alone. */
export function cookOne(plan: CookPlan, m: number, { seed, kernel = 'plain' }: ForecastOptions): Run {
  const { setting, draw } = prepared(plan, seed, cookAllBy(kernel))
  return simulate(setting, draw(m))
}

export function forecastCook(
  plan: CookPlan,
  { members = DEFAULT_MEMBERS, seed, kernel = 'plain', shown }: ForecastOptions,
): Forecast {
  const cookAll = cookAllBy(kernel)
  const of = prepared(plan, seed, cookAll)
  const drawn = Array.from({ length: members }, (_, m) => of.draw(m))
  return forecastFrom(plan, of, drawn, cookAll(of.setting, drawn), { seed, kernel, shown })
}

/** The forecast that members and their runs come to. */
export function forecastFrom(
  plan: CookPlan,
  { cut, geometry, setting, course, draw }: Pick<Prepared, 'cut' | 'geometry' | 'setting' | 'course' | 'draw'>,
  drawn: readonly Member[],
  runs: readonly Run[],
  { seed, kernel = 'plain', shown }: ForecastOptions,
): Forecast {
  const fires = drawn.map((member) => fireOf(plan, course, member))
  const slice = slicer(runs, { m: shown ?? likelyOf(runs, drawn), geometry, exponents: cut.exponents, setting, draw })
  const fuelKg = fuelNeeded(plan, setting, runs, draw, cookAllBy(kernel))
  return {
    modelVersion: MODEL_VERSION,
    kernel,
    seed,
    members: runs.length,
    cook: plan,
    moments: momentsOf(plan, course, runs, fires),
    trace: traceOf(plan, course, runs, drawn, fires),
    offHeat: statesOf(runs.map((run) => run.offHeat)),
    atSlice: statesOf(runs.map((run) => run.atSlice)),
    peakCoreC: Float64Array.from(runs, (run) => run.peakCoreC),
    lossFrac: Float64Array.from(runs, (run) => run.lossFrac),
    lethalityLog: Float64Array.from(runs, (run) => run.lethalityLog),
    lethalityAt: Float64Array.from(runs, (run) => run.lethalityAt),
    radial: { radiusM: geometry.radiusM, exponent: geometry.shapeExponent },
    get cutFace() {
      return slice().cutFace
    },
    get slice() {
      return slice()
    },
    ...(fuelKg ? { fuelKg } : {}),
    ...(setting.site.fuelKg < Infinity ? { fuelOutS: Float64Array.from(runs, (run) => run.ranOutS) } : {}),
    warnings: warningsOf(plan, course, runs),
  }
}

interface SlicerInput {
  readonly m: number
  readonly geometry: Geometry
  readonly exponents: Solid['exponents']
  readonly setting: Setting
  readonly draw: (m: number) => Member
}
/** The slice when it is asked for: the likely member is cooked again, so that no run need be kept for it. */
function slicer(runs: readonly Run[], input: SlicerInput): () => Slice {
  const { m, geometry, exponents, setting, draw } = input
  const members = runs.map(({ peakC, place }) => ({ peakC, place }))
  let made: Slice | undefined
  return () => {
    made ??= sliceOf({
      geometry,
      exponents,
      matter: setting.matter,
      boilingC: boilingC(setting.pressurePa),
      likely: { m, run: simulate(setting, draw(m)), member: draw(m) },
      members,
    })
    return made
  }
}

function memberDrawer(plan: CookPlan, geometry: Geometry, seed: number) {
  const input = {
    startC: plan.roast.start,
    thicknessSpread: geometry.thicknessSpread,
    habits: habitsOf(plan.cooker),
  }
  const prior = priorOf(plan.cooker)
  return (m: number) => drawMember(seed, m, input, (draws) => prior.tied(prior.of(draws)))
}

/** The cook without what hangs on itself, for the likely time to pull and the likely length of the sear. */
export function firstLook(plan: CookPlan, setting: Setting, draw: (m: number) => Member, cookAll: CookAll): FirstLook {
  const runs = cookAll(
    setting,
    Array.from({ length: FIRST_LOOK }, (_, m) => draw(m)),
  )
  const middle = (of: (moments: Run['moments']) => number) =>
    medianOf(Float64Array.from(runs, (run) => of(run.moments)))
  const pullS = middle((moments) => moments.pull)
  const searS = searOf(plan) ? middle((moments) => moments['off-heat'] - moments['sear-start'] || 0) : 0
  const planned = (timeS: number) => Math.max(PLANNED_S, Math.round(timeS / PLANNED_S) * PLANNED_S)
  return { pullS: Number.isFinite(pullS) ? planned(pullS / 2) * 2 : Infinity, searS: planned(searS) }
}

/** A cold start has no steady cooker before the meat goes on, and only a fire has vents. */
function momentsOf(plan: CookPlan, course: Course, runs: readonly Run[], fires: readonly Fire[]): Forecast['moments'] {
  const sears = plan.stages.some((stage) => stage.do === 'sear')
  const absent = new Set<MomentId>()
  if (course.cold) absent.add('cooker-steady')
  if (course.turnS === undefined) absent.add('turn')
  if (course.probeInS === undefined) absent.add('probe-in')
  if (!sears) absent.add('sear-start')
  const opens = plan.stages.some((stage) => stage.do === 'sear' && stage.over === undefined)
  if (!opens || !COOKERS[plan.cooker.kind].vents) absent.add('vents-open')
  const timeOf = (id: MomentId, m: number) => {
    const fire = fires[m] as Fire
    if (id === 'fire-lit') return fire.litS
    if (id === 'cooker-steady') return fire.litS + fire.steadyAfterS
    return (runs[m] as Run).moments[id]
  }
  const present = MOMENT_IDS.filter((id) => !absent.has(id))
  return Object.fromEntries(present.map((id) => [id, Float64Array.from(runs, (_, m) => timeOf(id, m))]))
}

const statesOf = (states: readonly Run['offHeat'][]) => ({
  coreC: Float64Array.from(states, (state) => state.coreC),
  probeC: Float64Array.from(states, (state) => state.probeC),
})
