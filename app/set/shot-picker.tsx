'use client'
import { allDuties, isOver } from '@/lib/session/board-view'
import { stateWords } from '@/lib/session/board-words'
import { none, shotWords } from '../words/sheets'
import { useSet } from './set-context'

/** Which shot: mine that are open first, then the crew's, then those that are done. */
export function ShotPicker({ value, onChoose }: { value: string | null; onChoose: (shot: string | null) => void }) {
  const { session, facts, me } = useSet()
  const shots = allDuties(session, facts, me).filter(({ shot }) => shot !== null)
  const rank = (duty: (typeof shots)[number]) => (isOver(duty) ? 2 : me !== null && duty.people.includes(me) ? 0 : 1)
  const sorted = [...shots].sort((a, b) => rank(a) - rank(b))
  return (
    <label className="line">
      {shotWords}
      <select value={value ?? ''} onChange={(event) => onChoose(event.target.value || null)}>
        <option value="">{none}</option>
        {sorted.map((duty) => (
          <option key={duty.id} value={duty.shot ?? ''}>
            {duty.number} {duty.title}, {stateWords(duty.state)}
          </option>
        ))}
      </select>
    </label>
  )
}
