'use client'
import { useState } from 'react'
import { FILE_DEVICE } from '@/lib/log/entry-words'
import type { Skew } from '@/lib/log/skew'
import { agoWords } from '@/lib/session/board-words'
import { formatDuration, type Instant, seconds } from '@/lib/units'
import {
  devicesAndTheirClocks,
  fromFilesSoFar,
  lastWords,
  noReadingHasCome,
  onItsWay,
  putThemInAgain,
  takeBackWords,
  takenBackWords,
  toWords,
} from '../../words/readings'
import { httpWire } from '../feed/http-wire'
import { useSet } from '../set-context'
import { type FromFiles, fromFiles, takeBack } from './from-files'
import { type SentSoFar, sendEntries } from './send-entries'
import { dayAndClock, readingsWord } from './words'

/** Less than this a clock is right. [estimate] */
const RIGHT_S = 2

/** "clock 2 min 10 s behind; corrected". */
export function clockWords({ ahead }: Pick<Skew, 'ahead'>): string {
  if (Math.abs(ahead) < RIGHT_S) return 'clock right'
  return `clock ${formatDuration(seconds(Math.abs(ahead)))} ${ahead > 0 ? 'ahead' : 'behind'}; corrected`
}

interface Device {
  readonly device: string
  readonly readings: number
  readonly last: Instant
  readonly skew: Skew | null
}

/** Whatever has sent readings by itself, and how its clock runs. */
export function Devices() {
  const { session, now } = useSet()
  const devices = devicesOf(session)
  return (
    <section aria-label={devicesAndTheirClocks}>
      <h2>{devicesAndTheirClocks}</h2>
      {devices.length === 0 && <p className="small">{noReadingHasCome}</p>}
      <ul className="desk-list">
        {devices.map(({ device, readings, last, skew }) => (
          <li key={device}>
            <b>{device}</b>
            <span>{lastWords(readingsWord(readings), agoWords(last, now))}</span>
            <span>{skew ? clockWords(skew) : onItsWay}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function devicesOf({ log, told }: ReturnType<typeof useSet>['session']): readonly Device[] {
  const found = new Map<string, { readings: number; last: number }>()
  for (const { entry } of log.values()) {
    const { device } = entry.by
    if (entry.kind !== 'reading' || device === FILE_DEVICE) continue
    const known = found.get(device)
    found.set(device, { readings: (known?.readings ?? 0) + 1, last: Math.max(known?.last ?? 0, entry.at) })
  }
  return [...found]
    .map(([device, { readings, last }]): Device => {
      const skew = told.skews[device] ?? null
      return { device, readings, last: (last - (skew?.ahead ?? 0) * 1000) as Instant, skew }
    })
    .sort((a, b) => b.last - a.last)
}

/** What came from files, and the way back. */
export function InTheLog({ shootId }: { shootId: string }) {
  const { session, facts, feed } = useSet()
  const [sofar, setSofar] = useState<SentSoFar | null>(null)
  const all = fromFiles(session)
  if (all.length === 0) return null
  const when = dayAndClock(facts.zone)
  const correct = async (ids: FromFiles['standing']) =>
    setSofar(
      await sendEntries(
        httpWire(shootId),
        takeBack(ids, feed.now(), feed.person),
        () => feed.now(),
        (next) => setSofar(next),
      ),
    )
  return (
    <section aria-label={fromFilesSoFar}>
      <h2>{fromFilesSoFar}</h2>
      <ul className="desk-list">
        {all.map((one) => (
          <li key={`${one.cook}/${one.sensor}`}>
            <b>
              {one.cook}: {one.sensor.replace('-', ' ')}
            </b>
            <span>{readingsWord(one.standing.length)}</span>
            <span>{toWords(when(one.from), when(one.to))}</span>
            {one.standing.length > 0 && (
              <button type="button" className="textlink" onClick={() => correct(one.standing)}>
                {takeBackWords(one.standing.length)}
              </button>
            )}
            {one.takenBack.length > 0 && (
              <span>
                {takenBackWords(one.takenBack.length)}{' '}
                <button type="button" className="textlink" onClick={() => correct(one.takenBack)}>
                  {putThemInAgain}
                </button>
              </span>
            )}
          </li>
        ))}
      </ul>
      <p role="status" className="small">
        {sofar?.sentence}
      </p>
    </section>
  )
}
