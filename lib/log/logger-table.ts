import { type Row, rowsOf, SEPARATORS, type Separator, usualWidth } from './csv'
import { type DateOrder, guessDateOrder, looksLike, type TimeForm } from './logger-times'

/** How a logger's file is laid out: guessed first, then as the person at the screen says. */
export interface TableShape {
  readonly separator: Separator
  readonly decimal: '.' | ','
  /** The line that names the columns; null where none does. */
  readonly head: number | null
}
export interface LoggerTable {
  readonly names: readonly string[]
  readonly rows: readonly Row[]
  /** A row that has another number of cells than most. */
  readonly odd: readonly Row[]
}
export interface TimeGuess {
  readonly time: number | null
  readonly date: number | null
  readonly form: TimeForm
  readonly order: DateOrder
}

const LOOKED_AT = 60
const isNamed = (cells: readonly string[]) => cells.every((cell) => !/^[-+−]?\d/.test(cell))

export function guessShape(text: string): TableShape {
  const tried = SEPARATORS.map((separator) => {
    const rows = rowsOf(text, separator, LOOKED_AT)
    return { separator, rows, ...usualWidth(rows) }
  })
  const parts = tried.filter(({ width }) => width > 1)
  const best = parts.sort((a, b) => b.share - a.share)[0] ?? tried[2]
  const { separator, rows, width } = best as (typeof tried)[number]
  const first = rows.find(({ cells }) => cells.length === width)
  const body = rows.filter((row) => row !== first).flatMap(({ cells }) => cells)
  const count = (form: RegExp) => body.filter((cell) => form.test(cell)).length
  return {
    separator,
    decimal: count(/^[-+−]?\d+,\d+(\s*°?[CF])?$/) > count(/^[-+−]?\d+\.\d+(\s*°?[CF])?$/) ? ',' : '.',
    head: first && isNamed(first.cells) ? first.line : null,
  }
}

/** What stands above the names of the columns is a logger's own business. */
export function tableOf(text: string, { separator, head }: TableShape): LoggerTable {
  const rows = rowsOf(text, separator)
  const named = rows.find(({ line }) => line === head)
  const below = rows.filter(({ line }) => head === null || line > head)
  const width = named?.cells.length ?? usualWidth(below).width
  const begins = Math.max(
    0,
    below.findIndex(({ cells }) => cells.length === width),
  )
  const body = head === null ? below.slice(begins) : below
  return {
    names: Array.from({ length: width }, (_, i) => named?.cells[i] || `column ${i + 1}`),
    rows: body.filter(({ cells }) => cells.length === width),
    odd: body.filter(({ cells }) => cells.length !== width),
  }
}

/** Which column tells the time, and how. */
export function guessTime({ names, rows }: LoggerTable): TimeGuess {
  const samples = names.map((_, i) => rows.slice(0, LOOKED_AT).map(({ cells }) => cells[i] ?? ''))
  const find = (form: 'date-time' | 'clock' | 'date' | 'epoch-s') =>
    samples.findIndex((cells) => cells.length > 0 && cells.every((cell) => looksLike(cell, form)))
  const date = find('date')
  const order = guessDateOrder(samples.flat())
  for (const form of ['date-time', 'epoch-s', 'clock'] as const) {
    const time = find(form)
    if (time >= 0) return { time, date: form === 'clock' && date >= 0 ? date : null, form, order }
  }
  const named = names.findIndex((name) => /time|elapsed|sec|min|zeit|temps|^t(_s)?$/i.test(name))
  const form: TimeForm = /min/i.test(names[named] ?? '') ? 'elapsed-min' : 'elapsed-s'
  return { time: named >= 0 ? named : null, date: null, form, order }
}

/** The unit that a column's name or cells tell. */
export function guessUnit({ names, rows }: LoggerTable, column: number, usual: 'C' | 'F'): 'C' | 'F' {
  const told = [names[column] ?? '', ...rows.slice(0, 5).map(({ cells }) => cells[column] ?? '')].join(' ')
  if (/°\s*F|[(_ [\d]F(?![a-z])|fahrenheit/i.test(told)) return 'F'
  return /°\s*C|[(_ [\d]C(?![a-z])|celsius/i.test(told) ? 'C' : usual
}
