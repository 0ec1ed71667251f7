'use client'
import { continuityOf, type Note, type ShotNotes } from '@/lib/session/continuity'
import {
  continuity,
  continuityLead,
  doneWords,
  everyShotIsDone,
  nothingNotedOfIt,
  nothingNotedYet,
  ofNoShot,
  roastLookedLast,
  stillToShoot,
  toBoard,
} from '../../words/photos'
import { LinkLine } from '../link-line'
import { LiveSet, type LiveSetProps } from '../live-set'
import { useSet } from '../set-context'
import { useGround } from '../use-ground'
import { Photo } from './photo'

export const LiveContinuity = (props: LiveSetProps) => (
  <LiveSet {...props} inPage>
    <ContinuityNotes shootId={props.shootId} />
  </LiveSet>
)

/** How it looked: notes and photographs by shot. */
function ContinuityNotes({ shootId }: { shootId: string }) {
  const { session, facts } = useSet()
  useGround()
  const { shots, other } = continuityOf(session, facts)
  const [ahead, done] = [shots.filter(({ isOver }) => !isOver), shots.filter(({ isOver }) => isOver)]
  return (
    <div className="continuity">
      <LinkLine lacks={null} />
      <h1>{continuity}</h1>
      <p className="small">
        {continuityLead}{' '}
        <a className="board-link" href={`/shoots/${shootId}/set`}>
          {toBoard}
        </a>
      </p>
      <Shots title={stillToShoot} shots={ahead} none={everyShotIsDone} />
      <Shots title={doneWords} shots={done} none={nothingNotedOfIt} />
      {other.length > 0 && (
        <section>
          <h2>{ofNoShot}</h2>
          <Notes notes={other} />
        </section>
      )}
    </div>
  )
}

function Shots({ title, shots, none }: { title: string; shots: readonly ShotNotes[]; none: string }) {
  const { clock } = useSet()
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      {shots.length === 0 && <p className="small">{none}</p>}
      {shots.map((shot) => (
        <div key={shot.shot}>
          <h3>
            <span className="time">{clock(shot.at)}</span> {shot.number} {shot.title}
            {shot.food && `, ${shot.food}`}
          </h3>
          <Notes notes={shot.notes} />
          {shot.notes.length === 0 && (
            <p className="small">{shot.before.length > 0 ? roastLookedLast : nothingNotedYet}</p>
          )}
          <Notes notes={shot.before} />
        </div>
      ))}
    </section>
  )
}

function Notes({ notes }: { notes: readonly Note[] }) {
  const { clock, nameOf, facts } = useSet()
  if (notes.length === 0) return null
  return (
    <ul className="seen">
      {notes.map(({ entry, at }) => (
        <li key={entry.id}>
          {entry.photo && <Photo name={entry.photo} words={entry.text} />}
          <span className="time">{clock(at)}</span> {entry.text}
          <small>
            {[
              entry.shot && (facts.shots[entry.shot]?.title ?? entry.shot),
              entry.cook,
              entry.state,
              entry.by.person ? nameOf(entry.by.person) : entry.by.device,
            ]
              .filter(Boolean)
              .join(', ')}
          </small>
        </li>
      ))}
    </ul>
  )
}
