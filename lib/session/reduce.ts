import { type Line, merge } from '../log/log'
import { instant } from '../units'
import { stepAlerts, withLoad } from './alerts'
import { stepCall } from './calls'
import { dayNow } from './re-planned'
import { type Effect, openSession, type Session, type SessionEvent, withLog } from './session'
import type { SessionDay } from './session-day'

/** The whole rule book of the live day: what an event makes of it, and what the shell has to do, as data. */
export function reduce(state: Session, event: SessionEvent): readonly [Session, readonly Effect[]] {
  // Time does not run back where an event was held up.
  const now = instant(Math.max(state.now, event.at))
  const [told, saved] = heard({ ...state, now }, event)
  const called = stepCalls(told, event.id)
  const alerted = stepAlerts(called.session, event.id)
  return [alerted.session, [...saved, ...called.effects, ...alerted.effects]]
}

function heard(state: Session, event: SessionEvent): readonly [Session, readonly Effect[]] {
  switch (event.kind) {
    case 'tick':
      return [state, []]
    case 'day':
      return [withDay(state, event.day), []]
    case 'line':
      return [withLines(state, [event.line]), []]
    case 'lines':
      return [withLines(state, event.lines), []]
    case 'forecast':
      return forecasted(state, event)
  }
}

function withDay(state: Session, announced: SessionDay): Session {
  return { ...state, announced, day: dayNow(announced, state.told), calls: announcedAnew(state, announced) }
}

function withLines(state: Session, lines: readonly Line[]): Session {
  return withLog(state, merge(state.log, lines))
}

/** Who adopts a new day has told everybody its times; what was called already stays called. */
function announcedAnew({ calls }: Session, day: SessionDay): Session['calls'] {
  const anew = new Map(day.calls.map(({ id, standby, likely }) => [id, { announced: standby, likely }]))
  return Object.fromEntries(Object.entries(calls).map(([id, call]) => [id, { ...call, ...anew.get(id) }]))
}

function forecasted(state: Session, { id, at, forecast }: SessionEvent & { kind: 'forecast' }) {
  if (state.history.some((step) => step.id === id)) return [state, []] as const
  const after = state.forecast?.id ?? null
  const history = [...state.history, { id, at, reason: forecast.reason, after }]
  const effect: Effect = { do: 'save-forecast', key: `forecast/${id}`, event: id, forecast, after }
  return [{ ...state, forecast: { ...forecast, id }, history }, [effect]] as const
}

function stepCalls(state: Session, event: string): { session: Session; effects: readonly Effect[] } {
  let session = state
  const effects: Effect[] = []
  for (const call of state.day.calls) {
    const step = stepCall(session, call, event)
    session = withLoad({ ...session, calls: { ...session.calls, [call.id]: step.next } }, step.effects)
    effects.push(...step.effects)
  }
  return { session, effects }
}

/** A day from its events: the same events give the same session and the same effects. */
export function replay(day: SessionDay, events: Iterable<SessionEvent>): readonly [Session, readonly Effect[]] {
  let session = openSession(day)
  const effects: Effect[] = []
  for (const event of events) {
    const [next, made] = reduce(session, event)
    session = next
    effects.push(...made)
  }
  return [session, effects]
}

/** What of these a device has not done yet: after a reconnect or a restart nothing is done twice. */
export const undone = (effects: readonly Effect[], done: ReadonlySet<string>): Effect[] =>
  effects.filter(({ key }) => !done.has(key))
