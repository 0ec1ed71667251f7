'use client'
import type { Layout } from '@/lib/day/layout'
import type { ShootDocument } from '@/lib/plan/shoot'
import { withMoves } from '@/lib/session/announced-layout'
import type { PlannedMove } from '@/lib/session/compare-plans'
import { movesOf } from '@/lib/session/re-planned'
import { formatDuration, type Instant, instant, seconds } from '@/lib/units'
import { useSet } from './set-context'
import { useRePlan } from './use-re-plan'

export interface PlannedDay {
  readonly version: number
  readonly document: ShootDocument
  readonly layout: Layout
}

/** The rest of the day anew: every move is shown before anybody is told. */
export function RePlan({ day }: { day: PlannedDay }) {
  const { session, facts, feed, log } = useSet()
  const { answer, working, ask, forget } = useRePlan()
  const { document, layout, version } = day
  const send = (moves: readonly PlannedMove[]) => {
    const places = moves.flatMap(({ id, place }) => (place ? [{ id, ...place }] : []))
    log({ kind: 'plan-change', version, what: wordsOf(moves), moves: places }, 'Sent to the crew.')
    for (const { id, to, title } of moves)
      if (to === null && id.startsWith('shot-'))
        log({ kind: 'shot-state', shot: id.slice(5), state: 'dropped', why: 're-plan' }, `Dropped: ${title}.`)
    forget()
  }
  const asked = {
    document,
    layout: withMoves(layout, movesOf(session.told), facts.zone),
    told: session.told,
    now: feed.now(),
  }
  return (
    <section aria-label="Re-plan">
      <h2>The rest of the day</h2>
      <button type="button" className="btn" disabled={working} onClick={() => ask(asked)}>
        {working ? 'Laying out the rest of the day' : 'Re-plan from now'}
      </button>
      <div role="status">
        {answer && !answer.ok && <p className="says">{answer.sentence}</p>}
        {answer?.ok && answer.moves.length === 0 && <p className="mt-2">Nothing needs to move.</p>}
      </div>
      {answer?.ok && answer.moves.length > 0 && <Moves moves={answer.moves} send={send} leave={forget} />}
    </section>
  )
}

const LONGEST = 600
function wordsOf(moves: readonly PlannedMove[]): string {
  const words = moves.map(({ title, from, to }) => {
    if (to === null) return `${title} dropped`
    return from === null ? `${title} is new` : `${title} ${shiftWords(from, to)}`
  })
  const all = words.join('; ')
  return all.length <= LONGEST ? all : `${moves.length} moves: ${all.slice(0, LONGEST - 20)} …`
}
function shiftWords(from: Instant, to: Instant): string {
  const by = (to - from) / 1000
  if (Math.abs(by) < 30) return 'with other people'
  return `${formatDuration(seconds(Math.abs(by)))} ${by > 0 ? 'later' : 'sooner'}`
}

interface MovesProps {
  readonly moves: readonly PlannedMove[]
  readonly send: (moves: readonly PlannedMove[]) => void
  readonly leave: () => void
}
function Moves({ moves, send, leave }: MovesProps) {
  const { clock, nameOf } = useSet()
  const at = (time: Instant | null) => (time === null ? '–' : clock(instant(time)))
  const people = new Set(moves.flatMap((move) => move.people))
  return (
    <>
      <div className="scroll-x mt-4">
        <table>
          <thead>
            <tr>
              <th scope="col">what</th>
              <th scope="col">was</th>
              <th scope="col">would be</th>
              <th scope="col">moves</th>
              <th scope="col">who must know</th>
            </tr>
          </thead>
          <tbody>
            {moves.map((move) => (
              <tr key={move.id} className={move.to === null ? 'drop' : move.byMoment ? 'moment' : 'free'}>
                <td className="struck">{move.title}</td>
                <td className="time">{at(move.from)}</td>
                <td className="time">{at(move.to)}</td>
                <td>
                  {move.to === null ? 'dropped' : move.from === null ? 'new' : shiftWords(move.from, move.to)}
                  {move.to !== null && move.byMoment && ', by its moment'}
                </td>
                <td>{move.people.map(nameOf).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="mt-4 flex flex-wrap gap-4">
        <button type="button" className="btn main" onClick={() => send(moves)}>
          {people.size === 1 ? 'Send to one person' : `Send to ${people.size} people`}
        </button>
        <button type="button" className="btn quiet" onClick={leave}>
          Leave it as it is
        </button>
      </p>
    </>
  )
}
