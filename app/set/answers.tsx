'use client'
import { useState } from 'react'
import type { BoardFacts } from '@/lib/session/board-facts'
import { allDuties, type Duty } from '@/lib/session/board-view'
import type { Session } from '@/lib/session/session'
import {
  cameraRolls,
  cannotWords,
  comingWords,
  cutGood,
  cutHold,
  cutNoGood,
  doneWords,
  good,
  hold,
  noGood,
  readyWords,
  rollingWords,
  shotDone,
  takeWords,
  toldWords,
  youHandedItOver,
  youSaidCannot,
  youSaidComing,
  youSaidReady,
} from '../words/set'
import { HandOver } from './hand-over'
import { useSet } from './set-context'
import { nextTake, rollingOn, takeDraft } from './take-draft'

const SAID: Readonly<Record<string, string>> = {
  coming: youSaidComing,
  ready: youSaidReady,
  cannot: youSaidCannot,
  'hand-over': youHandedItOver,
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

/** To "Roll", coming is no answer any more: a camera rolls, everybody else is ready. */
export function AlertAnswers({ call }: { call: string }) {
  const { session, facts, me } = useSet()
  const duty = allDuties(session, facts, me).find(({ id }) => id === call)
  return duty?.state === 'roll' ? <RollAnswers duty={duty} /> : <CallAnswers call={call} answered={null} />
}

function RollAnswers({ duty }: { duty: Duty }) {
  const { session, facts, log } = useSet()
  const [handing, setHanding] = useState(false)
  const ready = () => log({ kind: 'call-answer', call: duty.id, answer: 'ready' }, toldWords('ready'))
  const rolls = duty.shot !== null && duty.camera !== null && startOf(session, facts, duty.shot, duty.camera)
  return (
    <>
      <div className="thumb two">
        <button type="button" className="main" onClick={rolls ? () => log(...rolls) : ready}>
          {rolls ? rollingWords : readyWords}
        </button>
        <button type="button" onClick={() => setHanding(true)}>
          {cannotWords}
        </button>
      </div>
      {handing && <HandOver call={duty.id} close={() => setHanding(false)} />}
    </>
  )
}

/** A take begins: what is logged, and the line that tells it. */
const startOf = (session: Session, facts: BoardFacts, shot: string, camera: string) =>
  [takeDraft(facts, shot, nextTake(session, shot, camera), camera, { roll: 'start' }), cameraRolls(camera)] as const

export function CallAnswers({ call, answered, done }: { call: string; answered: Duty['answered']; done?: () => void }) {
  const { log } = useSet()
  const [handing, setHanding] = useState(false)
  const answer = (word: 'coming' | 'ready') => {
    log({ kind: 'call-answer', call, answer: word }, toldWords(word))
    done?.()
  }
  return (
    <>
      {answered && <p className="told">{SAID[answered]}</p>}
      <div className="thumb three">
        <button type="button" className={answered === null ? 'main' : ''} onClick={() => answer('coming')}>
          {comingWords}
        </button>
        <button type="button" className={answered === 'coming' ? 'main' : ''} onClick={() => answer('ready')}>
          {readyWords}
        </button>
        <button type="button" onClick={() => setHanding(true)}>
          {cannotWords}
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
  return (
    <div className="thumb two">
      <button type="button" className="main" onClick={() => log(...startOf(session, facts, shot, camera))}>
        {rollingWords}
      </button>
      <button type="button" onClick={() => log({ kind: 'shot-state', shot, state: 'caught' }, doneWords(duty.title))}>
        {shotDone}
      </button>
    </div>
  )
}

const VERDICTS = [
  ['good', cutGood, good],
  ['no-good', cutNoGood, noGood],
  ['hold', cutHold, hold],
] as const
function Stop({ shot, camera }: { shot: string; camera: string }) {
  const { session, facts, log } = useSet()
  const take = rollingOn(session, shot, camera)
  if (!take) return null
  return (
    <div className="thumb three">
      {VERDICTS.map(([verdict, name, short]) => (
        <button
          key={verdict}
          type="button"
          className={verdict === 'good' ? 'main' : ''}
          onClick={() =>
            log(
              takeDraft(facts, shot, take.take, camera, { roll: 'end', verdict, slate: take.slate }),
              takeWords(take.take, short),
            )
          }
        >
          {name}
        </button>
      ))}
    </div>
  )
}
