import type { Spread } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { spreadOf } from '../model/quantiles'
import { type Celsius, celsius, type Instant, type Kilograms, type Seconds, seconds } from '../units'
import type { DayState } from './day-state'
import { type LoggedReading, marksOf, meatOnOf, readingsOf } from './for-forecast'
import { trustedReadings } from './trusted-probe'

/** What a day's log says of one cook. Times are after meat-on. */
export interface CookFacts {
  readonly cook: string
  readonly meatOn: Instant
  /** As marked; of several marks the earliest. */
  readonly at: Readonly<Partial<Record<MomentId, Seconds>>>
  /** The trusted probe in the meat at the moment. */
  readonly probeC: Readonly<Partial<Record<MomentId, Celsius>>>
  /** 5, 50 and 95 % of what the sensor in the cooker read. */
  readonly cookerC: { readonly roast: Spread<Celsius> | null; readonly sear: Spread<Celsius> | null }
  readonly lastReading: Seconds | null
  readonly outcomes: { readonly massAfter?: Kilograms }
}

/** Between readings further apart nobody knows what it read. [estimate] */
const LINE_S = 600
/** Who marks has just looked, or takes the probe out: a reading so near is the moment's own. [estimate] */
const OWN_S = 120

/** Null where nobody marked that the meat went on: then nothing has a time. */
export function cookFacts(day: DayState, cook: string): CookFacts | null {
  const meatOn = meatOnOf(day, cook)
  if (meatOn === null) return null
  const readings = readingsOf(day, cook)
  const at = Object.fromEntries(marksOf(day, cook).map(({ moment, t }) => [moment, t])) as CookFacts['at']
  return {
    cook,
    meatOn,
    at,
    probeC: probeAtMoments(at, readings),
    cookerC: {
      roast: cookerBetween(readings, seconds(0), roastEnd(at)),
      sear: cookerBetween(readings, at['sear-start'], at['off-heat']),
    },
    lastReading: readings.at(-1)?.t ?? null,
    outcomes: {},
  }
}

function probeAtMoments(at: CookFacts['at'], readings: readonly LoggedReading[]): CookFacts['probeC'] {
  const read = Object.entries(at).flatMap(([moment, t]) => {
    const tempC = probeAt(readings, t)
    return tempC === null ? [] : [[moment, tempC]]
  })
  return Object.fromEntries(read)
}

/** What the trusted probe in the meat read at a time, of all the cook's readings; null where nobody knows. */
export function probeAt(readings: readonly LoggedReading[], t: Seconds): Celsius | null {
  const core = readings.filter(({ sensor }) => sensor === 'core')
  const known = trustedReadings(
    core.filter((one) => one.t <= t),
    t,
  )
  // The first reading may come just after its moment: the probe that goes in with the mark.
  const probe = known.at(-1)?.probe ?? core[0]?.probe
  const own = core.filter((one) => one.probe === probe)
  const [before, after] = [own.findLast((one) => one.t <= t), own.find((one) => one.t >= t)]
  if (before && after && after.t - before.t <= LINE_S) return lineAt(before, after, t)
  const near = [before, after].filter((one) => one !== undefined && Math.abs(one.t - t) <= OWN_S)
  return near[0]?.tempC ?? null
}
function lineAt(before: LoggedReading, after: LoggedReading, t: Seconds): Celsius {
  const share = after.t > before.t ? (t - before.t) / (after.t - before.t) : 0
  return celsius(before.tempC + share * (after.tempC - before.tempC))
}

/** A pull that nobody marked lies before what was marked after it. */
const roastEnd = (at: CookFacts['at']) => at.pull ?? at['vents-open'] ?? at['sear-start'] ?? at['off-heat']

function cookerBetween(
  readings: readonly LoggedReading[],
  from: Seconds | undefined,
  to: Seconds | undefined,
): Spread<Celsius> | null {
  if (from === undefined || to === undefined) return null
  const within = readings.filter(({ sensor, t }) => sensor === 'cooker' && t >= from && t <= to)
  const read = trustedReadings(within, to).map(({ tempC }) => tempC)
  return read.length > 0 ? spreadOf<Celsius>(Float64Array.from(read)) : null
}
