'use client'
import Link from 'next/link'
import { useCallback, useSyncExternalStore } from 'react'
import { instant } from '@/lib/units'
import { useSet } from '../set-context'
import { SPEEDS, type Speed } from './played-clock'
import { before } from './played-day'
import type { Playing, RehearsalFeed } from './rehearsal-feed'
import type { RehearsalProps } from './rehearsal-here'

const STATES: Readonly<Record<Playing['state'], string>> = {
  'working-out': 'Working out the forecast.',
  plays: '',
  waits: 'It asks you: at 1× until you answer, or somebody does for you.',
  stands: 'Paused. What you add stays on this screen.',
  over: 'The day is over.',
}
const NOTE = {
  'made-up': 'Made-up day: invented readings. What you add stays on this screen.',
  logged: 'The day as it was logged. What you add stays on this screen.',
} as const

type BarProps = RehearsalProps & { readonly feed: RehearsalFeed }
/** Over the screens of a played day: stand still, how fast, where to, and as whom. */
export function RehearsalBar({ feed, ...props }: BarProps) {
  const { state, speed } = usePlaying(feed)
  const stands = state === 'stands'
  return (
    <section className="rehearsal-bar" aria-label="Rehearsal">
      <div className="rehearsal-keys">
        <button type="button" onClick={() => feed.pause(!stands)} disabled={state === 'over'}>
          {stands ? 'Play' : 'Pause'}
        </button>
        <select aria-label="Speed" value={speed} onChange={(event) => feed.faster(Number(event.target.value) as Speed)}>
          {SPEEDS.map((one) => (
            <option key={one} value={one}>
              {one}×
            </option>
          ))}
        </select>
        <Jump feed={feed} />
        {props.view === 'board' && <AsWhom feed={feed} />}
      </div>
      <p className="rehearsal-note">
        <span role="status">{STATES[state] || NOTE[props.played]}</span>
        <OtherDays {...props} />
      </p>
    </section>
  )
}

function AsWhom({ feed }: { feed: RehearsalFeed }) {
  const { facts } = useSet()
  return (
    <select aria-label="As whom" value={feed.person ?? ''} onChange={(event) => feed.choose(event.target.value)}>
      {feed.person === null && <option value="">as nobody</option>}
      {facts.people.map(({ id, name }) => (
        <option key={id} value={id}>
          as {name}
        </option>
      ))}
    </select>
  )
}

function Jump({ feed }: { feed: RehearsalFeed }) {
  const { session, clock } = useSet()
  const { begins, opensAt, moments } = feed.rehearsed.day
  const several = session.day.cooks.length > 1
  const nameOf = (cook: string, moment: (typeof moments)[number]['moment']) => {
    const name = session.day.cooks.find(({ id }) => id === cook)?.names[moment] ?? moment.replaceAll('-', ' ')
    return several ? `${name}, ${cook}` : name
  }
  return (
    <select
      aria-label="Jump to"
      value=""
      onChange={(event) => event.target.value !== '' && feed.jump(instant(Number(event.target.value)))}
    >
      <option value="">Jump to</option>
      <option value={opensAt}>Start again, {clock(opensAt)}</option>
      <option value={begins}>The first entry, {clock(begins)}</option>
      {moments.map(({ cook, moment, at }) => (
        <option key={`${cook}/${moment}`} value={before(at, begins)}>
          10 min before {nameOf(cook, moment)}, {clock(before(at, begins))}
        </option>
      ))}
    </select>
  )
}

function OtherDays({ shootId, played, hasLog, view }: RehearsalProps) {
  const here = `/shoots/${shootId}/set/rehearsal`
  const as = (of: string, seen: string) => `${here}?${new URLSearchParams({ of, view: seen })}`
  const other = played === 'logged' ? 'made-up' : 'logged'
  return (
    <span className="rehearsal-links">
      {hasLog && <a href={as(other, view)}>{other === 'logged' ? 'Logged day' : 'Made-up day'}</a>}
      <a href={as(played, view === 'desk' ? 'board' : 'desk')}>{view === 'desk' ? 'Phone' : 'Laptop'}</a>
      <Link href={`/shoots/${shootId}/set`}>Leave</Link>
    </span>
  )
}

function usePlaying(feed: RehearsalFeed): Playing {
  const subscribe = useCallback((changed: () => void) => feed.subscribe(changed), [feed])
  const read = useCallback(() => feed.playing(), [feed])
  return useSyncExternalStore(subscribe, read, read)
}
