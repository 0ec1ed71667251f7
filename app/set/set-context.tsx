'use client'
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react'
import type { BoardFacts } from '@/lib/session/board-facts'
import { factsNow } from '@/lib/session/re-planned'
import type { Session } from '@/lib/session/session'
import type { Instant, Seconds, UnitSystem } from '@/lib/units'
import { useReadersWay } from '../ui/reader'
import { notKept } from '../words/set'
import { clockFace, timecodeFace } from './clock-face'
import type { SetFacts } from './set-facts'
import type { EntryDraft, SetFeed, SetSnapshot } from './set-feed'
import { useSecond, useSnapshot } from './use-set'

/** What every part of a set screen works with. */
export interface SetView {
  readonly feed: SetFeed
  readonly snapshot: SetSnapshot
  readonly session: Session
  readonly facts: BoardFacts
  /** This morning's heat line of each roast. */
  readonly heat: NonNullable<SetFacts['heat']>
  readonly units: UnitSystem
  /** To the second. */
  readonly now: Instant
  readonly me: string | null
  readonly clock: (at: Instant) => string
  readonly timecode: (at: Instant) => string
  readonly nameOf: (person: string) => string
  /** Logs an entry and tells it in one line; `said` is that line. */
  readonly log: (draft: EntryDraft, said: string, ago?: Seconds) => void
  readonly said: string
}
const Context = createContext<SetView | null>(null)

export function useSet(): SetView {
  const view = useContext(Context)
  if (!view) throw new Error('A part of the set stands outside its screen.')
  return view
}

const NO_HEAT = {}
/** As long as a glance after a press takes. */
const SAID_MS = 6000

interface SetProps {
  readonly feed: SetFeed
  readonly facts: SetFacts
  readonly units: UnitSystem
  readonly children: ReactNode
}

export function SetContext({ feed, facts, units, children }: SetProps) {
  const snapshot = useSnapshot(feed)
  const now = useSecond(feed)
  const way = useReadersWay()
  const [said, setSaid] = useState('')
  useEffect(() => {
    if (said === '') return
    const timer = setTimeout(() => setSaid(''), SAID_MS)
    return () => clearTimeout(timer)
  }, [said])
  const fixed = useMemo(() => {
    const names = new Map(facts.people.map(({ id, name }) => [id, name]))
    return {
      clock: clockFace(facts.zone, way),
      timecode: timecodeFace(facts.zone),
      nameOf: (person: string) => names.get(person) ?? person,
      log: (draft: EntryDraft, told: string, ago?: Seconds) => {
        feed.add(draft, ago).then(
          () => setSaid(told),
          () => setSaid(notKept),
        )
      },
    }
  }, [feed, facts, way])
  // What counts by the clock goes with the second on the screen.
  const session = { ...snapshot.session, now }
  const { changes } = snapshot.session.told
  const asSent = useMemo(() => factsNow(facts, { changes }), [facts, changes])
  const view = {
    ...fixed,
    feed,
    snapshot,
    session,
    facts: asSent,
    heat: facts.heat ?? NO_HEAT,
    units,
    now,
    me: feed.person,
    said,
  }
  return <Context value={view}>{children}</Context>
}
