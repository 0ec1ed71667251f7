'use client'
import { useState } from 'react'
import { nextShot } from '@/lib/session/board-view'
import { agoWords } from '@/lib/session/board-words'
import {
  cameraRolls,
  cutAndItWas,
  fromClockWords,
  good,
  hold,
  noGood,
  noteWords,
  oneLess,
  oneMore,
  rollingSince,
  rollWords,
  slateWords,
  takeCut,
  takeNumber,
  takeWords,
  timecodeWords,
  wholeTakeAfterwards,
} from '../words/sheets'
import { CameraChoice } from './camera-choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { ShotPicker } from './shot-picker'
import { nextTake, rollingOn, slateOf, takeDraft } from './take-draft'
import { NO_TIMECODE, typedTimecode } from './typed-timecode'

const VERDICTS = [
  ['good', good],
  ['no-good', noGood],
  ['hold', hold],
] as const

/** Slate and take: rolled now and cut later, or told afterwards as a whole. */
export function TakeSheet({ close }: SheetProps) {
  const { session, facts, me, now, log, timecode: fromClock } = useSet()
  const mine = nextShot(session, facts, me, now)
  const [shot, setShot] = useState<string | null>(mine?.shot ?? null)
  const [camera, setCamera] = useState(mine?.camera ?? facts.cameras[0] ?? 'A')
  const [slate, setSlate] = useState<string | null>(null)
  const [number, setNumber] = useState<number | null>(null)
  const [text, setText] = useState('')
  const [note, setNote] = useState('')
  const rolling = shot === null ? null : rollingOn(session, shot, camera)
  const take = rolling?.take ?? number ?? nextTake(session, shot, camera)
  const board = rolling?.slate ?? slate ?? slateOf(facts, shot)
  const timecode = typedTimecode(text)
  const fault = text !== '' && timecode === null
  const tell = (more: { roll?: 'start' | 'end'; verdict?: 'good' | 'no-good' | 'hold' }, said: string) => {
    if (fault) return
    log(takeDraft(facts, shot, take, camera, { ...more, slate: board, timecode: timecode ?? '', note }), said)
    setNumber(null)
    close()
  }
  return (
    <Sheet
      title={rolling ? rollingSince(agoWords(rolling.from ?? now, now).replace(' ago', '')) : takeWords}
      close={close}
    >
      <ShotPicker value={shot} onChoose={setShot} />
      <CameraChoice value={camera} onChoose={setCamera} />
      <div className="pair">
        <label>
          {slateWords}
          <input value={board} maxLength={20} onChange={(event) => setSlate(event.target.value)} />
        </label>
        <TakeNumber take={take} choose={setNumber} />
      </div>
      <div className="pair">
        <label>
          {timecodeWords}
          <input
            value={text}
            inputMode="numeric"
            placeholder="16:05:12:10"
            aria-invalid={fault}
            onChange={(event) => setText(event.target.value)}
          />
          {fault && <span className="says">{NO_TIMECODE}</span>}
        </label>
        <button type="button" className="small-key" onClick={() => setText(fromClock(now))}>
          {fromClockWords}
        </button>
      </div>
      <label className="line">
        {noteWords}
        <input value={note} maxLength={600} onChange={(event) => setNote(event.target.value)} />
      </label>
      <div className="foot">
        {!rolling && (
          <div className="thumb">
            <button type="button" className="main" onClick={() => tell({ roll: 'start' }, cameraRolls(camera))}>
              {rollWords}
            </button>
          </div>
        )}
        <p className="told">{rolling ? cutAndItWas : wholeTakeAfterwards}</p>
        <div className="thumb three">
          {VERDICTS.map(([verdict, words]) => (
            <button
              key={verdict}
              type="button"
              className={rolling && verdict === 'good' ? 'main' : ''}
              onClick={() =>
                tell({ verdict, ...(rolling && { roll: 'end' as const }) }, takeCut(take, words.toLowerCase()))
              }
            >
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}

function TakeNumber({ take, choose }: { take: number; choose: (take: number) => void }) {
  return (
    <div>
      <span className="lab">{takeWords}</span>
      <div className="step">
        <button type="button" aria-label={oneLess} onClick={() => choose(Math.max(1, take - 1))}>
          −
        </button>
        <output aria-label={takeNumber}>{take}</output>
        <button type="button" aria-label={oneMore} onClick={() => choose(take + 1)}>
          +
        </button>
      </div>
    </div>
  )
}
