'use client'
import { lazy, Suspense } from 'react'
import { allDuties, type Duty, isLapsed, isOver } from '@/lib/session/board-view'
import { answersTo } from '@/lib/session/calls'
import { Sideways } from '../ui/sideways'
import {
  blackOnWhite,
  calls,
  from,
  momentWords,
  noCalls,
  noLiveForecastYetTimes,
  rehearsalWords,
  stateWords,
  what,
  whiteOnBlack,
  who,
} from '../words/desk'
import { DeskAlerts, DeskFood, DeskProbes } from './desk-state'
import { LinkLine } from './link-line'
import { LogPage } from './log-page'
import { StateMark } from './next-page'
import { type PlannedDay, RePlan } from './re-plan'
import { useSet } from './set-context'
import { useGround } from './use-ground'

/** Fetched beside the rest: the calls stand first. */
const LiveLine = lazy(() => import('./live-line').then((of) => ({ default: of.LiveLine })))

const LINKS = { live: 'live', 'catching-up': 'catching up', 'cut-off': 'no signal' } as const

/** The laptop's view: everything at once. Without `day` nothing is planned anew: a rehearsal sends nothing. */
export function Desk({ lacks, day }: { lacks: string | null; day: PlannedDay | null }) {
  const { session, facts, now, clock, snapshot } = useSet()
  const { dusk, turn } = useGround()
  return (
    <div className="desk">
      <div className="desk-bar">
        <b className="time">{clock(now)}</b>
        <span>{snapshot.rehearsal ? rehearsalWords : LINKS[snapshot.link]}</span>
        <span>{session.forecast?.reason ?? noLiveForecastYetTimes}</span>
        <button type="button" className="textlink" onClick={turn}>
          {dusk ? blackOnWhite : whiteOnBlack}
        </button>
      </div>
      <LinkLine lacks={lacks} />
      {session.day.cooks.map(({ id }) => (
        <figure key={id} className="m-0">
          <figcaption className="sr-only">{id}</figcaption>
          <Suspense fallback={<div className="line-place" />}>
            <LiveLine cook={id} on="desk" />
          </Suspense>
        </figure>
      ))}
      <div className="desk-cols">
        <div className="desk-calls">
          {day && <RePlan day={day} />}
          <section aria-label={calls}>
            <h2>{calls}</h2>
            <Calls duties={allDuties(session, facts, null)} />
          </section>
        </div>
        <div>
          <DeskAlerts />
          <DeskProbes />
          <DeskFood />
        </div>
        <div className="desk-log">
          <LogPage title="h2" />
        </div>
      </div>
    </div>
  )
}

function Calls({ duties }: { duties: readonly Duty[] }) {
  const { session, clock, now, nameOf } = useSet()
  const answers = (duty: Duty) =>
    duty.people.map((id) => {
      const said = answersTo(session, duty.id).findLast(({ person }) => person === id)?.answer
      return said ? `${nameOf(id)} (${said.replace('-', ' ')})` : nameOf(id)
    })
  if (duties.length === 0) return <p>{noCalls}</p>
  return (
    <Sideways of="Calls">
      <table className="stacks trade">
        <thead>
          <tr>
            <th scope="col">{from}</th>
            <th scope="col" className="w-2/5">
              {what}
            </th>
            <th scope="col">{stateWords}</th>
            <th scope="col">{momentWords}</th>
            <th scope="col">{who}</th>
          </tr>
        </thead>
        <tbody>
          {duties.map((duty) => (
            <tr key={duty.id} className={duty.kind === 'call' ? 'moment' : 'free'}>
              <td className="time">{clock(duty.standby ?? duty.sort)}</td>
              <td>
                {duty.number} {duty.title}
              </td>
              <td>
                <StateMark state={duty.state} lapsed={!isOver(duty) && isLapsed(duty, now)} />
              </td>
              <td data-label={momentWords}>
                {duty.moment?.window.likely ? `${duty.moment.name} ${clock(duty.moment.window.likely)}` : ''}
              </td>
              <td data-label={who}>{answers(duty).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}
