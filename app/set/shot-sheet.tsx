'use client'
import { useState } from 'react'
import { nextShot } from '@/lib/session/board-view'
import {
  chooseShotFirst,
  dropped,
  missed,
  sayInFewWordsWhy,
  shotDone,
  stillToDo,
  theShot,
  whyIf,
} from '../words/sheets'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { ShotPicker } from './shot-picker'

const STATES = [
  ['caught', shotDone],
  ['dropped', dropped],
  ['missed', missed],
  ['standby', stillToDo],
] as const

/** What became of a shot. */
export function ShotSheet({ close }: SheetProps) {
  const { session, facts, me, now, log } = useSet()
  const mine = nextShot(session, facts, me, now)
  const [shot, setShot] = useState<string | null>(mine?.shot ?? null)
  const [why, setWhy] = useState('')
  const [fault, setFault] = useState('')
  const say = (state: (typeof STATES)[number][0], words: string) => {
    if (shot === null) return setFault(chooseShotFirst)
    if (state === 'dropped' && why.trim() === '') return setFault(sayInFewWordsWhy)
    const title = facts.shots[shot]?.title ?? shot
    log({ kind: 'shot-state', shot, state, ...(why.trim() && { why: why.trim() }) }, `${words}: ${title}.`)
    close()
  }
  return (
    <Sheet title={theShot} close={close}>
      <ShotPicker value={shot} onChoose={setShot} />
      <label className="line">
        {whyIf}
        <input value={why} maxLength={300} onChange={(event) => setWhy(event.target.value)} />
      </label>
      <p className="told" role="alert">
        {fault}
      </p>
      <div className="foot">
        <div className="thumb two">
          {STATES.map(([state, words]) => (
            <button
              key={state}
              type="button"
              className={state === 'caught' ? 'main' : ''}
              onClick={() => say(state, words)}
            >
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
