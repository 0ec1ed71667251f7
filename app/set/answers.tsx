'use client'
import { useState } from 'react'
import type { Duty } from '@/lib/session/board-view'
import { HandOver } from './hand-over'
import { useSet } from './set-context'
import { nextTake, rollingOn, takeDraft } from './take-draft'

const SAID: Readonly<Record<string, string>> = {
  coming: 'You said: coming.',
  ready: 'You said: ready.',
  cannot: 'You said: cannot. Somebody else is looked for.',
  'hand-over': 'You handed it over.',
}

/** The two or three things a thumb does about the next call, now. */
export function Answers({ duty }: { duty: Duty }) {
  const { session } = useSet()
  const rolling = duty.shot !== null && duty.camera !== null ? rollingOn(session, duty.shot, duty.camera) : null
  if (rolling) return <Stop shot={duty.shot as string} camera={duty.camera as string} />
  if (duty.state !== 'standby' && duty.state !== 'roll') return null
  if (duty.camera !== null && (duty.state === 'roll' || duty.kind === 'shot')) return <Roll duty={duty} />
  return duty.kind === 'call' ? <CallAnswers call={duty.id} answered={duty.answered} /> : null
}

export function CallAnswers({ call, answered, done }: { call: string; answered: Duty['answered']; done?: () => void }) {
  const { log } = useSet()
  const [handing, setHanding] = useState(false)
  const answer = (word: 'coming' | 'ready') => {
    log({ kind: 'call-answer', call, answer: word }, `Told: ${word}.`)
    done?.()
  }
  return (
    <>
      {answered && <p className="told">{SAID[answered]}</p>}
      <div className="thumb three">
        <button type="button" className={answered === null ? 'main' : ''} onClick={() => answer('coming')}>
          Coming
        </button>
        <button type="button" className={answered === 'coming' ? 'main' : ''} onClick={() => answer('ready')}>
          Ready
        </button>
        <button type="button" onClick={() => setHanding(true)}>
          Cannot
        </button>
      </div>
      {handing && (
        <HandOver
          call={call}
          close={(told) => {
            setHanding(false)
            if (told) done?.()
          }}
        />
      )}
    </>
  )
}

function Roll({ duty }: { duty: Duty }) {
  const { session, facts, log } = useSet()
  const shot = duty.shot as string
  const camera = duty.camera as string
  const start = () =>
    log(takeDraft(facts, shot, nextTake(session, shot, camera), camera, { roll: 'start' }), `Camera ${camera} rolls.`)
  return (
    <div className="thumb two">
      <button type="button" className="main" onClick={start}>
        Rolling
      </button>
      <button type="button" onClick={() => log({ kind: 'shot-state', shot, state: 'caught' }, `Done: ${duty.title}.`)}>
        Shot done
      </button>
    </div>
  )
}

const VERDICTS = [
  ['good', 'Cut, good'],
  ['no-good', 'Cut, no good'],
  ['hold', 'Cut, hold'],
] as const
function Stop({ shot, camera }: { shot: string; camera: string }) {
  const { session, facts, log } = useSet()
  const take = rollingOn(session, shot, camera)
  if (!take) return null
  return (
    <div className="thumb three">
      {VERDICTS.map(([verdict, name]) => (
        <button
          key={verdict}
          type="button"
          className={verdict === 'good' ? 'main' : ''}
          onClick={() =>
            log(
              takeDraft(facts, shot, take.take, camera, { roll: 'end', verdict, slate: take.slate }),
              `Take ${take.take}: ${name.replace('Cut, ', '')}.`,
            )
          }
        >
          {name}
        </button>
      ))}
    </div>
  )
}
