'use client'
import { useEffect, useState } from 'react'
import type { EntryDocument } from '@/lib/log/entry'
import type { BoardFacts } from '@/lib/session/board-facts'
import type { UnitSystem } from '@/lib/units'
import { rehearsalWords, thereIsNoDay } from '../../words/rehearsal'
import { putRightOnDay } from '../../words/shared'
import { Board } from '../board'
import { Desk } from '../desk'
import { keepAwake } from '../feed/awake'
import { DEVICE_ALARM } from '../feed/device-alarm'
import { DEVICE_CLOCK } from '../feed/device-clock'
import { WorkerForecaster } from '../feed/own-forecast'
import { SetContext } from '../set-context'
import type { SetOpening } from '../set-feed'
import type { DayPlayed } from './load-rehearsal'
import { playedDay } from './played-day'
import { RehearsalBar } from './rehearsal-bar'
import { RehearsalFeed } from './rehearsal-feed'

export interface RehearsalProps {
  readonly shootId: string
  readonly opening: SetOpening
  readonly facts: BoardFacts
  readonly units: UnitSystem
  readonly timeline: readonly EntryDocument[]
  readonly played: DayPlayed
  readonly hasLog: boolean
  readonly crewSeed: number
  readonly person: string | null
  readonly view: 'board' | 'desk'
}

const FIRST_SPEED = 30
/** It sounds and shakes here; the system's own notices are kept for days that are. */
const ALARM = {
  sound: ({ tone, channels }: Parameters<typeof DEVICE_ALARM.sound>[0]) => {
    if (channels.includes('sound')) DEVICE_ALARM.tones.play(tone)
    if (channels.includes('vibration')) DEVICE_ALARM.shake(tone)
  },
  notify: () => {},
  hush: () => DEVICE_ALARM.hush(),
}

/** The board, or the laptop's view, on a day that is played. */
export default function RehearsalHere(props: RehearsalProps) {
  const { facts, units, view } = props
  const feed = useRehearsal(props)
  if (!feed)
    return (
      <main id="main" className="set">
        <h1 className="next">{facts.title}</h1>
        <p className="do">
          {thereIsNoDay}{' '}
          <a className="textlink" href={`/shoots/${props.shootId}/day`}>
            {putRightOnDay}
          </a>
        </p>
      </main>
    )
  return (
    <div className={`rehearsal ${view}`}>
      <SetContext feed={feed} facts={facts} units={units}>
        <RehearsalBar {...props} feed={feed} />
        {view === 'desk' ? (
          <main id="main" className="page">
            <h1 className="sr-only">{rehearsalWords(facts.title)}</h1>
            <Desk lacks={null} day={null} />
          </main>
        ) : (
          <Board lacks={null} />
        )}
      </SetContext>
    </div>
  )
}

function useRehearsal({ timeline, opening, played, crewSeed, person, view }: RehearsalProps): RehearsalFeed | null {
  const make = () => {
    const day = playedDay(timeline)
    const seed = played === 'made-up' ? crewSeed : null
    // The laptop asks nobody: it shows everybody's day.
    const me = view === 'board' ? person : null
    return day && new RehearsalFeed(newDevice(), { day, opening, crewSeed: seed, person: me, speed: FIRST_SPEED })
  }
  const [feed, setFeed] = useState(make)
  // biome-ignore lint/correctness/useExhaustiveDependencies: it begins with what the page was opened with, and plays on by itself.
  useEffect(() => {
    const live = make()
    setFeed(live)
    if (!live) return
    const stops = [keepAwake(), DEVICE_ALARM.unlockOnTap(), standsWhileHidden(live)]
    live.start()
    return () => {
      live.stop()
      for (const stop of stops) stop()
    }
  }, [])
  return feed
}

const newDevice = () => ({
  clock: DEVICE_CLOCK,
  alarm: ALARM,
  forecaster: new WorkerForecaster(),
  chance: (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes)),
})

function standsWhileHidden(feed: RehearsalFeed): () => void {
  const look = () => document.visibilityState === 'hidden' && feed.pause(true)
  document.addEventListener('visibilitychange', look)
  return () => document.removeEventListener('visibilitychange', look)
}
