import type { DayState } from '../log/day-state'
import { foldLog } from '../log/fold'
import { type LoggedReading, marksOf, meatOnOf, readingsOf } from '../log/for-forecast'
import { EMPTY_LOG, merge } from '../log/log'
import { readLog } from '../log/ndjson'
import { trustedReadings } from '../log/trusted-probe'
import type { Read } from '../plan/forecast-document'
import type { Shoot } from '../plan/shoot'
import type { Problem } from '../refusals'
import { seconds } from '../units'
import { readText, tellProblems } from './problems'

/** A long day with a reading each second. */
const LARGEST_LOG_BYTES = 50_000_000
const tooLarge = (bytes: number) =>
  `The log holds ${(bytes / 1e6).toFixed(1)} MB; ${LARGEST_LOG_BYTES / 1e6} MB at most. Is it the log of one shoot?`

/** The day that a slate log tells of; null with its problems told. */
export function dayOfLog(shoot: Shoot, path: string): DayState | null {
  const text = readText(path, 'a slate log', { mostBytes: LARGEST_LOG_BYTES, refuse: tooLarge })
  if (text === null) return null
  const { lines, faults } = readLog(text)
  const day = foldLog(merge(EMPTY_LOG, lines))
  const problems: Problem[] = faults.map(({ line, pointer, sentence }) => ({
    pointer: `/log/${line}${pointer}`,
    sentence,
  }))
  const ids = shoot.cooks.map(({ id }) => id)
  const logged = new Set([...Object.values(day.probes), ...Object.values(day.marks)].map(({ cook }) => cook))
  for (const cook of logged)
    if (!ids.includes(cook))
      problems.push({
        pointer: '/log',
        sentence: `The log tells of a cook "${cook}", and the shoot has ${ids.join(', ')}. Give the log of this shoot.`,
      })
    else if (
      meatOnOf(day, cook) === null &&
      Object.values(day.probes).some((probe) => probe.cook === cook && probe.readings.length > 0)
    )
      problems.push({
        pointer: '/log',
        sentence: `The log has readings of "${cook}" and no mark of its meat-on, which is time zero. Add a mark of "meat-on".`,
      })
  if (problems.length === 0) return day
  tellProblems(problems)
  return null
}

/** What a slate log tells the forecast of each cook: readings and marks; null with its problems told. */
export function readOfLog(shoot: Shoot, path: string): Read | null {
  const day = dayOfLog(shoot, path)
  if (!day) return null
  const ids = shoot.cooks.map(({ id }) => id)
  return {
    readings: new Map(ids.map((id) => [id, trustedOf(readingsOf(day, id))])),
    marks: new Map(ids.map((id) => [id, marksOf(day, id)])),
  }
}

const trustedOf = (readings: readonly LoggedReading[]) => trustedReadings(readings, readings.at(-1)?.t ?? seconds(0))
