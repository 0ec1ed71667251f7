'use client'
import { type Duty, dutiesOf, isLapsed, isOver } from '@/lib/session/board-view'
import { doWords } from '@/lib/session/board-words'
import { about, myCalls, nothingIsPlannedForYou, overWords } from '../words/set'
import { StateMark } from './next-page'
import { useSet } from './set-context'

/** All that this person is needed for, in order; what is over stays in sight. */
export function CallsPage() {
  const { session, facts, me, now } = useSet()
  const duties = me === null ? [] : dutiesOf(session, facts, me)
  const open = duties.filter((duty) => !isOver(duty))
  const over = duties.filter(isOver)
  return (
    <section aria-label={myCalls}>
      <h1 className="page-title">{myCalls}</h1>
      {duties.length === 0 && <p className="do">{nothingIsPlannedForYou}</p>}
      <ol className="duties">
        {open.map((duty) => (
          <DutyRow key={duty.id} duty={duty} past={duty.sort < now && duty.state === 'ahead'} />
        ))}
      </ol>
      {over.length > 0 && (
        <>
          <h2 className="page-sub">{overWords}</h2>
          <ol className="duties">
            {over.map((duty) => (
              <DutyRow key={duty.id} duty={duty} past />
            ))}
          </ol>
        </>
      )}
    </section>
  )
}

function DutyRow({ duty, past }: { duty: Duty; past: boolean }) {
  const { clock, units, now } = useSet()
  const lapsed = !isOver(duty) && isLapsed(duty, now)
  return (
    <li className={`${duty.kind === 'call' ? 'once' : ''} ${past ? 'past' : ''}`}>
      <span className="time">{clock(duty.sort)}</span>
      <span>
        <b>{duty.title}</b> <StateMark state={duty.state} lapsed={lapsed} />
        {!isOver(duty) && !lapsed && duty.kind !== 'task' && <small>{doWords(duty, units)}</small>}
        {duty.moment?.window.likely && !isOver(duty) && (
          <small>{about(duty.moment.name, clock(duty.moment.window.likely))}</small>
        )}
      </span>
    </li>
  )
}
