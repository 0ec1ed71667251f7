import type { CookPlan, LidOpening, Stage } from '../model/cook'
import { courseOf } from '../model/course'
import type { Forecast } from '../model/forecast'
import { medianOf } from '../model/quantiles'
import type { Reading } from '../model/readings'
import { type Celsius, celsius, type Kelvins, kelvins, type Seconds, seconds } from '../units'

/** A plan with one thing of the day in it, as that was. */

/** Stages until the roast is pulled: what comes later is told by marks. */
const roasting = (stages: readonly Stage[]) => stages.findLastIndex((stage) => stage.do === 'roast')

export function withLevel(plan: CookPlan, levelK: Kelvins): CookPlan {
  const last = roasting(plan.stages)
  const moved = (stage: Stage, i: number): Stage =>
    i <= last && 'at' in stage && stage.at !== undefined ? { ...stage, at: celsius(stage.at + levelK) } : stage
  return { ...plan, stages: plan.stages.map(moved) }
}
export const withLids = (plan: CookPlan, lids: readonly LidOpening[]): CookPlan => ({ ...plan, lidOpenings: lids })

export function withTurn(plan: CookPlan, turnS: Seconds | undefined, probeS: Seconds | undefined): CookPlan {
  const put = (stage: Stage): Stage => {
    if (stage.do !== 'roast') return stage
    const turn = stage.turn && turnS !== undefined ? { turn: { after: turnS } } : {}
    const probe = stage.probe && probeS !== undefined ? { probe: { ...stage.probe, at: probeS } } : {}
    return { ...stage, ...turn, ...probe }
  }
  return { ...plan, stages: plan.stages.map(put) }
}
/** Pulled at another core than planned. */
export function withPull(plan: CookPlan, core: Celsius): CookPlan {
  const last = roasting(plan.stages)
  const pulled = (stage: Stage, i: number): Stage =>
    i === last && stage.do === 'roast' && 'core' in stage.until ? { ...stage, until: { core } } : stage
  return { ...plan, stages: plan.stages.map(pulled) }
}

export const pullCore = (plan: CookPlan): Celsius | null => {
  const last = plan.stages[roasting(plan.stages)]
  return last?.do === 'roast' && 'core' in last.until ? last.until.core : null
}
/** What the cooker is set to for most of the roast. */
export const dialOf = (plan: CookPlan): Celsius | null => {
  const last = plan.stages[roasting(plan.stages)]
  return last?.do === 'roast' ? last.at : null
}

/** How long the lid is off between meat-on and pull, those for turn, probe and charcoal with it. */
export function lidOpenFor(plan: CookPlan, pullS: Seconds): Seconds {
  const { lid } = courseOf(plan, { pullS, searS: 0 })
  return seconds(lid.reduce((sum, [from, to]) => sum + Math.max(0, Math.min(to, pullS) - from), 0))
}

const LEAST_READINGS = 5
const MOST_READINGS = 60
/** What the sensor in the cooker showed until then, and how far that is from what the plan expects of it. */
export interface CookerRead {
  readonly held: Celsius
  readonly offK: Kelvins
}
/** Null where it was hardly read. */
export function cookerRead(readings: readonly Reading[], trace: Forecast['trace'], untilS: Seconds): CookerRead | null {
  const read = readings.filter(({ sensor, t }) => sensor === 'cooker' && t >= 0 && t <= untilS)
  if (read.length < LEAST_READINGS) return null
  const each = Math.ceil(read.length / MOST_READINGS)
  const off = read.filter((_, i) => i % each === 0).map(({ t, tempC }) => tempC - cookerAt(trace, t))
  const middle = (values: readonly number[]) => medianOf(Float64Array.from(values))
  return { held: celsius(middle(read.map(({ tempC }) => tempC))), offK: kelvins(middle(off)) }
}
function cookerAt({ startS, stepS, count, cookerC }: Forecast['trace'], t: Seconds): number {
  const i = Math.min(count - 1, Math.max(0, Math.round((t - startS) / stepS)))
  const members = cookerC.length / count
  return medianOf(Float64Array.from({ length: members }, (_, m) => cookerC[m * count + i] as number))
}
