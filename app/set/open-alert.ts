import type { Session } from '@/lib/session/session'
import type { Instant } from '@/lib/units'
import type { SetSnapshot } from './set-feed'

export interface OpenAlert {
  /** What an answer names. */
  readonly call: string
  readonly action: string
  readonly owner: string
  readonly deadline: Instant
}

/** The alert that waits for this person's answer: the one that sounded, or one that stood open when the page was opened. */
export function openAlert({ session, sounding }: SetSnapshot, me: string | null): OpenAlert | null {
  if (sounding && (me === null || sounding.to.includes(me)) && !settled(session, sounding.call)) {
    const { call, action, owner, deadline } = sounding
    return { call, action, owner, deadline }
  }
  const open = Object.values(session.alerts)
    .filter((alert) => alert.state === 'open' && alert.owner === me)
    .sort((a, b) => a.deadline - b.deadline)[0]
  if (!open) return null
  return { call: open.id, action: open.action, owner: open.owner, deadline: open.deadline }
}

const OVER: ReadonlySet<string> = new Set(['caught', 'missed', 'dropped'])
/** Nobody need answer a call that is over, or an alert that is done. */
function settled(session: Session, call: string): boolean {
  const state = session.calls[call]?.state
  return (state !== undefined && OVER.has(state)) || session.alerts[call]?.state === 'done'
}
