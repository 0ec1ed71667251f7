import { formatClock } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { formatShare } from '../units'
import { type DayClock, dayClock } from './day-clock'
import type { DayForecast } from './day-forecast'
import type { IsoTime } from './layout'
import { RULES } from './rules'
import { safeLow, sorted } from './samples'
import { type SliceWish, sliceRoom, sliceWish, waitFor } from './slice-wait'

export interface CurvePoint {
  readonly meatOn: IsoTime
  /** Share of cooks whose slice can be had as wished, resting on where that helps. */
  readonly chance: number
  /** Share of cooks that must rest on after their least rest for it. */
  readonly waits: number
}
/** What a chance asks of meat-on; null and a sentence of why where no meat-on has it. */
export interface CurveMark {
  readonly share: number
  readonly earliest: IsoTime | null
  readonly latest: IsoTime | null
  readonly sentence: string
}
/** Meat-on against the chance of the wished slice. */
export interface BackwardCurve {
  readonly cook: string
  /** "in golden light", "at 18:30". */
  readonly wanted: string
  /** Minute by minute, from the earliest with any chance to the latest. */
  readonly points: readonly CurvePoint[]
  readonly best: CurvePoint
  readonly earliest: IsoTime
  readonly latest: IsoTime
  /** The soonest that the fire allows after the call; null where the crew comes when it is needed. */
  readonly soonest: IsoTime | null
  readonly marks: readonly CurveMark[]
}
export const CURVE_SHARES: readonly number[] = [0.5, 0.8, 0.95]

/** Null where no slice is wished, its light does not come, or the roast is never sliced. */
export function backwardCurve(shoot: Shoot, forecast: DayForecast, shares = CURVE_SHARES): BackwardCurve | null {
  const clock = dayClock(shoot)
  const wish = sliceWish(shoot, clock)
  const minutes = wish ? chancesOf(forecast, wish) : []
  const best = bestOf(minutes)
  if (!wish || !best) return null
  const soonest = soonestByFire(shoot, clock, forecast)
  const point = ({ minute, chance, waits }: Chance) => ({ meatOn: clock.toIso(minute), chance, waits })
  const points = minutes.map(point)
  const tell = markOf({ shoot, clock, wanted: wish.words, best, soonest })
  return {
    cook: forecast.cook.id,
    wanted: wish.words,
    points,
    best: point(best),
    earliest: (points[0] as CurvePoint).meatOn,
    latest: (points.at(-1) as CurvePoint).meatOn,
    soonest: soonest === null ? null : clock.toIso(soonest),
    marks: shares.map((share) => tell(share, minutes)),
  }
}

/** A whole minute of the day as meat-on, and what it gives. */
export interface Chance {
  readonly minute: number
  readonly chance: number
  readonly waits: number
}

/** The chance of every meat-on that has any, counted member by member. */
export function chancesOf(forecast: DayForecast, wish: SliceWish): Chance[] {
  const slice = forecast.moments['first-slice']
  if (!slice || wish.spans.length === 0) return []
  const ready = slice.map((s) => s / 60)
  const room = sliceRoom(forecast)
  const finite = ready.filter(Number.isFinite)
  if (finite.length === 0) return []
  const from = Math.ceil(Math.min(...wish.spans.map((s) => s.start)) - Math.max(...finite) - Math.max(...room))
  const to = Math.floor(Math.max(...wish.spans.map((s) => s.end)) - Math.min(...finite))
  const all = Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => chanceAt(from + i, wish, ready, room))
  return all.filter(({ chance }) => chance > 0)
}

function chanceAt(minute: number, wish: SliceWish, ready: Float64Array, room: Float64Array): Chance {
  let [made, waiting] = [0, 0]
  for (let m = 0; m < ready.length; m++) {
    const at = minute + (ready[m] as number)
    if (!Number.isFinite(at)) continue
    const sliced = waitFor(wish, at, room[m] as number)
    if (!wish.spans.some((s) => sliced >= s.start && sliced <= s.end)) continue
    made++
    if (sliced > at) waiting++
  }
  return { minute, chance: made / ready.length, waits: waiting / ready.length }
}

/** The latest of the best: of two alike it is the shorter day. */
const bestOf = (minutes: readonly Chance[]) =>
  minutes.reduce<Chance | undefined>((best, c) => (best && best.chance > c.chance ? best : c), undefined)

/**
 * The meat-on that a chosen chance asks for: the latest that has it, else the one with the highest chance; none before
 * `soonest` where one after it has any chance at all.
 */
export function meatOnFor(minutes: readonly Chance[], share: number, soonest: number): Chance | undefined {
  const inReach = minutes.filter(({ minute }) => minute >= soonest)
  return inReach.findLast(({ chance }) => chance >= share) ?? bestOf(inReach)
}

function soonestByFire(shoot: Shoot, clock: DayClock, forecast: DayForecast): number | null {
  if (shoot.day?.call === undefined) return null
  const lit = forecast.moments['fire-lit']
  const lead = lit ? Math.max(0, -safeLow(sorted(lit), RULES.missShare) / 60) : 0
  return Math.ceil(clock.fromClock(shoot.day.call) + lead)
}

interface Told {
  readonly shoot: Shoot
  readonly clock: DayClock
  readonly wanted: string
  readonly best: Chance
  readonly soonest: number | null
}
function markOf({ shoot, clock, wanted, best, soonest }: Told) {
  const at = (minute: number) => formatClock(clock.toInstant(minute), shoot.zone)
  return (share: number, minutes: readonly Chance[]): CurveMark => {
    const enough = minutes.filter(({ chance }) => chance >= share)
    const [first, last] = [enough[0], enough.at(-1)]
    if (!first || !last) {
      const sentence = `Never more than ${formatShare(best.chance)}: with the meat on at ${at(best.minute)}, sliced ${wanted} in that share of cooks.`
      return { share, earliest: null, latest: null, sentence }
    }
    const late = soonest !== null && last.minute < soonest ? ` The call at ${shoot.day?.call} is too late for it.` : ''
    return {
      share,
      earliest: clock.toIso(first.minute),
      latest: clock.toIso(last.minute),
      sentence: `Meat on by ${at(last.minute)}: sliced ${wanted} in ${formatShare(share)} of cooks.${late}`,
    }
  }
}
