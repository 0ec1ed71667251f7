import type { DayState, Probe } from '../log/day-state'
import { type LoggedReading, marksOf, readingsOf } from '../log/for-forecast'
import { markKey } from '../log/mark-key'
import { trustedReadings } from '../log/trusted-probe'
import type { CookPlan, LidOpening } from '../model/cook'
import type { Mark } from '../model/readings'
import { type Instant, instant, type Kilograms, type Seconds, seconds } from '../units'

/** A cook as its log tells it: time zero, what was read and marked since, and what was done to its fire and lid. */
export interface ObservedCook {
  readonly meatOn: Instant
  /** Marked, or read in the meat; else the plan's, or now where that is past. */
  readonly begun: boolean
  readonly readings: readonly LoggedReading[]
  readonly marks: readonly Mark[]
  readonly feeds: readonly { readonly at: Seconds; readonly add: Kilograms }[]
  readonly lids: readonly LidOpening[]
}

/** A lid that nobody logged as shut. [estimate] */
const OPEN_AT_MOST_S = 180
/** A logged opening this near a planned one is that one. [estimate] */
const SAME_LID_S = 300

export function observedCook(told: DayState, cook: string, planned: Instant, now: Instant): ObservedCook {
  const marked = told.marks[markKey(cook, 'meat-on')]?.at ?? null
  const readMs = firstCoreMs(told, cook)
  const begun = marked !== null || readMs <= now
  const meatOn = marked ?? instant(begun ? Math.min(planned, readMs) : slipped(planned, now))
  const nowS = (now - meatOn) / 1000
  const since = (at: Instant) => seconds((at - meatOn) / 1000)
  const fire = told.fire.filter(({ entry, at }) => entry.cook === cook && at <= now)
  const vents = fire.find(({ entry }) => entry.did === 'vents-open')
  const marks = marksOf(told, cook, meatOn).filter(({ t }) => t <= nowS)
  if (vents && !marks.some(({ moment }) => moment === 'vents-open'))
    marks.push({ moment: 'vents-open', t: since(vents.at) })
  const readings = readingsOf(told, cook, meatOn).filter(({ t }) => t <= nowS)
  return {
    meatOn,
    begun,
    readings: trustedReadings(readings, seconds(nowS)),
    marks,
    feeds: fire.flatMap(({ entry, at }) =>
      entry.did === 'fed' && entry.fuel !== undefined && at >= meatOn ? [{ at: since(at), add: entry.fuel }] : [],
    ),
    lids: lidsOf(fire.map(({ entry, at }) => ({ did: entry.did, t: since(at) }))),
  }
}

/** A day that nobody cooked does not slip for ever. [estimate] */
const MOST_LATE_MS = 12 * 3_600_000
const slipped = (planned: Instant, now: Instant) => (now - planned < MOST_LATE_MS ? Math.max(planned, now) : planned)

const firstCoreMs = (told: DayState, cook: string): number =>
  Object.values(told.probes)
    .filter((probe: Probe) => probe.cook === cook && probe.sensor.startsWith('core'))
    .reduce((first, { readings }) => Math.min(first, readings[0]?.at ?? Infinity), Infinity)

function lidsOf(done: readonly { readonly did: string; readonly t: Seconds }[]): LidOpening[] {
  return done.flatMap(({ did, t }, i) => {
    if (did !== 'lid-open' || t < 0) return []
    const shut = done.slice(i + 1).find((next) => next.did === 'lid-shut' || next.did === 'lid-open')
    return [{ at: t, open: seconds(Math.min(OPEN_AT_MOST_S * 5, shut ? shut.t - t : OPEN_AT_MOST_S)) }]
  })
}

/** The plan with what was done to its fire and lid in place of what was to be done by now. */
export function asDone(plan: CookPlan, { feeds, lids, meatOn }: ObservedCook, now: Instant): CookPlan {
  const nowS = (now - meatOn) / 1000
  const { refuel = [] } = plan.cooker
  const fed = feeds.length === 0 ? refuel : [...feeds, ...refuel.filter(({ at }) => at > nowS)]
  const kept = plan.lidOpenings.filter(({ at }) => !lids.some((lid) => Math.abs(lid.at - at) < SAME_LID_S))
  return {
    ...plan,
    cooker: fed.length === 0 ? plan.cooker : { ...plan.cooker, refuel: [...fed].sort((a, b) => a.at - b.at) },
    lidOpenings: [...kept, ...lids].sort((a, b) => a.at - b.at),
  }
}
