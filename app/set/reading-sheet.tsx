'use client'
import { useEffect, useState } from 'react'
import { jumpQuestion } from '@/lib/log/jump'
import { agoWords } from '@/lib/session/board-words'
import { formatTemp } from '@/lib/units'
import {
  itIsRight,
  lastWas,
  loggedReading,
  movedOutWrong,
  nothingReadHereYet,
  reading,
  saveKey,
  typeWhatProbeReads,
} from '../words/sheets'
import { Choice, CookChoice } from './choice'
import { expectedRead } from './expected-read'
import { Keypad } from './keypad'
import { lastHere, probeOf, sensorName, sensorsOf } from './probes'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { faultOf, NOTHING, press, type Typed, tempDocument, typedTemp, typedText, unitOf } from './typed-temp'
import { useKeptCook } from './use-kept-cook'
import { useKept } from './use-set'

const KEYS: Readonly<Record<string, string>> = { Backspace: 'back', Delete: 'wipe', '-': 'sign', ',': '.', '.': '.' }

/** A reading, typed by thumb. The last one is offered; what no probe does is asked back before it is logged. */
export function ReadingSheet({ close, open }: SheetProps) {
  const { session, units, now, log } = useSet()
  const cooks = session.day.cooks
  const [cook, setCook] = useKeptCook()
  const [sensor, setSensor] = useKept<string>('emberslate-set-sensor', 'core')
  const [typed, setTyped] = useState<Typed>(NOTHING)
  const [question, setQuestion] = useState<string | null>(null)
  const last = lastHere(probeOf(session, cook, sensor))
  const temp = typedTemp(typed, units) ?? last?.temp ?? null
  const type = (key: string) => {
    setQuestion(null)
    setTyped((before) => press(before, key))
  }
  const choose = (set: (id: string) => void) => (id: string) => {
    set(id)
    setTyped(NOTHING)
    setQuestion(null)
  }
  const save = () => {
    if (temp === null) return setQuestion(typeWhatProbeReads)
    const asked = faultOf(temp, units) ?? jumpQuestion(sensor, last, { at: now, temp }, units)
    if (asked !== null && (asked !== question || faultOf(temp, units) !== null)) return setQuestion(asked)
    const written = typed.digits === '' ? `${temp.toFixed(1)} °C` : tempDocument(typed, units)
    const shown = typed.digits === '' ? formatTemp(temp, units, 1) : written.replace('-', '−')
    log({ kind: 'reading', cook, sensor, temp: written, hand: true }, loggedReading(sensorName(sensor), shown))
    close()
  }
  useTyping(type, save)
  const expects = expectedRead(session, cook, sensor, now, units)
  return (
    <Sheet title={reading} close={close}>
      <CookChoice cooks={cooks} value={cook} onChoose={choose(setCook)} />
      <Choice
        name="Probe"
        value={sensor}
        options={sensorsOf(session, cook).map((one) => [one, sensorName(one)] as const)}
        onChoose={choose(setSensor)}
      />
      <div className="key-top">
        <p className={`key-value ${typed.digits === '' ? 'offered' : ''}`} aria-live="polite">
          {typed.digits === '' ? (last ? formatTemp(last.temp, units).replace(/ .*/, '') : '–') : typedText(typed)}
          <small>{unitOf(units)}</small>
        </p>
        <button type="button" className="textlink" onClick={() => open('probe')}>
          {movedOutWrong}
        </button>
      </div>
      <p className="key-last" role={question ? 'alert' : undefined}>
        {question ? (
          <b>{question}</b>
        ) : (
          <>
            {last ? (
              <>
                {lastWas} <b>{formatTemp(last.temp, units)}</b>, {agoWords(last.at, now)}.{' '}
              </>
            ) : (
              nothingReadHereYet
            )}
            {expects}
          </>
        )}
      </p>
      <Keypad
        onPress={type}
        onSave={save}
        save={question && temp !== null && !faultOf(temp, units) ? itIsRight : saveKey}
      />
    </Sheet>
  )
}

/** A keyboard types too. */
function useTyping(type: (key: string) => void, save: () => void) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return
      const key = /^\d$/.test(event.key) ? event.key : KEYS[event.key]
      if (key) type(key)
      else if (event.key === 'Enter' && !(event.target instanceof HTMLButtonElement)) save()
      else return
      event.preventDefault()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  })
}
