'use client'
import Link from 'next/link'
import { useCallback, useSyncExternalStore } from 'react'
import { instant } from '@/lib/units'
import {
  asNobody,
  asWhom,
  asWords,
  dayAsItWasLogged,
  dayIsOver,
  firstEntry,
  inventedReadings,
  itAsksYou,
  jumpTo,
  laptop,
  leave,
  loggedDay,
  minBefore,
  paused,
  pauseWords,
  phone,
  play,
  rehearsal,
  rehearsedDay,
  speedWords,
  startAgain,
  workingOutForecast,
} from '../../words/rehearsal'
import { useSet } from '../set-context'
import { SPEEDS, type Speed } from './played-clock'
import { before } from './played-day'
import type { Playing, RehearsalFeed } from './rehearsal-feed'
import type { RehearsalProps } from './rehearsal-here'

const STATES: Readonly<Record<Playing['state'], string>> = {
  'working-out': workingOutForecast,
  plays: '',
  waits: itAsksYou,
  stands: paused,
  over: dayIsOver,
}
const NOTE = {
  'made-up': inventedReadings,
  logged: dayAsItWasLogged,
} as const

type BarProps = RehearsalProps & { readonly feed: RehearsalFeed }
/** Over the screens of a played day: stand still, how fast, where to, and as whom. */
export function RehearsalBar({ feed, ...props }: BarProps) {
  const { state, speed } = usePlaying(feed)
  const stands = state === 'stands'
  return (
    <section className="rehearsal-bar" aria-label={rehearsal}>
      <div className="rehearsal-keys">
        <button type="button" onClick={() => feed.pause(!stands)} disabled={state === 'over'}>
          {stands ? play : pauseWords}
        </button>
        <select
          aria-label={speedWords}
          value={speed}
          onChange={(event) => feed.faster(Number(event.target.value) as Speed)}
        >
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
    <select aria-label={asWhom} value={feed.person ?? ''} onChange={(event) => feed.choose(event.target.value)}>
      {feed.person === null && <option value="">{asNobody}</option>}
      {facts.people.map(({ id, name }) => (
        <option key={id} value={id}>
          {asWords(name)}
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
      aria-label={jumpTo}
      value=""
      onChange={(event) => event.target.value !== '' && feed.jump(instant(Number(event.target.value)))}
    >
      <option value="">{jumpTo}</option>
      <option value={opensAt}>{startAgain(clock(opensAt))}</option>
      <option value={begins}>{firstEntry(clock(begins))}</option>
      {moments.map(({ cook, moment, at }) => (
        <option key={`${cook}/${moment}`} value={before(at, begins)}>
          {minBefore(nameOf(cook, moment), clock(before(at, begins)))}
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
      {hasLog && <a href={as(other, view)}>{other === 'logged' ? loggedDay : rehearsedDay}</a>}
      <a href={as(played, view === 'desk' ? 'board' : 'desk')}>{view === 'desk' ? phone : laptop}</a>
      <Link href={`/shoots/${shootId}/set`}>{leave}</Link>
    </span>
  )
}

function usePlaying(feed: RehearsalFeed): Playing {
  const subscribe = useCallback((changed: () => void) => feed.subscribe(changed), [feed])
  const read = useCallback(() => feed.playing(), [feed])
  return useSyncExternalStore(subscribe, read, read)
}
