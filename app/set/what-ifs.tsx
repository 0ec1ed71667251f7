'use client'
import { useId, useState } from 'react'
import type { CookSet } from '@/lib/session/adopted'
import { type TriedOnSet, whatIfsOnSet } from '@/lib/session/what-if-on-set'
import { showWhatItWouldDo, whatIf } from '../words/desk'
import { useSet } from './set-context'

interface WhatIfsProps {
  readonly sets: readonly CookSet[]
  readonly working: boolean
  readonly ask: (tried: TriedOnSet) => void
}

/** What a change of the cook would do to the rest of the day. */
export function WhatIfs({ sets, working, ask }: WhatIfsProps) {
  const { session, units } = useSet()
  const id = useId()
  const [chosen, setChosen] = useState(0)
  const all = whatIfsOnSet(sets, session.told, units)
  const tried = all[Math.min(chosen, all.length - 1)]
  if (!tried) return null
  return (
    <div className="desk-try">
      <label htmlFor={id}>{whatIf}</label>
      <select id={id} value={Math.min(chosen, all.length - 1)} onChange={(e) => setChosen(Number(e.target.value))}>
        {all.map(({ title }, i) => (
          <option key={title} value={i}>
            {title}
          </option>
        ))}
      </select>
      <button type="button" className="btn quiet" disabled={working} onClick={() => ask(tried)}>
        {showWhatItWouldDo}
      </button>
    </div>
  )
}
