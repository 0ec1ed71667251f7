import type { Shoot } from '../plan/shoot'
import { type Chance, chancesOf, meatOnFor } from './backward-curve'
import { type CookTimes, cookTimes } from './cook-times'
import type { Crew } from './crew'
import type { DayClock } from './day-clock'
import { soonestMeatOn } from './meat-on'
import { momentJobs } from './moment-job'
import { asServed, sliceWish } from './slice-wait'

interface Context {
  readonly shoot: Shoot
  readonly clock: DayClock
  readonly crew: Crew
  readonly cooks: readonly CookTimes[]
  readonly call: number | null
}
export interface Served {
  readonly cooks: readonly CookTimes[]
  /** Null where no chance was chosen, or none can be had after the call. */
  readonly chosen: Chance | null
}

/**
 * Where the producer has chosen a chance, the meat-on that it asks for, and the first cook as it is served then: resting
 * on until its time has come. `on`: the meat is on already, or is said to be, at that minute.
 */
export function servedCooks(context: Context, on?: number): Served {
  const { shoot, clock, cooks } = context
  const share = shoot.day?.slice?.chance
  const wish = share === undefined ? null : sliceWish(shoot, clock)
  const [first, ...others] = cooks
  if (share === undefined || !wish || !first) return { cooks, chosen: null }
  const minutes = chancesOf(first.forecast, wish)
  const chosen = on === undefined ? meatOnFor(minutes, share, soonestOf(context)) : { minute: on, chance: 0, waits: 0 }
  if (!chosen) return { cooks, chosen: null }
  const served = asServed(shoot, first.id, first.forecast, chosen.minute)
  return { cooks: [cookTimes(first.id, served), ...others], chosen: on === undefined ? chosen : null }
}

function soonestOf({ shoot, crew, cooks, call }: Context): number {
  if (call === null) return Number.NEGATIVE_INFINITY
  const { jobs: moments } = momentJobs(shoot, crew, cooks)
  return soonestMeatOn({ cooks, moments }, 0, call)
}
