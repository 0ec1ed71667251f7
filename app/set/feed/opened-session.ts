import { EMPTY_LOG, type Line, type Log, merge } from '@/lib/log/log'
import { reduce } from '@/lib/session/reduce'
import { type Effect, openSession, type Session, withLog } from '@/lib/session/session'
import { type Instant, instant } from '@/lib/units'
import type { ServerState, SetOpening } from '../set-feed'
import type { KeptDay } from './store'

/** What came up longer ago than this while the screen was shut is shown, and makes no noise. */
const OLD_MS = 2 * 60_000

interface Opened {
  readonly session: Session
  /** What came up long ago, and what is due now. */
  readonly old: readonly Effect[]
  readonly fresh: readonly Effect[]
}

/** The day as it stands when a screen opens on it, from where it was left, as if it had run on till now. */
export function openedSession(opening: SetOpening, kept: KeptDay | null, log: Log, now: Instant): Opened {
  const left = leftAt(opening, kept)
  const before = instant(Math.max(left.now, now - OLD_MS))
  const { forecast } = opening
  const then = knowing(left, linesUntil(log, before), forecast && forecast.at <= before ? forecast : null)
  const [early, old] = reduce(then, { id: 'open', at: before, kind: 'tick' })
  const late = knowing(early, log, forecast)
  const isNewDay = kept?.state && kept.opening.version !== opening.version
  const [session, fresh] = reduce(
    late,
    isNewDay ? { id: 'open', at: now, kind: 'day', day: opening.day } : { id: 'open', at: now, kind: 'tick' },
  )
  return { session, old, fresh }
}

/** Where this device left off, or where the server stands, if that is later: what is over is not told anew. */
function leftAt({ day, state }: SetOpening, kept: KeptDay | null): Session {
  const here = kept?.state ? { ...openSession(kept.opening.day), ...kept.state } : openSession(day)
  return state && state.now > here.now ? withServer({ ...here, announced: day, day, now: state.now }, state) : here
}
/** What only this device has raised stays, and ends as soon as nothing needs it. */
export const withServer = (session: Session, { calls, alerts, load }: ServerState): Session => ({
  ...session,
  calls: { ...session.calls, ...calls },
  alerts: { ...session.alerts, ...alerts },
  load,
})

/** When it could be known here: sent by then, or written here. */
const linesUntil = (log: Log, at: Instant): Log =>
  merge(
    EMPTY_LOG,
    [...log.values()].filter(({ entry, receipt }: Line) => (receipt?.received ?? entry.at) <= at),
  )

/** With all of it at once: a log without its forecast, or half a log, would call people for nothing. */
function knowing(session: Session, log: Log, forecast: SetOpening['forecast']): Session {
  return withForecast(withLog(session, log), forecast)
}

/** The forecast that counts, though it may have come before. */
export function withForecast(session: Session, given: SetOpening['forecast']): Session {
  if (!given || session.forecast?.id === given.id) return session
  const { id, at, forecast } = given
  const known = session.history.some((step) => step.id === id)
  const step = { id, at, reason: forecast.reason, after: session.forecast?.id ?? null }
  return { ...session, forecast: { ...forecast, id }, history: known ? session.history : [...session.history, step] }
}
