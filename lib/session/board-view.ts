import type { CallProgress } from '../log/entry'
import { markKey } from '../log/mark-key'
import type { MomentId } from '../model/moment-ids'
import { type Celsius, type Instant, instant, later, type Seconds, seconds } from '../units'
import type { BoardFacts, BoardShot, BoardSpan, Span95 } from './board-facts'
import { answersTo, callNow } from './calls'
import { earlyOf, expectedOf, type Session } from './session'
import type { SessionCall } from './session-day'

/** One thing that a person has to do, as the board shows it. */
export interface Duty {
  readonly id: string
  readonly kind: 'call' | 'shot' | 'task' | 'meal'
  readonly shot: string | null
  readonly number: number | null
  readonly title: string
  readonly state: CallProgress | 'on' | 'over'
  /** What the count runs to. */
  readonly until: { readonly what: Until; readonly at: Instant } | null
  /** By which it stands in line. */
  readonly sort: Instant
  /** The moment behind a call, and when it is expected now. */
  readonly moment: { readonly id: MomentId; readonly name: string; readonly window: Span95 } | null
  readonly standby: Instant | null
  /** Why it was called. */
  readonly why: string | null
  readonly trigger: Celsius | null
  readonly follows: { readonly name: string; readonly after: Seconds } | null
  readonly roll: { readonly before: Seconds; readonly after: Seconds } | null
  readonly place: string | null
  /** The camera this person stands behind in it. */
  readonly camera: string | null
  readonly inShot: boolean
  readonly people: readonly string[]
  /** What this person answered last. */
  readonly answered: 'coming' | 'ready' | 'cannot' | 'hand-over' | null
}
export type Until = 'stand by' | 'moment' | 'be there' | 'roll' | 'end' | 'begin'

const OVER: ReadonlySet<string> = new Set(['caught', 'missed', 'dropped', 'over'])
export const isOver = (duty: Duty): boolean => OVER.has(duty.state)

/** Everything one person has to do that day, in order of time. */
export function dutiesOf(session: Session, facts: BoardFacts, person: string): readonly Duty[] {
  return allDuties(session, facts, person).filter((duty) => duty.people.includes(person))
}

/** The same for everybody, seen by `person`. */
export function allDuties(session: Session, facts: BoardFacts, person: string | null): readonly Duty[] {
  const { day } = session
  const called = new Set(day.calls.map(({ shot }) => shot))
  const all = [
    ...day.calls.map((call) => callDuty(session, facts, call, person)),
    ...Object.keys(facts.shots).flatMap((id) => (called.has(id) ? [] : [shotDuty(session, facts, id, person)])),
    ...facts.tasks.map((task) => spanDuty(session, task, 'task')),
    ...facts.meals.map((meal) => spanDuty(session, meal, 'meal')),
  ]
  return all.sort((a, b) => a.sort - b.sort || (a.id < b.id ? -1 : 1))
}

/**
 * What the board puts in large letters: what rolls before what stands by, a call before a free shot, then the first
 * that begins. A task that is under way, such as minding the fire, hides nothing.
 */
export function nextDuty(duties: readonly Duty[], now: Instant): Duty | null {
  const open = duties.filter(
    (duty) => !isOver(duty) && !isLapsed(duty, now) && !(duty.kind === 'task' && duty.state === 'on'),
  )
  return open.reduce<Duty | null>((best, duty) => (best === null || rank(duty) < rank(best) ? duty : best), null)
}
/** The shot that this person is at, or comes to next. */
export const nextShot = (session: Session, facts: BoardFacts, person: string | null, now: Instant): Duty | null =>
  person === null
    ? null
    : nextDuty(
        dutiesOf(session, facts, person).filter(({ shot }) => shot !== null),
        now,
      )
/** What goes on all the while. */
export const meanwhile = (duties: readonly Duty[]): readonly Duty[] =>
  duties.filter(({ kind, state }) => kind === 'task' && state === 'on')

const RANKS: Readonly<Record<string, number>> = { 'call roll': 0, 'call standby': 1, 'shot roll': 2, 'shot standby': 3 }
const rank = ({ kind, state }: Duty) => RANKS[`${kind} ${state}`] ?? 4

/** What nobody told anything of is not waited for for ever. [estimate] */
const LAPSED_AFTER_MS = 600_000
export function isLapsed({ kind, state, until, moment }: Duty, now: Instant): boolean {
  if (kind === 'shot') return state !== 'roll' && until?.what === 'end' && now > until.at + LAPSED_AFTER_MS
  return kind === 'call' && now > (moment?.window.late ?? now) + LAPSED_AFTER_MS
}

/** The expected window of a moment: marked, forecast live, or as planned. */
export function momentWindow(session: Session, facts: BoardFacts, cook: string, moment: MomentId): Span95 {
  const marked = session.told.marks[markKey(cook, moment)]?.at
  if (marked !== undefined) return { early: marked, likely: marked, late: marked }
  const expected = expectedOf(session, cook, moment)
  if (!expected) return facts.cooks.find(({ id }) => id === cook)?.windows[moment] ?? NEVER
  const early = earlyOf(expected)
  return { early, likely: expected.likely, late: instant(2 * expected.likely - early) }
}
const NEVER: Span95 = { early: null, likely: null, late: null }

function callDuty(session: Session, facts: BoardFacts, call: SessionCall, person: string | null): Duty {
  const { state, announced, why } = callNow(session, call)
  const window = momentWindow(session, facts, call.cook, call.moment)
  const standby = announced ?? byLead(call, window.likely)
  const cook = session.day.cooks.find(({ id }) => id === call.cook)
  const named = (moment: MomentId) => cook?.names[moment] ?? moment.replaceAll('-', ' ')
  return {
    ...placeOf(facts, call.shot, person),
    id: call.id,
    kind: 'call',
    title: call.title,
    state,
    until: callUntil(state, standby, window.likely),
    sort: instant((state === 'ahead' ? standby : window.likely) ?? window.likely ?? standby ?? session.now),
    moment: { id: call.moment, name: named(call.moment), window },
    standby,
    why,
    trigger: call.trigger,
    follows: call.follows && { name: named(call.follows.moment), after: call.follows.after },
    roll: { before: call.before, after: call.after },
    people: call.people,
    answered: answerOf(session, call.id, person),
  }
}
const byLead = ({ release, setup, before }: SessionCall, likely: Instant | null) =>
  likely === null ? null : later(likely, seconds(-(release + setup + before)))

function callUntil(state: CallProgress, standby: Instant | null, likely: Instant | null): Duty['until'] {
  if (state === 'ahead') return standby === null ? null : { what: 'stand by', at: standby }
  return likely === null ? null : { what: 'moment', at: likely }
}

/** Who is seen or heard on camera, of those who stand behind none. */
const IN_SHOT = ['presenter', 'host']

function placeOf(facts: BoardFacts, id: string, person: string | null) {
  const shot = facts.shots[id]
  const at = person === null ? -1 : (shot?.people.indexOf(person) ?? -1)
  const camera = at < 0 ? null : (shot?.cameras[at] ?? null)
  const roles = facts.people.find((one) => one.id === person)?.roles ?? []
  return {
    shot: id,
    number: shot?.number ?? null,
    place: shot?.place ?? null,
    camera,
    inShot: at >= 0 && camera === null && roles.some((role) => IN_SHOT.includes(role)),
  }
}

const answerOf = (session: Session, call: string, person: string | null) =>
  answersTo(session, call).findLast((one) => one.person === person && person !== null)?.answer ?? null

const NO_CALL = { moment: null, standby: null, why: null, trigger: null, follows: null, roll: null } as const

function shotDuty(session: Session, facts: BoardFacts, id: string, person: string | null): Duty {
  const shot = facts.shots[id] as BoardShot
  const state = shotState(session, id, shot)
  return {
    ...NO_CALL,
    ...placeOf(facts, id, person),
    id: `shot-${id}`,
    kind: 'shot',
    title: shot.title,
    state,
    until: shotUntil(session.now, state, shot),
    sort: shot.setupStart,
    people: shot.people,
    answered: answerOf(session, `shot-${id}`, person),
  }
}
function shotState({ told, now }: Session, id: string, shot: BoardShot): CallProgress {
  if (told.takes.some((take) => take.shot === id && take.rolling)) return 'roll'
  return told.shots[id]?.state ?? (now >= shot.setupStart ? 'standby' : 'ahead')
}
function shotUntil(now: Instant, state: CallProgress, shot: BoardShot): Duty['until'] {
  if (state === 'ahead') return { what: 'be there', at: shot.setupStart }
  return state === 'standby' && now < shot.start ? { what: 'roll', at: shot.start } : { what: 'end', at: shot.end }
}

function spanDuty(session: Session, span: BoardSpan, kind: 'task' | 'meal'): Duty {
  const { begun, ended } = kind === 'meal' ? mealTold(session, span) : byClock(span, session.now)
  return {
    ...NO_CALL,
    id: span.id,
    kind,
    shot: null,
    number: null,
    title: span.title,
    state: ended ? 'over' : begun ? 'on' : 'ahead',
    until: begun ? { what: 'end', at: span.end } : { what: 'begin', at: span.start },
    sort: span.start,
    place: null,
    camera: null,
    inShot: false,
    people: span.people,
    answered: null,
  }
}
const byClock = ({ start, end }: BoardSpan, now: Instant) => ({ begun: now >= start, ended: now >= end })

/** Meals are taken in their order; what nobody told goes by the clock. */
function mealTold({ told, now }: Session, meal: BoardSpan) {
  const before = Number(meal.id.replace('meal-', ''))
  const said = (is: string) => told.meals.filter(({ entry }) => entry.is === is).length > before
  const { begun, ended } = byClock(meal, now)
  return { begun: begun || said('begins'), ended: ended || said('ends') }
}
