import type { DayState } from '../log/day-state'
import type { CallProgress } from '../log/entry'
import { foldLog } from '../log/fold'
import { EMPTY_LOG, type Line, type Log } from '../log/log'
import type { MomentId } from '../model/moment-ids'
import type { Trouble as TroubleCode } from '../model/reading-watch'
import { type Instant, instant, type Seconds } from '../units'
import { dayNow } from './re-planned'
import type { SessionDay } from './session-day'

/** When a moment is expected now: the middle of the forecast and its standard deviation. */
export interface Expected {
  readonly cook: string
  readonly moment: MomentId
  readonly likely: Instant
  readonly sd: Seconds
}
/** What the forecast found out about a cook that somebody should act on. */
export interface Trouble {
  /** Stable while it lasts, another each time it comes: "lid-left-open-29990012", by the minute it came. */
  readonly id: string
  readonly cook: string
  /** What it is, what shows it in one sentence, and when it last showed. */
  readonly code?: TroubleCode
  readonly sentence?: string
  readonly seen?: Instant
  /** One action, as a sentence. */
  readonly action: string
  readonly deadline: Instant
}
/** A forecast cook as a picture draws it: seconds after meat-on, °C. */
export interface LiveLine {
  readonly meatOn: Instant
  readonly t: readonly number[]
  readonly coreC: readonly number[]
  readonly coreLowC: readonly number[]
  readonly coreHighC: readonly number[]
  readonly probeC: readonly number[]
  /** Of the probe's reading; forecasts kept from before have only the core's. */
  readonly probeLowC?: readonly number[]
  readonly probeHighC?: readonly number[]
  readonly cookerC: readonly number[]
}
export interface LiveForecast {
  /** Why it differs from the one before, in words. */
  readonly reason: string
  /** By cook, the same of each. */
  readonly reasons?: Readonly<Record<string, string>>
  /** By cook. */
  readonly lines?: Readonly<Record<string, LiveLine>>
  readonly expected: readonly Expected[]
  readonly troubles?: readonly Trouble[]
  /** By cook, when the fuel is likely to run out. */
  readonly fuelOut?: Readonly<Record<string, Instant>>
}

/** `at` is the server's time as the shell knows it; `id` names the event for good. */
export type SessionEvent = { readonly id: string; readonly at: Instant } & (
  | { readonly kind: 'tick' }
  | { readonly kind: 'line'; readonly line: Line }
  | { readonly kind: 'lines'; readonly lines: readonly Line[] }
  | { readonly kind: 'forecast'; readonly forecast: LiveForecast }
  | { readonly kind: 'day'; readonly day: SessionDay }
)

export type Tone = 'standby' | 'roll' | 'trouble'
export type Channel = 'screen' | 'vibration' | 'sound'
/** What the shell does, once for each `key`. `event` is what brought it about. */
export type Effect = { readonly key: string; readonly event: string } & (
  | {
      readonly do: 'sound-alert'
      readonly tone: Tone
      readonly owner: string
      readonly to: readonly string[]
      readonly channels: readonly Channel[]
      readonly action: string
      readonly deadline: Instant
      /** What an answer names ("call-first-cut", "off-heat/hero"). */
      readonly call: string
    }
  | { readonly do: 'notify'; readonly to: readonly string[]; readonly sentence: string }
  | {
      readonly do: 'move-call'
      readonly call: string
      readonly from: Instant | null
      readonly to: Instant
      readonly reason: string
    }
  | { readonly do: 'save-forecast'; readonly forecast: LiveForecast; readonly after: string | null }
)

export interface CallNow {
  readonly state: CallProgress
  /** When it was called, and why then. */
  readonly called: Instant | null
  readonly why: string | null
  /** The standby that people were last told, and the likely time of the moment behind it. */
  readonly announced: Instant | null
  readonly likely: Instant | null
  readonly moves: number
  /** How often it was over and taken back, and when last: people are called anew, and asked anew. */
  readonly again?: { readonly times: number; readonly since: Instant }
}
export interface Alert {
  readonly id: string
  readonly action: string
  readonly owner: string
  readonly deadline: Instant
  readonly raised: Instant
  readonly state: 'open' | 'acknowledged' | 'done'
  readonly acknowledgeBy: Instant
  /** Everybody who was asked, the owner last. */
  readonly asked: readonly string[]
  /** Answers that were heeded already. */
  readonly answered: number
}
/** A forecast with the one it came after: applied, explained, never lost. */
export interface ForecastStep {
  readonly id: string
  readonly at: Instant
  readonly reason: string
  readonly after: string | null
}

/** The live day. Everything in it follows from its events. */
export interface Session {
  /** As it was announced, and with what was sent to the crew since. */
  readonly announced: SessionDay
  readonly day: SessionDay
  readonly now: Instant
  readonly log: Log
  readonly told: DayState
  readonly forecast: (LiveForecast & { readonly id: string }) | null
  readonly history: readonly ForecastStep[]
  readonly calls: Readonly<Record<string, CallNow>>
  readonly alerts: Readonly<Record<string, Alert>>
  /** Who was alerted when, for the load on each. */
  readonly load: readonly { readonly person: string; readonly at: Instant }[]
}

export const openSession = (day: SessionDay): Session => ({
  announced: day,
  day,
  now: instant(0),
  log: EMPTY_LOG,
  told: foldLog(EMPTY_LOG),
  forecast: null,
  history: [],
  calls: {},
  alerts: {},
  load: [],
})

/** The session as this log tells it; a re-plan in it changes whom the day calls. */
export function withLog(session: Session, log: Log): Session {
  const told = foldLog(log)
  return { ...session, log, told, day: dayNow(session.announced, told) }
}

export const expectedOf = ({ forecast }: Session, cook: string, moment: MomentId): Expected | null =>
  forecast?.expected.find((one) => one.cook === cook && one.moment === moment) ?? null

/** One-sided 95 %. */
export const Z = 1.645
/** The early end of what is likely. */
export const earlyOf = ({ likely, sd }: Expected): Instant => instant(likely - Z * sd * 1000)
