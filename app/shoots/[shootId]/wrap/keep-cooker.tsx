'use client'
import { useRouter } from 'next/navigation'
import { useId, useState, useTransition } from 'react'
import { send } from '../../../ui/send'
import { UndoLine } from '../../../ui/undo-line'
import { forgetThisCooker, isForgotten, keepItWhat, keepItWhy, keepWhatItTaught, keptAs } from '../../../words/wrap'

interface Known {
  readonly id: string
  readonly name: string
  readonly cooks: number
}
interface Props {
  readonly shootId: string
  readonly cook: string
  readonly named: string
  readonly names: readonly string[]
  readonly kept: Known | null
  readonly forgotten: Known | null
}

/** Keeps what was learnt under the cooker's name; forgets it, and takes that back. */
export function KeepCooker({ shootId, cook, named, names, kept, forgotten }: Props) {
  const router = useRouter()
  const [waiting, start] = useTransition()
  const [name, setName] = useState(named)
  const [fault, setFault] = useState('')
  const ids = { field: useId(), list: useId() }
  const ask = (path: string, body: Record<string, unknown>) =>
    start(async () => {
      const answer = await send(`/api/shoots/${shootId}/cookers${path}`, 'POST', body)
      setFault(answer.ok ? '' : answer.sentence)
      if (answer.ok) router.refresh()
    })
  const keep = () => ask('', { cook, name })
  const cooks = (n: number) => (n === 1 ? 'one cook' : `${n} cooks`)
  return (
    <div className="no-print">
      {kept && (
        <p className="mt-2">
          {keptAs(kept.name, cooks(kept.cooks))}{' '}
          <button
            type="button"
            className="textlink"
            disabled={waiting}
            onClick={() => ask(`/${kept.id}`, { forgotten: true })}
          >
            {forgetThisCooker}
          </button>
        </p>
      )}
      {!kept && (
        <UndoLine
          said={forgotten && isForgotten(forgotten.name, cooks(forgotten.cooks))}
          undo={() => ask(`/${forgotten?.id}`, { forgotten: false })}
          waiting={waiting}
        />
      )}
      {!kept && (
        <form
          onSubmit={(event) => {
            event.preventDefault()
            keep()
          }}
        >
          <div className={`field ${fault === '' ? '' : 'wrong'}`}>
            <label htmlFor={ids.field}>{keepItWhat}</label>
            <input
              id={ids.field}
              list={ids.list}
              value={name}
              maxLength={60}
              aria-invalid={fault !== ''}
              aria-describedby={fault === '' ? undefined : `${ids.field}-says`}
              onChange={(event) => setName(event.target.value)}
            />
            <datalist id={ids.list}>
              {names.map((one) => (
                <option key={one} value={one} />
              ))}
            </datalist>
            <span className="why">{keepItWhy}</span>
          </div>
          <button type="button" className="btn" disabled={waiting} onClick={keep}>
            {keepWhatItTaught}
          </button>
        </form>
      )}
      <p role="status" id={`${ids.field}-says`} className={fault === '' ? 'sr-only' : 'says'}>
        {fault}
      </p>
    </div>
  )
}
