import { sha256 } from '@noble/hashes/sha2.js'
import { toIso } from '../plan/clock'
import { WallClock } from '../plan/wall-clock'
import { type Celsius, celsius, fromFahrenheit, type Instant, instant } from '../units'
import type { Row } from './csv'
import type { EntryDocument } from './entry'
import { entryId, RANDOM_BYTES } from './entry-id'
import { FILE_DEVICE, READING_LIMITS, whenText } from './entry-words'
import type { LoggerTable } from './logger-table'
import {
  clockMs,
  type DateOrder,
  Days,
  dateMs,
  dateTimeMs,
  elapsedMs,
  epochMs,
  numberIn,
  type TimeForm,
} from './logger-times'

export type Role =
  | { readonly as: 'ignored' }
  | { readonly as: 'time' }
  | { readonly as: 'date' }
  | { readonly as: 'temp'; readonly cook: string; readonly sensor: string; readonly unit: 'C' | 'F' }
/** What the person at the screen has said of the columns. */
export interface Match {
  readonly roles: readonly Role[]
  readonly form: TimeForm
  readonly order: DateOrder
  readonly decimal: '.' | ','
  readonly zone: string
  /** Of the first row, and of the start: YYYY-MM-DD. */
  readonly date: string
  /** When the logger began, HH:MM or HH:MM:SS. */
  readonly start: string
  /** One reading of a probe in so many seconds; 0 keeps all. */
  readonly everyS: number
}
export interface FileReading {
  readonly line: number
  readonly at: Instant
  readonly cook: string
  readonly sensor: string
  readonly temp: Celsius
  /** As the log has it, "46.2 °C". */
  readonly written: string
}
export interface RowFault {
  readonly line: number
  readonly sentence: string
}
export interface ReadFile {
  readonly readings: readonly FileReading[]
  readonly faults: readonly RowFault[]
  /** Cells in which a probe said nothing. */
  readonly silent: number
  /** Readings left out for `everyS`. */
  readonly thinned: number
}
/** The days that a reading may be of. */
export interface Within {
  readonly from: Instant
  readonly to: Instant
}

/** What is still to be said before anything can be read; null where all is. */
export function matchFault({ roles, form, date, start }: Match): string | null {
  const times = roles.filter(({ as }) => as === 'time').length
  if (times !== 1) return times === 0 ? 'Say which column is the time.' : 'Two columns are the time. Keep one.'
  const probes = roles.flatMap((role) =>
    role.as === 'temp' ? [`${role.sensor.replace('-', ' ')} of ${role.cook}`] : [],
  )
  if (probes.length === 0) return 'Say which column is which probe.'
  const twice = probes.find((one, i) => probes.indexOf(one) < i)
  if (twice) return `Two columns are ${twice}. Make one of them another probe, or leave it out.`
  const isDated = form === 'date-time' || form === 'epoch-s' || roles.some(({ as }) => as === 'date')
  if (!isDated && dateMs(date, 'dmy') === null) return 'Give the date of the first row.'
  if (form.startsWith('elapsed') && clockMs(start) === null)
    return 'Give the time at which the logger started, such as 11:30.'
  return null
}

/** Every reading of the file in the order of its lines, and each fault at its line. `match` has no fault of its own. */
export function readFile(table: LoggerTable, match: Match, within: Within): ReadFile {
  const timeOf = timesOf(match, within)
  const faults: RowFault[] = table.odd.map(({ line, cells }) => ({
    line,
    sentence: `The line has ${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}; the others have ${table.names.length}.`,
  }))
  const readings: FileReading[] = []
  const kept = new Set<string>()
  let [silent, thinned] = [0, 0]
  for (const row of table.rows) {
    const at = timeOf(row)
    if (typeof at === 'string') {
      faults.push({ line: row.line, sentence: at })
      continue
    }
    match.roles.forEach((role, i) => {
      if (role.as !== 'temp') return
      const cell = row.cells[i] ?? ''
      const read = /\d/.test(cell) ? tempIn(cell, role.unit, match.decimal) : null
      if (read === null) silent++
      else if (typeof read === 'string') faults.push({ line: row.line, sentence: read })
      else if (isThinned(kept, role, at, match.everyS)) thinned++
      else readings.push({ line: row.line, at, cook: role.cook, sensor: role.sensor, ...read })
    })
  }
  return { readings, faults: faults.sort((a, b) => a.line - b.line), silent, thinned }
}

/** The first of each stretch counts, whatever part of the day a file holds. */
function isThinned(kept: Set<string>, probe: { cook: string; sensor: string }, at: Instant, everyS: number): boolean {
  if (everyS === 0) return false
  const key = `${probe.cook}/${probe.sensor}/${Math.floor(at / (everyS * 1000))}`
  const isKnown = kept.has(key)
  kept.add(key)
  return isKnown
}

const quoted = (cell: string) => `“${cell.length > 30 ? `${cell.slice(0, 30)}…` : cell}”`

function tempIn(cell: string, unit: 'C' | 'F', decimal: '.' | ','): { temp: Celsius; written: string } | string {
  const [, digits = '', own] = /^(.*?)\s*(?:°?\s*([CF]))?$/i.exec(cell) ?? []
  if (own && own.toUpperCase() !== unit)
    return `${quoted(cell)} is in °${own.toUpperCase()}; the column is set to °${unit}. Change the unit of the column.`
  const value = numberIn(digits, decimal)
  if (value === null)
    return `${quoted(cell)} is no temperature. The decimal sign is set to ${decimal === ',' ? 'a comma' : 'a point'}.`
  const temp = unit === 'F' ? fromFahrenheit(value) : celsius(value)
  if (temp >= READING_LIMITS.min && temp <= READING_LIMITS.max) return { temp, written: `${value} °${unit}` }
  return `${value} °${unit} is no reading of a probe. One reads from −40 °C to 700 °C; is the unit right?`
}

/** Each row's instant, or a sentence. Rows are asked for in their order. */
function timesOf(match: Match, { from, to }: Within): (row: Row) => Instant | string {
  const raw = rawTimesOf(match)
  const shown = (at: Instant) => toIso(at, match.zone).replace('T', ' ')
  return (row) => {
    const at = raw(row)
    if (typeof at === 'string') return at
    if (at > to) return `${shown(at)} is later than now. Check the date and the zone.`
    return at < from ? `${shown(at)} is days before this shoot. Check the date.` : at
  }
}

function rawTimesOf(match: Match): (row: Row) => Instant | string {
  const { roles, form, order, decimal } = match
  const wall = new WallClock(match.zone)
  const column = roles.findIndex(({ as }) => as === 'time')
  const dates = roles.findIndex(({ as }) => as === 'date')
  const first = dateMs(match.date, 'dmy') ?? 0
  const began = wall.instantOf(first + (clockMs(match.start) ?? 0))
  const days = new Days()
  let last = Number.NEGATIVE_INFINITY
  const onWall = (ms: number, cell: string): Instant | string => {
    const at = wall.instantOf(ms, last)
    if (at === null) return `${quoted(cell)} does not exist in ${match.zone}: the clocks go forward over it.`
    last = at
    return at
  }
  const noTime = (cell: string) => `${quoted(cell)} is no ${FORM_WORDS[form]}.`
  return ({ cells }) => {
    const cell = cells[column] ?? ''
    if (form === 'date-time') {
      const found = dateTimeMs(cell, order)
      if (found === null) return noTime(cell)
      return found.isInstant ? instant(found.ms) : onWall(found.ms, cell)
    }
    if (form === 'clock') {
      const clock = clockMs(cell)
      if (clock === null) return noTime(cell)
      if (dates < 0) return onWall(first + days.wallOf(clock), cell)
      const day = dateMs(cells[dates] ?? '', order)
      return day === null ? `${quoted(cells[dates] ?? '')} is no date.` : onWall(day + clock, cell)
    }
    const ms = form === 'epoch-s' ? epochMs(cell) : elapsedMs(cell, form, decimal)
    if (ms === null) return noTime(cell)
    if (form === 'epoch-s') return instant(ms)
    return began === null
      ? `The start does not exist in ${match.zone}: the clocks go forward over it.`
      : instant(began + ms)
  }
}
const FORM_WORDS: Readonly<Record<TimeForm, string>> = {
  'date-time': 'date and time, such as 2027-05-15 14:05:00',
  clock: 'time of day, such as 14:05:00',
  'elapsed-s': 'number of seconds',
  'elapsed-min': 'number of minutes',
  'elapsed-hms': 'time since the start, such as 1:05:00',
  'epoch-s': 'time since 1970 in seconds',
}

/** The entry of a reading. Its id follows from what it says, so that the same file sent twice is kept once. */
export function entryOf(shoot: string, { at, cook, sensor, written }: FileReading): EntryDocument {
  const says = [shoot, cook, sensor, at, written].join('\n')
  const id = entryId(at, sha256(new TextEncoder().encode(says)).subarray(0, RANDOM_BYTES))
  return { id, at: whenText(at), by: { device: FILE_DEVICE }, kind: 'reading', cook, sensor, temp: written }
}
