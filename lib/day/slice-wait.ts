import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type DayClock, dayClock } from './day-clock'
import type { DayForecast } from './day-forecast'
import type { IsoTime } from './layout'
import { lightSpans } from './shot-window'

/** A wanted slice as spans of the day in which it may fall, minutes. */
export interface SliceWish {
  readonly words: string
  readonly spans: readonly { readonly start: number; readonly end: number }[]
}
/** How near a wished clock time the slice must come; common practice, no source. Minutes. */
export const SLICE_NEAR_MIN = 5
const LIGHT_WORDS: Readonly<Record<string, string>> = {
  daylight: 'in daylight',
  'golden-hour': 'in golden light',
  'golden-hour-morning': 'in golden morning light',
  twilight: 'in twilight',
  night: 'after dark',
}

/** Null where no slice is wished. */
export function sliceWish(shoot: Shoot, clock: DayClock = dayClock(shoot)): SliceWish | null {
  const slice = shoot.day?.slice
  if (!slice) return null
  if ('at' in slice) {
    const at = clock.fromClock(slice.at)
    return { words: `at ${slice.at}`, spans: [{ start: at - SLICE_NEAR_MIN, end: at + SLICE_NEAR_MIN }] }
  }
  const dayStart = clock.fromClock(shoot.day?.call ?? '00:00')
  const spans = lightSpans({ shoot, clock }, slice.in).filter((s) => s.end > dayStart && s.start < dayStart + 1440)
  return { words: LIGHT_WORDS[slice.in] ?? `in ${slice.in}`, spans }
}

type After = { readonly until: object; readonly max?: number }
/** How much longer a rest or hold may last than it must, minutes; by the clock alone. */
const roomOf = ({ until, max }: After) =>
  max !== undefined && 'after' in until ? Math.max(0, max - (until.after as number)) / 60 : 0

/** By member, how long the first slice may wait: rest and hold run on from `after` to `max`. Minutes. */
export function sliceRoom({ cook, moments, members }: Pick<DayForecast, 'cook' | 'moments' | 'members'>): Float64Array {
  const lastHeat = cook.stages.findLastIndex((stage) => stage.do === 'roast' || stage.do === 'sear')
  const after = cook.stages.slice(lastHeat + 1).filter((stage) => stage.do === 'rest' || stage.do === 'hold')
  const byClock = after.reduce((sum, stage) => sum + roomOf(stage), 0)
  const [only] = after
  const slice = moments['first-slice']
  const off = moments['off-heat']
  if (after.length !== 1 || !only || only.max === undefined || 'after' in only.until || !slice || !off)
    return new Float64Array(members).fill(byClock)
  // A rest that ends by a reading may still last until its `max`.
  const most = only.max
  return slice.map((t, m) => (Number.isFinite(t) ? Math.max(0, (off[m] as number) + most - t) / 60 : 0))
}

/** The first minute at or after `ready` that meets the wish and is no later than the rest allows; else `ready`. */
export function waitFor({ spans }: SliceWish, ready: number, room: number): number {
  const meets = spans.filter((s) => s.end >= ready && s.start <= ready + room)
  return meets.length === 0 ? ready : Math.max(ready, Math.min(...meets.map((s) => s.start)))
}

/**
 * The forecast as it is served: where the day asks for a chance, the roast rests on in each member until the light
 * or the hour has come, as far as `max` allows. Otherwise it is sliced as soon as it has rested.
 */
export function asServed<F extends DayForecast>(shoot: Shoot, cook: string, forecast: F, meatOn: IsoTime | number): F {
  const clock = dayClock(shoot)
  const wish = shoot.day?.slice?.chance === undefined ? null : sliceWish(shoot, clock)
  const slice = forecast.moments['first-slice']
  if (!wish || cook !== shoot.cooks[0]?.id || !slice) return forecast
  const zero = typeof meatOn === 'number' ? meatOn : clock.fromInstant(fromIso(meatOn))
  const room = sliceRoom(forecast)
  const served = slice.map((s, m) => {
    const ready = zero + s / 60
    return Number.isFinite(s) ? s + (waitFor(wish, ready, room[m] as number) - ready) * 60 : s
  })
  return withSlice(forecast, served)
}

/** Its cut face is worked out when asked for: the parts it shares stay as they are. */
function withSlice<F extends DayForecast>(forecast: F, slice: Float64Array): F {
  const moments = { ...forecast.moments, 'first-slice': slice }
  return Object.create(forecast, { moments: { value: moments, enumerable: true } }) as F
}
