import { RULES } from '../day/rules'
import type { Answer, Take } from '../log/day-state'
import { markKey } from '../log/mark-key'
import { type Celsius, celsius, formatTemp, type Instant, instant, later, minutes, seconds } from '../units'
import { type CallNow, type Effect, earlyOf, expectedOf, type Session } from './session'
import type { SessionCall } from './session-day'
import { channelsNow, inShot, ownerFor } from './who'

/** A moment whose take nobody has logged so long after is missed. [estimate] */
const MISSED_AFTER_S = 120
const HAPPENING = 'it is happening'
const OVER: ReadonlySet<string> = new Set(['caught', 'missed', 'dropped'])

export const callNow = (session: Session, call: SessionCall): CallNow =>
  session.calls[call.id] ?? {
    state: 'ahead',
    called: null,
    why: null,
    announced: call.standby,
    likely: call.likely,
    moves: 0,
  }

const markOf = ({ told }: Session, { cook, moment }: Pick<SessionCall, 'cook' | 'moment'>) =>
  told.marks[markKey(cook, moment)]?.at ?? null
/** What was answered to a call or alert; to a call that was dropped and taken back, only what was answered since. */
export function answersTo(session: Session, id: string): readonly Answer[] {
  const answers = session.told.answers[id] ?? []
  const since = session.calls[id]?.again?.since
  return since === undefined ? answers : answers.filter(({ at }) => at >= since)
}

/** When it happened, or is likely to. */
export const momentAt = (session: Session, call: SessionCall): Instant | null =>
  markOf(session, call) ?? expectedOf(session, call.cook, call.moment)?.likely ?? null

/** When it may come at the earliest; what was marked has come. */
function earliest(session: Session, call: SessionCall, at: Instant): Instant {
  const expected = markOf(session, call) === null ? expectedOf(session, call.cook, call.moment) : null
  return expected ? earlyOf(expected) : at
}

type Step = { readonly next: CallNow; readonly effects: readonly Effect[] }

/** What becomes of a call now: it moves, is called, rolls, and ends. */
export function stepCall(session: Session, call: SessionCall, event: string): Step {
  const logged = session.told.shots[call.shot]?.state
  const before = stillOver(session, call, logged)
  if (logged && OVER.has(logged)) return { next: { ...before, state: logged }, effects: [] }
  const ended = endOf(session, call, before)
  if (ended) return { next: { ...before, state: ended }, effects: [] }
  if (before.state === 'ahead') return logged === 'roll' ? rolled(before) : whileAhead(session, call, before, event)
  if (before.state === 'standby')
    return logged === 'roll' ? rolled(before) : whileStanding(session, call, before, event)
  return { next: before, effects: [] }
}
/** Only the log ends a call, by its shot or by a mark; what it takes back is called as if it never had. */
function stillOver(session: Session, call: SessionCall, logged: CallNow['state'] | undefined): CallNow {
  const before = callNow(session, call)
  const marked = before.state !== 'dropped' && markOf(session, call) !== null
  const hangs = OVER.has(before.state) ? before.state !== logged : before.why === HAPPENING
  if (!hangs || marked) return before
  const again = { times: (before.again?.times ?? 0) + 1, since: session.now }
  return { ...before, state: 'ahead', called: null, why: null, again }
}
const rolled = (before: CallNow): Step => ({ next: { ...before, state: 'roll' }, effects: [] })

/** A take that ran over the marked moment has caught it; none so long after has not. */
function endOf(session: Session, call: SessionCall, { state }: CallNow): 'caught' | 'missed' | null {
  const at = markOf(session, call)
  const takes = session.told.takes.filter(({ shot }) => shot === call.shot)
  // Also where the take comes late, from a phone that was cut off.
  if (at !== null && takes.some((take) => covers(take, at))) return 'caught'
  if (at === null) return null
  if (OVER.has(state)) return state as 'caught' | 'missed'
  const rolling = takes.some((take) => take.rolling)
  return !rolling && session.now > at + (call.after + MISSED_AFTER_S) * 1000 ? 'missed' : null
}
const covers = ({ from, to, verdict }: Take, at: Instant) =>
  from !== null && to !== null && from <= at && at <= to && verdict !== 'no-good'

function whileAhead(session: Session, call: SessionCall, before: CallNow, event: string): Step {
  const why = whyNow(session, call)
  if (why === null) return moved(session, call, before, event)
  const at = momentAt(session, call)
  const deadline =
    at === null ? later(session.now, seconds(call.release + call.setup)) : later(at, seconds(-call.before))
  const action = `Stand by for “${call.title}”: ${why}.`
  const alert = alertPeople(session, call, { event, tone: 'standby', action, deadline, again: before.again })
  return { next: { ...before, state: 'standby', called: session.now, why }, effects: alert }
}

/**
 * Why people are called now, or null while there is time. By the forecast: as soon as the early end of what is likely
 * comes within the lead; by the probe or an earlier moment even where no forecast comes any more.
 */
function whyNow(session: Session, call: SessionCall): string | null {
  const { now, told } = session
  if (markOf(session, call) !== null) return HAPPENING
  if (told.shots[call.shot]?.state === 'standby') return 'called by hand'
  const { follows, trigger } = call
  const from = follows && told.marks[markKey(call.cook, follows.moment)]?.at
  if (from && follows && now >= from + follows.after * 1000)
    return `it comes after '${follows.moment.replaceAll('-', ' ')}'`
  const read = hottestCore(session, call.cook)
  if (trigger !== null && read !== null && read >= trigger) return `the probe reads ${formatTemp(read)}`
  const expected = expectedOf(session, call.cook, call.moment)
  const leadMs = (call.release + call.setup + call.before) * 1000
  if (expected) return earlyOf(expected) <= now + leadMs ? 'it may come soon' : null
  return trigger === null && follows === null && call.standby !== null && call.standby <= now ? 'it is time' : null
}

/** The last believed reading of the cook's core probes; of several the hottest, so that nobody comes too late. */
export function hottestCore({ told }: Session, cook: string): Celsius | null {
  const last = Object.values(told.probes)
    .filter((probe) => probe.cook === cook && probe.sensor.startsWith('core') && !probe.wrong && !probe.out)
    .flatMap(({ readings }) => readings.at(-1)?.temp ?? [])
  return last.length === 0 ? null : celsius(Math.max(...last))
}

/** A call moves as its moment does; what people are told anew is the standby they had, so much later or sooner. */
function moved(session: Session, call: SessionCall, before: CallNow, event: string): Step {
  const likely = expectedOf(session, call.cook, call.moment)?.likely
  if (likely === undefined) return { next: before, effects: [] }
  const from = before.announced
  const byLead = later(likely, seconds(-(call.release + call.setup + call.before)))
  const to = from !== null && before.likely !== null ? instant(from + likely - before.likely) : byLead
  const same = from !== null && Math.abs(to - from) < minutes(RULES.movedMin) * 1000
  if (same || to <= session.now) return { next: before, effects: [] }
  const moves = before.moves + 1
  const reason = session.forecast?.reasons?.[call.cook] ?? session.forecast?.reason ?? ''
  const effect: Effect = { do: 'move-call', key: `move/${call.id}/${moves}`, event, call: call.id, from, to, reason }
  return { next: { ...before, announced: to, likely, moves }, effects: [effect] }
}

function whileStanding(session: Session, call: SessionCall, before: CallNow, event: string): Step {
  const at = momentAt(session, call)
  if (at === null || session.now < earliest(session, call, at) - call.before * 1000)
    return { next: before, effects: [] }
  const action = `Roll on “${call.title}”.`
  const deadline = instant(Math.max(at, session.now))
  return {
    next: { ...before, state: 'roll' },
    effects: alertPeople(session, call, { event, tone: 'roll', action, deadline, again: before.again }),
  }
}

type Said = {
  readonly event: string
  readonly tone: 'standby' | 'roll'
  readonly action: string
  readonly deadline: Instant
  readonly again: CallNow['again']
}
/** To everybody who is called; where all of them are in shot, somebody off camera owns it and fetches them. */
function alertPeople(session: Session, call: SessionCall, { event, tone, action, deadline, again }: Said): Effect[] {
  const seen = inShot(session)
  const owner = call.people.find((id) => !seen.has(id)) ?? ownerFor(session, []) ?? call.people[0]
  if (owner === undefined) return []
  const to = call.people.includes(owner) ? call.people : [...call.people, owner]
  const key = `${tone}/${call.id}${again ? `/again-${again.times}` : ''}`
  return [
    { do: 'sound-alert', key, event, tone, owner, to, channels: channelsNow(session), action, deadline, call: call.id },
  ]
}
