import { asServed } from '../day/slice-wait'
import type { CookPlan } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { fireOf } from '../model/fire'
import type { Forecast } from '../model/forecast'
import { prepared } from '../model/forecast-cook'
import { cookAllBy, type KernelName } from '../model/kernels'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { medianOf } from '../model/quantiles'
import { chanceOf } from '../model/random'
import { type Run, SAMPLE_S } from '../model/simulate'
import { drawLatents, driftOf, type Latents, type Member, memberOf } from '../model/spread'
import { toIso } from '../plan/clock'
import { momentsOf } from '../plan/moments'
import type { Cook, Shoot } from '../plan/shoot'
import { type Instant, instant, later, seconds } from '../units'

/** A cook that never was: when its moments came, and what its probes read, both at the second asked for. */
export interface MadeUpCook {
  readonly meatOn: Instant
  readonly moments: ReadonlyMap<MomentId, Instant>
  coreC(at: Instant): number
  cookerC(at: Instant): number
}
export interface MadeUpFrom {
  readonly shoot: Shoot
  readonly cook: Cook
  /** As the model was told it for the layout, and its forecast. */
  readonly forecast: Forecast
  /** When the meat was to go on. */
  readonly planned: Instant
  readonly seed: number
  readonly kernel: KernelName
}

/** The plan's own members are drawn from its seed itself. */
const OTHER_SEED = 7919
const LATE_STREAM = 71
const CANDIDATES = 12
/** As far as a day drifts so that everybody sees it and nothing falls over: share of the roast's time. [estimate] */
const LATE_SHARE = 0.06
/** The cooker runs so far under its dial, K, or so many of its kind's standard deviations where they are small. [estimate] */
const UNDER_DIAL_K = 11
const UNDER_DIAL_SD = 1.2
/** A member is drawn this much nearer the middle than chance has it: a rehearsal is no disaster. [estimate] */
const CALM = 0.25
const MOST_LATE_MEAT_S = 240

/** A member that the plan does not know, whose roast comes a little later than planned. Null where none ever ends. */
export function madeUpCook(from: MadeUpFrom): MadeUpCook | null {
  const { forecast, planned, seed } = from
  const { chosen, levelK, course } = slowMember(from)
  if (!chosen) return null
  const { run, member } = chosen
  const meatOn = later(planned, seconds(Math.round(MOST_LATE_MEAT_S * chanceOf(seed, 0, LATE_STREAM).uniform())))
  const fire = fireOf(forecast.cook, course, member)
  const lit = later(planned, seconds(fire.litS))
  const at: Readonly<Record<MomentId, number>> = {
    ...run.moments,
    'fire-lit': (lit - meatOn) / 1000,
    'cooker-steady': (lit - meatOn) / 1000 + fire.steadyAfterS,
    'first-slice': servedS(from, run, meatOn),
  }
  const named = new Set(momentsOf(from.cook))
  const moments = MOMENT_IDS.filter((id) => named.has(id) && Number.isFinite(at[id]))
  return {
    meatOn,
    moments: new Map(moments.map((id) => [id, later(meatOn, seconds(Math.round(at[id])))])),
    coreC: (when) => between(run.trace.probeC, (when - meatOn) / 1000),
    cookerC: (when) => between(run.trace.cookerC, (when - meatOn) / 1000) + levelK,
  }
}

function slowMember({ forecast, seed, kernel }: MadeUpFrom) {
  const plan: CookPlan = forecast.cook
  const cookAll = cookAllBy(kernel)
  const { setting, geometry, course } = prepared(plan, seed, cookAll)
  const habits = COOKERS[plan.cooker.kind]
  const levelK = -Math.min(UNDER_DIAL_K, UNDER_DIAL_SD * habits.levelSdK)
  const input = { startC: plan.roast.start, thicknessSpread: geometry.thicknessSpread, habits }
  const members = Array.from({ length: CANDIDATES }, (_, m): Member => {
    const drawn = memberOf(calmed(drawLatents(seed + OTHER_SEED, m)), input, driftOf(seed + OTHER_SEED, m))
    return { ...drawn, levelK }
  })
  const runs = cookAll(setting, members)
  const plannedS = medianOf(forecast.moments['off-heat'] as Float64Array)
  const awayS = (run: Run) => Math.abs(run.moments['off-heat'] - plannedS * (1 + LATE_SHARE))
  const ended = members
    .map((member, m) => ({ member, run: runs[m] as Run }))
    .filter(({ run }) => Number.isFinite(run.moments['first-slice']))
    .sort((a, b) => awayS(a.run) - awayS(b.run))
  return { chosen: ended[0], levelK, course }
}

function calmed(z: Latents): Latents {
  const { cyclePhase, probeAt, ...normals } = z
  const near = Object.fromEntries(Object.entries(normals).map(([name, value]) => [name, CALM * value]))
  return { ...z, ...near, cyclePhase, probeAt: CALM * probeAt }
}

/** A roast that waits for its light rests on until then. */
function servedS({ shoot, cook, forecast }: MadeUpFrom, run: Run, meatOn: Instant): number {
  const moments = {
    'off-heat': Float64Array.of(run.moments['off-heat']),
    'first-slice': Float64Array.of(run.moments['first-slice']),
  }
  const alone = { members: 1, cook: forecast.cook, trace: forecast.trace, moments }
  const served = asServed(shoot, cook.id, alone, toIso(meatOn, shoot.zone))
  return served.moments['first-slice'][0] as number
}

/** When each moment was likely by the plan. */
export function plannedMoments({ forecast, planned, cook }: MadeUpFrom): ReadonlyMap<MomentId, Instant> {
  return new Map(
    momentsOf(cook).flatMap((id) => {
      const samples = forecast.moments[id]
      const likely = samples ? medianOf(samples) : Number.POSITIVE_INFINITY
      return Number.isFinite(likely) ? [[id, instant(planned + Math.round(likely) * 1000)] as const] : []
    }),
  )
}

function between(row: ArrayLike<number>, timeS: number): number {
  const place = Math.min(row.length - 1, Math.max(0, timeS / SAMPLE_S))
  const i = Math.min(row.length - 2, Math.floor(place))
  const a = row[i] as number
  return a + (place - i) * ((row[i + 1] as number) - a)
}
