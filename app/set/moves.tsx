'use client'
import type { PlannedMove } from '@/lib/session/compare-plans'
import type { TriedOnSet } from '@/lib/session/what-if-on-set'
import { type Instant, instant } from '@/lib/units'
import { Sideways } from '../ui/sideways'
import { shiftWords } from './move-words'
import { useSet } from './set-context'

interface MovesProps {
  readonly moves: readonly PlannedMove[]
  readonly tried: TriedOnSet | null
  readonly send: () => void
  readonly leave: () => void
}

/** Every move, and whom it concerns, before it is sent. */
export function Moves({ moves, tried, send, leave }: MovesProps) {
  const people = new Set(moves.flatMap((move) => move.people))
  const count = people.size === 1 ? 'one person' : `${people.size} people`
  const words = moves.length > 0 ? `${tried ? 'Do it, and send' : 'Send'} to ${count}` : 'Do it'
  return (
    <>
      {moves.length > 0 && <MovesTable moves={moves} />}
      <p className="mt-4 flex flex-wrap gap-4">
        <button type="button" className="btn main" onClick={send}>
          {words}
        </button>
        <button type="button" className="btn quiet" onClick={leave}>
          Leave it as it is
        </button>
      </p>
    </>
  )
}

function MovesTable({ moves }: { readonly moves: readonly PlannedMove[] }) {
  const { clock, nameOf } = useSet()
  const at = (time: Instant | null) => (time === null ? '–' : clock(instant(time)))
  return (
    <Sideways of="What would move" className="mt-4">
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
    </Sideways>
  )
}
