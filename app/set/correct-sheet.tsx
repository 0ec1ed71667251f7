'use client'
import { useState } from 'react'
import type { Entry } from '@/lib/log/entry'
import { typedClock } from '@/lib/plan/as-read'
import { celsius, formatTemp, fromFahrenheit, type Instant, instant, type UnitSystem } from '@/lib/units'
import {
  correct,
  isPutRight,
  itDidNotHappen,
  itRead,
  itWas,
  putRight,
  takenBack,
  whyWords,
  writeNumberSuch,
  writeTimeSuch,
} from '../words/sheets'
import { useLogNames } from './log-page'
import { logWords } from './log-words'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import { faultOf, unitOf } from './typed-temp'

const NUMBER = /^[-−]?\d{1,4}([.,]\d)?$/
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/

/** Nothing is changed or deleted: a correction is a line of its own, which says what is right or that it did not happen. */
export function CorrectSheet({ entry, at, close }: { entry: Entry; at: Instant; close: () => void }) {
  const { units, clock, log } = useSet()
  const names = useLogNames()
  const [value, setValue] = useState(entry.kind === 'reading' ? degrees(entry.temp, units) : '')
  const [time, setTime] = useState(clock(at))
  const [why, setWhy] = useState('')
  const words = logWords(entry, names)
  const wrongValue = entry.kind === 'reading' ? faultIn(value, units) : null
  const typed = typedClock(time)
  const wrongTime = !CLOCK.test(typed)
  const put = {
    ...(entry.kind === 'reading' &&
      value !== degrees(entry.temp, units) && {
        temp: `${plain(value)} ${unitOf(units)}`,
      }),
    ...(time !== clock(at) && !wrongTime && { at: sameDay(at, typedClock(clock(at)), typed) }),
  }
  const changed = Object.keys(put).length > 0
  const send = (rest: Record<string, unknown>, told: string) => {
    log({ kind: 'correction', corrects: entry.id, ...rest, ...(why.trim() && { why: why.trim() }) }, told)
    close()
  }
  return (
    <Sheet title={correct} close={close}>
      <p className="do">{words}</p>
      <div className="pair">
        {entry.kind === 'reading' && (
          <label>
            {itRead(unitOf(units))}
            <input
              value={value}
              inputMode="decimal"
              aria-invalid={wrongValue !== null}
              onChange={(event) => setValue(event.target.value)}
            />
            {wrongValue && <span className="says">{wrongValue}</span>}
          </label>
        )}
        <label>
          {itWas}
          <input value={time} aria-invalid={wrongTime} onChange={(event) => setTime(event.target.value)} />
          {wrongTime && <span className="says">{writeTimeSuch}</span>}
        </label>
      </div>
      <label className="line">
        {whyWords}
        <input value={why} maxLength={300} onChange={(event) => setWhy(event.target.value)} />
      </label>
      <div className="foot">
        <div className="thumb two">
          <button
            type="button"
            className="main"
            disabled={!changed || wrongValue !== null || wrongTime}
            onClick={() => send({ put }, isPutRight)}
          >
            {putRight}
          </button>
          <button type="button" onClick={() => send({ void: true }, takenBack)}>
            {itDidNotHappen}
          </button>
        </div>
      </div>
    </Sheet>
  )
}

const plain = (value: string) => value.replace(',', '.').replace('−', '-')
function faultIn(value: string, units: UnitSystem): string | null {
  if (!NUMBER.test(value)) return writeNumberSuch
  const read = Number(plain(value))
  return faultOf(units === 'us' ? fromFahrenheit(read) : celsius(read), units)
}
const degrees = (temp: number, units: UnitSystem) => formatTemp(celsius(temp), units, 1).replace(/ .*/, '')

const minuteOf = (face: string) => Number(face.slice(0, 2)) * 60 + Number(face.slice(3))
const HALF_DAY_MIN = 720
/** The nearest point in time at which the clock shows `wanted`. */
export function sameDay(at: number, shows: string, wanted: string): string {
  const by = minuteOf(wanted) - minuteOf(shows)
  const nearest = by > HALF_DAY_MIN ? by - 2 * HALF_DAY_MIN : by < -HALF_DAY_MIN ? by + 2 * HALF_DAY_MIN : by
  return new Date(instant(at + nearest * 60_000)).toISOString()
}
