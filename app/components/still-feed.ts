import { EMPTY_LOG } from '@/lib/log/log'
import { openSession, type Session } from '@/lib/session/session'
import { type Instant, instant } from '@/lib/units'
import type { SetFeed, SetOpening, SetSnapshot } from '../set/set-feed'

const BEFORE_FIRST_CALL_MS = 40 * 60_000

/** Forty minutes before the first moment that somebody is called for. */
export function stillAt(opening: SetOpening, likely: readonly Instant[]): Instant {
  const first = [...likely].sort((a, b) => a - b)[0]
  return first === undefined ? opening.now : instant(first - BEFORE_FIRST_CALL_MS)
}

export const stillSession = (opening: SetOpening, at: Instant): Session => ({
  ...openSession(opening.day),
  log: EMPTY_LOG,
  now: at,
})

/** A set that stands still in one state, for looking at: nothing that is pressed is kept. */
export function stillFeed(session: Session, person: string | null, state: Partial<SetSnapshot> = {}): SetFeed {
  const shown: SetSnapshot = {
    session,
    link: 'live',
    waiting: 0,
    forecastBy: 'server',
    merged: [],
    sounding: null,
    ...state,
  }
  return {
    now: () => session.now,
    person,
    snapshot: () => shown,
    subscribe: () => () => {},
    add: async () => {},
    choose: () => {},
  }
}
