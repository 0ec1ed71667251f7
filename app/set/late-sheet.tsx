'use client'
import { useState } from 'react'
import { lateBy, minWords, toldLateByMin, wholeCrew } from '../words/sheets'
import { Choice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

const MINUTES = [5, 10, 15, 20, 25, 30, 45, 60, 90] as const

/** Late by so much: one person, or everybody. */
export function LateSheet({ close }: SheetProps) {
  const { facts, me, nameOf, log } = useSet()
  const [who, setWho] = useState(me ?? '')
  const options = [
    ...(me === null ? [] : ([[me, 'I']] as const)),
    ['', wholeCrew] as const,
    ...facts.people.filter(({ id }) => id !== me).map(({ id, name }) => [id, name] as const),
  ]
  const say = (min: number) => {
    const name = who === '' ? 'the whole crew' : who === me ? 'you' : nameOf(who)
    log({ kind: 'late', for: `${min} min`, ...(who && { who }) }, toldLateByMin(name, min))
    close()
  }
  return (
    <Sheet title={lateBy} close={close}>
      <Choice name="Who" value={who} options={options} onChoose={setWho} />
      <div className="foot">
        <div className="thumb three">
          {MINUTES.map((min) => (
            <button key={min} type="button" onClick={() => say(min)}>
              {minWords(min)}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
