import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import type { DayForecast } from './day-forecast'
import { type Sorted, sorted } from './samples'

/** One cook's joint moments in minutes after meat-on, by member; +Infinity where a member never gets there. */
export interface CookTimes {
  readonly id: string
  readonly forecast: DayForecast
  readonly members: number
  readonly at: (moment: MomentId) => Float64Array | null
  readonly sorted: (moment: MomentId) => Sorted | null
  /** The moments this cook has, in reading order. */
  readonly moments: readonly MomentId[]
}

export function cookTimes(id: string, forecast: DayForecast): CookTimes {
  const byMoment = new Map<MomentId, { at: Float64Array; sorted: Sorted }>()
  for (const moment of MOMENT_IDS) {
    const samples = forecast.moments[moment]
    if (!samples) continue
    const at = samples.map((s) => s / 60)
    byMoment.set(moment, { at, sorted: sorted(at) })
  }
  return {
    id,
    forecast,
    members: forecast.members,
    at: (moment) => byMoment.get(moment)?.at ?? null,
    sorted: (moment) => byMoment.get(moment)?.sorted ?? null,
    moments: [...byMoment.keys()],
  }
}
