'use client'
import { type ReactNode, useState } from 'react'
import type { BoardFacts } from '@/lib/session/board-facts'
import { type Duty, dutiesOf } from '@/lib/session/board-view'
import type { Session } from '@/lib/session/session'
import { type Instant, instant, type UnitSystem } from '@/lib/units'
import { AlertBand } from '../set/alert-band'
import { CallAnswers } from '../set/answers'
import { Count } from '../set/count'
import { Keypad } from '../set/keypad'
import { LinkLine, LinkMark } from '../set/link-line'
import { NextPage, StateMark } from '../set/next-page'
import { SetContext } from '../set/set-context'
import type { SetOpening, SetSnapshot } from '../set/set-feed'
import { WaitLine } from '../set/wait-line'
import * as words from '../words/components'
import { Part } from './part'
import { stillAt, stillFeed, stillSession } from './still-feed'

interface BoardPartsProps {
  readonly opening: SetOpening
  readonly facts: BoardFacts
  readonly units: UnitSystem
}
const MIN = 60_000
const LATER_MIN = [0, 7, 43, 84]
const LINKS: readonly Partial<SetSnapshot>[] = [
  {},
  { waiting: 2 },
  { link: 'catching-up', waiting: 3 },
  { link: 'cut-off', waiting: 6, forecastBy: 'this device' },
  { link: 'cut-off', waiting: 6, held: words.held },
  { merged: [words.refused] },
]
const STATES: readonly Duty['state'][] = ['ahead', 'standby', 'roll', 'caught', 'missed', 'dropped', 'over']

/** The set board's parts, each in a frame as wide as a phone. */
export function BoardParts({ opening, facts, units }: BoardPartsProps) {
  const [made] = useState(() => {
    const likely = facts.cooks.flatMap(({ windows }) => windows['first-slice']?.likely ?? [])
    const session = stillSession(opening, stillAt(opening, likely))
    return { session, me: facts.people[0]?.id ?? null }
  })
  const { session, me } = made
  const [feeds] = useState(() => LINKS.map((state) => stillFeed(session, me, state)))
  const shared = { facts, units }
  const first = feeds[0] as (typeof feeds)[number]
  return (
    <>
      <Part name={words.groups.next}>
        <Phone>
          <SetContext {...shared} feed={first}>
            <NextPage open={() => {}} within />
          </SetContext>
        </Phone>
      </Part>
      <Part name={words.groups.link}>
        {feeds.map((feed, i) => (
          <Phone key={JSON.stringify(LINKS[i])}>
            <SetContext {...shared} feed={feed}>
              <header className="bar">
                <span />
                <LinkMark />
              </header>
              <LinkLine lacks={null} />
            </SetContext>
          </Phone>
        ))}
      </Part>
      <Counts session={session} facts={facts} me={me} />
      <Part name={words.groups.thumbs}>
        <Phone>
          <SetContext {...shared} feed={first}>
            {([null, 'coming', 'ready', 'cannot'] as const).map((answered) => (
              <CallAnswers key={answered} call={session.day.calls[0]?.id ?? ''} answered={answered} />
            ))}
            <Keypad onPress={() => {}} onSave={() => {}} save="save" />
          </SetContext>
        </Phone>
      </Part>
      <Alerts {...shared} session={session} me={me} />
    </>
  )
}

const Phone = ({ children }: { children: ReactNode }) => (
  <div className="phone">
    <div className="set">{children}</div>
  </div>
)

interface StillProps {
  readonly session: Session
  readonly facts: BoardFacts
  readonly me: string | null
}
function Counts({ session, facts, me }: StillProps) {
  const { now } = session
  const after = (min: number): Instant => instant(now + min * MIN)
  const duty = me === null ? undefined : dutiesOf(session, facts, me).find(({ moment }) => moment?.window.likely)
  const clock = (at: Instant) => new Date(at).toISOString().slice(11, 16)
  return (
    <>
      <Part name={words.groups.states}>
        <p className="in-line">
          {STATES.map((state) => (
            <StateMark key={state} state={state} />
          ))}
          <StateMark state="ahead" lapsed />
        </p>
      </Part>
      <Part name={words.groups.count}>
        <Phone>
          {LATER_MIN.map((min) => (
            <Count key={min} at={after(min)} now={now} />
          ))}
          {duty?.moment && <WaitLine now={now} standby={duty.standby} window={duty.moment.window} clock={clock} />}
        </Phone>
      </Part>
    </>
  )
}

/** Silent while a take rolls: the session that says so is made by hand. */
function Alerts({ session, facts, me, units }: StillProps & { units: UnitSystem }) {
  const [feeds] = useState(() => {
    const to = me === null ? [] : [me]
    const alert = {
      key: 'still',
      event: 'still',
      do: 'sound-alert',
      tone: 'roll',
      owner: me ?? '',
      to,
      channels: ['screen'],
      action: words.alertAction,
      deadline: instant(session.now + 7 * MIN),
      call: 'still',
    } as const
    const take = { shot: null, rolling: true } as unknown as Session['told']['takes'][number]
    const rolls = { ...session, told: { ...session.told, takes: [take] } }
    return [session, rolls].map((one) => stillFeed(one, me, { sounding: alert }))
  })
  return (
    <Part name={words.groups.alert}>
      {feeds.map((feed, i) => (
        <div className="phone tall" key={i === 0 ? 'sound' : 'silent'}>
          <SetContext facts={facts} units={units} feed={feed}>
            <div className="set">
              <AlertBand />
            </div>
          </SetContext>
        </div>
      ))}
    </Part>
  )
}
