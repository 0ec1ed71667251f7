/** Readings of a day as a logger wrote them, CSV: every fault a sentence at its line. */
import { type Reading, SENSORS } from '../model/readings'
import type { Problem, Result } from '../refusals'
import { celsius, fromFahrenheit, seconds } from '../units'

/** A reading of two sensors each second for a day and a half. */
export const LARGEST_READINGS_BYTES = 20_000_000
/** A fire is lit within the day before meat-on; a cook not done in 36 h never is. */
const EARLIEST_S = -86_400
const LATEST_S = 129_600
/** No thermometer of ours reads beyond. */
const COLDEST_C = -60
const HOTTEST_C = 1000

const COLUMNS = ['t_s', 'sensor', 'temp_C', 'temp_F', 'cook'] as const
type Column = (typeof COLUMNS)[number]
type Places = Partial<Record<Column, number>>

/** Readings by cook. `cooks` are the ids of the shoot's cooks. */
export function readReadings(text: string, cooks: readonly string[]): Result<ReadonlyMap<string, readonly Reading[]>> {
  const lines = (text.startsWith('\uFEFF') ? text.slice(1) : text).split(/\r\n|\n|\r/)
  const head = lines.findIndex((line) => line.trim() !== '')
  const places =
    head < 0
      ? 'The file of readings is empty. Its first line is t_s,sensor,temp_C.'
      : placesOf(lines[head] as string, cooks)
  if (typeof places === 'string')
    return { ok: false, problems: [{ pointer: `/readings/${Math.max(1, head + 1)}`, sentence: places }] }
  const problems: Problem[] = []
  const readings = new Map<string, Reading[]>(cooks.map((id) => [id, []]))
  lines.slice(head + 1).forEach((line, i) => {
    if (line.trim() === '') return
    const row = rowOf(cellsOf(line), places, cooks)
    if (typeof row === 'string') problems.push({ pointer: `/readings/${head + i + 2}`, sentence: row })
    else readings.get(row.cook)?.push(row.reading)
  })
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: readings }
}

const cellsOf = (line: string) =>
  line.split(',').map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  )
const quoted = (text: string) => `"${text.length > 30 ? `${text.slice(0, 30)}…` : text}"`

/** Where each column stands, or what is wrong with the header. */
function placesOf(line: string, cooks: readonly string[]): Places | string {
  const places: Places = {}
  for (const [i, name] of cellsOf(line).entries()) {
    const column = COLUMNS.find((known) => known === name)
    if (column === undefined)
      return `There is no column ${quoted(name)}: the header is t_s,sensor,temp_C, or temp_F, and cook where there are several.`
    if (places[column] !== undefined) return `The column ${column} is there twice; keep one.`
    places[column] = i
  }
  if (places.t_s === undefined) return 'The column t_s is missing: seconds after meat-on.'
  if (places.sensor === undefined) return 'The column sensor is missing: core, which is the probe, or cooker.'
  if (places.temp_C === undefined && places.temp_F === undefined) return 'The column temp_C, or temp_F, is missing.'
  if (places.temp_C !== undefined && places.temp_F !== undefined) return 'Give temp_C or temp_F, not both.'
  if (places.cook === undefined && cooks.length > 1)
    return `The column cook is missing: the shoot has ${cooks.length} cooks, ${cooks.join(', ')}.`
  return places
}

interface ReadRow {
  readonly cook: string
  readonly reading: Reading
}
function rowOf(cells: readonly string[], places: Places, cooks: readonly string[]): ReadRow | string {
  const count = Object.keys(places).length
  if (cells.length !== count)
    return `The line has ${cells.length} ${cells.length === 1 ? 'value' : 'values'}; the header has ${count} columns.`
  const at = (column: Column) => cells[places[column] ?? -1] ?? ''
  const t = numberIn(at('t_s'))
  if (!(t >= EARLIEST_S && t <= LATEST_S))
    return `t_s is ${quoted(at('t_s'))}; it is seconds after meat-on, from ${EARLIEST_S} to ${LATEST_S}.`
  const sensor = SENSORS.find((known) => known === at('sensor'))
  if (sensor === undefined)
    return `The sensor ${quoted(at('sensor'))} is not known; it is core, which is the probe, or cooker.`
  const column = places.temp_F === undefined ? 'temp_C' : 'temp_F'
  const written = numberIn(at(column))
  const tempC = column === 'temp_F' ? fromFahrenheit(written) : celsius(written)
  if (!(tempC >= COLDEST_C && tempC <= HOTTEST_C))
    return `${column} is ${quoted(at(column))}; it is ${rangeIn(column)}.`
  const cook = places.cook === undefined ? (cooks[0] as string) : at('cook')
  if (!cooks.includes(cook)) return `There is no cook ${quoted(cook)}; the shoot has ${cooks.join(', ')}.`
  return { cook, reading: { t: seconds(t), sensor, tempC } }
}
const numberIn = (text: string) => (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN)
const rangeIn = (column: 'temp_C' | 'temp_F') =>
  column === 'temp_C' ? 'a number of °C from -60 to 1000' : 'a number of °F from -76 to 1832'
