import type { Answer } from '../log/day-state'
import { type Instant, later, minutes, seconds } from '../units'
import { type Need, needsOf } from './needs'
import type { Alert, Effect, Session } from './session'
import { channelsNow, hasRole, inShot, loadOf, ownerFor } from './who'

/** Somebody has so long to say that they see to it. [estimate] */
const ACKNOWLEDGE_S = 120
const LEAST_ACKNOWLEDGE_S = 30
/** An alert that can wait does so until this long before its deadline. */
const LAST_CALL_MIN = 3

type Step = { readonly next: Alert; readonly effects: readonly Effect[] }

/** Raises what is due, heeds answers, passes on what nobody answers, and ends what is done. */
export function stepAlerts(session: Session, event: string): { session: Session; effects: readonly Effect[] } {
  const needs = new Map(needsOf(session).map((need) => [need.id, need]))
  let now = session
  const effects: Effect[] = []
  const take = (step: Step | null) => {
    if (!step) return
    now = { ...now, alerts: { ...now.alerts, [step.next.id]: step.next } }
    effects.push(...step.effects)
    now = withLoad(now, step.effects)
  }
  for (const alert of Object.values(session.alerts)) take(stepAlert(now, alert, needs.get(alert.id), event))
  for (const need of [...needs.values()].sort((a, b) => a.deadline - b.deadline || (a.id < b.id ? -1 : 1)))
    if (!session.alerts[need.id]) take(raise(now, need, event))
  return { session: now, effects }
}

/** Counts who is alerted; what is older than the load looks back is let go. */
export function withLoad(session: Session, effects: readonly Effect[]): Session {
  const to = effects.flatMap((effect) => (effect.do === 'sound-alert' ? effect.to : []))
  if (to.length === 0) return session
  const recent = session.load.filter(({ at }) => at > session.now - minutes(10) * 1000)
  return { ...session, load: [...recent, ...to.map((person) => ({ person, at: session.now }))] }
}

function raise(session: Session, need: Need, event: string): Step | null {
  const { now } = session
  if (need.due > now) return null
  const owner = ownerFor(session, need.roles)
  if (owner === null) return null
  const canWait = !need.urgent && now < need.deadline - minutes(LAST_CALL_MIN) * 1000
  if (canWait && loadOf(session, owner) > 0) return null
  const alert: Alert = {
    id: need.id,
    action: need.action,
    owner,
    deadline: need.deadline,
    raised: now,
    state: 'open',
    acknowledgeBy: acknowledgeBy(now, need.deadline),
    asked: [owner],
    answered: 0,
  }
  return { next: alert, effects: [sounded(session, alert, need, event)] }
}

const acknowledgeBy = (now: Instant, deadline: Instant) =>
  later(now, seconds(Math.min(ACKNOWLEDGE_S, Math.max(LEAST_ACKNOWLEDGE_S, (deadline - now) / 2000))))

function sounded(session: Session, alert: Alert, need: Need, event: string): Effect {
  const { id, owner, deadline, asked } = alert
  // Who cannot do it sees to it that somebody does.
  const action = hasRole(session, owner, need.roles) ? need.action : `See to it: ${need.action}`
  const channels = channelsNow(session)
  const key = `alert/${id}/${asked.length}`
  return { do: 'sound-alert', key, event, tone: 'trouble', owner, to: [owner], channels, action, deadline, call: id }
}

function stepAlert(session: Session, alert: Alert, need: Need | undefined, event: string): Step | null {
  if (alert.state === 'done') return null
  if (!need) return { next: { ...alert, state: 'done' }, effects: [] }
  const answers = session.told.answers[alert.id] ?? []
  const fresh = answers.slice(alert.answered)
  if (fresh.length > 0)
    return heed(session, { ...alert, answered: answers.length }, fresh.at(-1) as Answer, need, event)
  if (alert.state === 'open' && session.now >= alert.acknowledgeBy) return passOn(session, alert, need, event)
  return null
}

/** The last answer counts. */
function heed(session: Session, alert: Alert, { answer, to }: Answer, need: Need, event: string): Step {
  if (answer === 'cannot') return passOn(session, alert, need, event)
  if (answer !== 'hand-over' || to === null) return { next: { ...alert, state: 'acknowledged' }, effects: [] }
  return askNext(session, alert, to, need, event)
}

/**
 * To somebody who was not asked yet and is off camera; where nobody is, it stays with its last owner and on every
 * screen, until a take has ended.
 */
function passOn(session: Session, alert: Alert, need: Need, event: string): Step {
  const next = ownerFor(session, need.roles, alert.asked)
  if (next !== null && !inShot(session).has(next)) return askNext(session, alert, next, need, event)
  return { next: { ...alert, acknowledgeBy: later(session.now, seconds(ACKNOWLEDGE_S)) }, effects: [] }
}

function askNext(session: Session, alert: Alert, owner: string, need: Need, event: string): Step {
  const by = acknowledgeBy(session.now, need.deadline)
  const next: Alert = { ...alert, owner, state: 'open', acknowledgeBy: by, asked: [...alert.asked, owner] }
  return { next, effects: [sounded(session, next, need, event)] }
}
