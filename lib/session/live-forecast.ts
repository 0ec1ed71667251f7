import type { Layout } from '../day/layout'
import type { DayState } from '../log/day-state'
import type { KernelName } from '../model/kernels'
import { quantileOf, sortedCopy } from '../model/quantiles'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, later, seconds } from '../units'
import { shootAsAdopted } from './adopted'
import { type CookNow, cookNow, type KeptCook } from './live-cook'
import { liveLine } from './live-line'
import { movedMs, reasonOf } from './live-reason'
import type { LiveForecast } from './session'
import { troublesOf } from './troubles'

export interface LiveInput {
  readonly shoot: Shoot
  /** The day as it was announced. */
  readonly layout: Pick<Layout, 'meatOn' | 'lidOpenings' | 'start'>
  readonly told: DayState
  readonly now: Instant
  /** The forecast before this one, whoever made it; troubles keep their ids by it. */
  readonly before: LiveForecast | null
  readonly kernel: KernelName
}
/** What makes the next forecast quick, by cook. Without it the next one takes longer. */
export type LiveKept = Readonly<Record<string, KeptCook>>

/** Every cook's forecast as its log leaves it at this time, by the server or by a phone that is cut off. */
export function liveForecast(input: LiveInput, kept: LiveKept = {}): { forecast: LiveForecast; kept: LiveKept } {
  const { layout, told, now, before, kernel } = input
  const shoot = shootAsAdopted(input.shoot, told)
  const made = shoot.cooks.map((cook) => {
    const planned = fromIso(layout.meatOn[cook.id] ?? layout.start)
    const lids = layout.lidOpenings?.[cook.id] ?? []
    return cookNow({ shoot, cook, planned, lids, told, now, kernel }, kept[cook.id])
  })
  const cooks = made.map((one) => one.now)
  const reasons = Object.fromEntries(cooks.map((cook) => [cook.cook.id, reasonOf(cook, before, now)]))
  const most = cooks.reduce((best, cook) => (movedMs(cook, before) > movedMs(best, before) ? cook : best))
  const reason = reasons[most.cook.id] as string
  return {
    forecast: {
      reason: cooks.length > 1 ? `${most.cook.id}: ${reason}` : reason,
      reasons,
      expected: cooks.flatMap(({ expected }) => expected),
      lines: Object.fromEntries(cooks.map((cook) => [cook.cook.id, lineOf(cook)])),
      troubles: cooks.flatMap((cook) => troublesOf(cook.cook.id, cook.watched, before?.troubles ?? [], now)),
      fuelOut: Object.fromEntries(cooks.flatMap(fuelOutOf)),
    },
    kept: Object.fromEntries(made.map((one, i) => [(cooks[i] as CookNow).cook.id, one.kept])),
  }
}

/** Beyond the slice a line tells nobody anything; this long it goes on. */
const AFTER_SLICE_S = 1800
function lineOf({ forecast, seen, expected }: CookNow) {
  const slice = expected.find(({ moment }) => moment === 'first-slice')
  const lastS = slice ? (slice.likely - seen.meatOn) / 1000 + AFTER_SLICE_S : Infinity
  return liveLine(forecast, seen.meatOn, lastS)
}

/** Where the likely cook is not done with its fire by then. */
function fuelOutOf({ cook, forecast, seen, expected }: CookNow): (readonly [string, Instant])[] {
  const off = expected.find(({ moment }) => moment === 'off-heat')
  if (!forecast.fuelOutS || off?.sd === 0) return []
  const outS = quantileOf(sortedCopy(forecast.fuelOutS), 0.5)
  const out = Number.isFinite(outS) ? later(seen.meatOn, seconds(Math.round(outS))) : null
  return out !== null && (!off || out < off.likely) ? [[cook.id, out]] : []
}
