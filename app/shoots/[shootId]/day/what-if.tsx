'use client'
import { useState } from 'react'
import { valueAt } from '@/lib/plan/edit'
import { burnsSolidFuel } from '@/lib/plan/moments'
import type { ShootDocument } from '@/lib/plan/shoot'
import { send } from '../../../ui/send'
import { Working } from '../../../ui/working'
import { adopt, dayHasChanged, leaveIt, whatIfSummary } from '../../../words/day'
import { lastsHere, triedDay } from '../../../words/working'
import { WHAT_IFS, type WhatIfAnswer, type WhatIfId } from '../../what-ifs'

interface WhatIfProps {
  readonly document: ShootDocument
  readonly act: (words: string, next: ShootDocument) => void
}
type Told = { readonly id: WhatIfId; readonly answer: WhatIfAnswer; readonly of: ShootDocument }

/** Late crew, weather, hold: each beside today's plan, to adopt or drop. */
export function WhatIf({ document, act }: WhatIfProps) {
  const [told, setTold] = useState<readonly Told[]>([])
  const [waiting, setWaiting] = useState<WhatIfId | null>(null)
  const [fault, setFault] = useState('')
  const fire = burnsSolidFuel(String(valueAt(document, '/cooks/0/cooker/kind')))
  const drop = (id: WhatIfId) => setTold((all) => all.filter((each) => each.id !== id))
  async function ask(id: WhatIfId) {
    setWaiting(id)
    setFault('')
    const answer = await send<WhatIfAnswer>('/api/what-if', 'POST', { document, change: id })
    setWaiting(null)
    setFault(answer.ok ? '' : (answer.problems[0]?.sentence ?? answer.sentence))
    if (answer.ok)
      setTold((all) => [...all.filter((each) => each.id !== id), { id, answer: answer.value, of: document }])
  }
  return (
    <details className="mt-4">
      <summary>{whatIfSummary}</summary>
      <p className="flex flex-wrap gap-3 py-2">
        {WHAT_IFS.filter(([id]) => fire || id !== 'hold-cooker').map(([id, words]) => (
          <button key={id} type="button" className="btn" disabled={waiting !== null} onClick={() => ask(id)}>
            {words}
          </button>
        ))}
      </p>
      <Working what={waiting && triedDay} lasts={lastsHere} />
      <p role="alert">{fault && <span className="says">{fault}</span>}</p>
      {told.map(({ id, answer, of }) => (
        <div className="conflict" key={id}>
          <h3>{answer.title}</h3>
          <ul>
            {answer.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {of !== document && <p className="small">{dayHasChanged}</p>}
          <p className="mt-2 flex gap-4">
            {answer.document && of === document && (
              <button
                type="button"
                className="btn"
                onClick={() => {
                  drop(id)
                  act(`${answer.title}: this is the plan now.`, answer.document as ShootDocument)
                }}
              >
                {adopt}
              </button>
            )}
            <button type="button" className="btn quiet" onClick={() => drop(id)}>
              {leaveIt}
            </button>
          </p>
        </div>
      ))}
    </details>
  )
}
