'use client'
import type { FileReading, ReadFile } from '@/lib/log/logger-readings'
import {
  andMore,
  filesAre,
  firstReadings,
  lineHead,
  lineNumbered,
  probe,
  reads,
  timesAreSets,
  whatWillBeLogged,
  whenWords,
} from '../../words/readings'
import { useSet } from '../set-context'
import { ReadingsPicture } from './readings-picture'
import { dayAndClock, readingsWord } from './words'

const FIRST = 6
const MOST_FAULTS = 8

/** What the file makes, before anything of it is logged. */
export function Preview({ read, zone }: { read: ReadFile; zone: string }) {
  const { facts, units, clock, session } = useSet()
  const { readings, faults, silent, thinned } = read
  const many = session.day.cooks.length > 1
  const left = [
    faults.length > 0 && `${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}, left out`,
    silent > 0 && `${silent} empty ${silent === 1 ? 'cell' : 'cells'}`,
    thinned > 0 && `${thinned} left out as too dense`,
  ].filter(Boolean)
  return (
    <section aria-label={whatWillBeLogged}>
      <h3>{whatWillBeLogged}</h3>
      <p>
        <b>{readingsWord(readings.length)}</b>
        {left.length > 0 && `; ${left.join('; ')}`}
        {timesAreSets(facts.zone)}
        {zone !== facts.zone && filesAre(zone)}.
      </p>
      {faults.length > 0 && (
        <ul className="faults">
          {faults.slice(0, MOST_FAULTS).map(({ line, sentence }) => (
            <li key={`${line} ${sentence}`}>
              <b>{lineNumbered(line)}</b> {sentence}
            </li>
          ))}
          {faults.length > MOST_FAULTS && <li>{andMore(faults.length - MOST_FAULTS)}</li>}
        </ul>
      )}
      {readings.length > 0 && (
        <div className="preview">
          <ReadingsPicture readings={readings} units={units} clock={clock} />
          <FirstRows readings={readings} many={many} when={dayAndClock(facts.zone)} />
        </div>
      )}
    </section>
  )
}

function FirstRows(props: { readings: readonly FileReading[]; many: boolean; when: ReturnType<typeof dayAndClock> }) {
  return (
    <table>
      <caption className="sr-only">{firstReadings}</caption>
      <thead>
        <tr>
          <th scope="col">{lineHead}</th>
          <th scope="col">{whenWords}</th>
          <th scope="col">{probe}</th>
          <th scope="col">{reads}</th>
        </tr>
      </thead>
      <tbody>
        {props.readings.slice(0, FIRST).map(({ line, at, cook, sensor, written }) => (
          <tr key={`${line} ${cook} ${sensor}`}>
            <td>{line}</td>
            <td className="time">{props.when(at)}</td>
            <td>
              {props.many && `${cook}: `}
              {sensor.replace('-', ' ')}
            </td>
            <td className="time">{written}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
