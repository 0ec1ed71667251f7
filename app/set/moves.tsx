'use client'
import type { PlannedMove } from '@/lib/session/compare-plans'
import type { TriedOnSet } from '@/lib/session/what-if-on-set'
import { type Instant, instant } from '@/lib/units'
import { Sideways } from '../ui/sideways'
import {
  byItsMoment,
  doIt,
  doItAndSend,
  dropped,
  leaveIt,
  movesWords,
  newWords,
  sendWords,
  was,
  what,
  whatWouldMove,
  whoMustKnow,
  wouldBe,
} from '../words/desk'
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
  const words = moves.length > 0 ? `${tried ? doItAndSend : sendWords} to ${count}` : doIt
  return (
    <>
      {moves.length > 0 && <MovesTable moves={moves} />}
      <p className="mt-4 flex flex-wrap gap-4">
        <button type="button" className="btn main" onClick={send}>
          {words}
        </button>
        <button type="button" className="btn quiet" onClick={leave}>
          {leaveIt}
        </button>
      </p>
    </>
  )
}

function MovesTable({ moves }: { readonly moves: readonly PlannedMove[] }) {
  const { clock, nameOf } = useSet()
  const at = (time: Instant | null) => (time === null ? '–' : clock(instant(time)))
  return (
    <Sideways of={whatWouldMove} className="mt-4">
      <table>
        <thead>
          <tr>
            <th scope="col">{what}</th>
            <th scope="col">{was}</th>
            <th scope="col">{wouldBe}</th>
            <th scope="col">{movesWords}</th>
            <th scope="col">{whoMustKnow}</th>
          </tr>
        </thead>
        <tbody>
          {moves.map((move) => (
            <tr key={move.id} className={move.to === null ? 'drop' : move.byMoment ? 'moment' : 'free'}>
              <td className="struck">{move.title}</td>
              <td className="time">{at(move.from)}</td>
              <td className="time">{at(move.to)}</td>
              <td>
                {move.to === null ? dropped : move.from === null ? newWords : shiftWords(move.from, move.to)}
                {move.to !== null && move.byMoment && byItsMoment}
              </td>
              <td>{move.people.map(nameOf).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}
