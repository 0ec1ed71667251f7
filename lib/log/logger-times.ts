/** Times as loggers write them. */

export const TIME_FORMS = ['date-time', 'clock', 'elapsed-s', 'elapsed-min', 'elapsed-hms', 'epoch-s'] as const
export type TimeForm = (typeof TIME_FORMS)[number]
export type DateOrder = 'dmy' | 'mdy'

const DATE = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$/
const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*([ap])\.?m\.?)?$/i
const OFFSET = /(Z|[+-]\d{2}:?\d{2})$/
const SPAN = /^(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?$/
const EPOCH = /^\d{10}(\d{3})?(\.\d+)?$/
const DAY_MS = 86_400_000

export function looksLike(cell: string, form: 'date-time' | 'clock' | 'date' | 'epoch-s'): boolean {
  if (form === 'date') return DATE.test(cell)
  if (form === 'clock') return CLOCK.test(cell)
  if (form === 'epoch-s') return EPOCH.test(cell)
  const { date, clock } = parts(cell)
  return DATE.test(date) && CLOCK.test(clock)
}

/** "13/5/2027" can only have the day first; where nothing tells, neither can we: the day is taken as first. */
export const guessDateOrder = (cells: readonly string[]): DateOrder =>
  cells.some((cell) => Number(/^\d{1,2}[-/.](\d{1,2})[-/.]/.exec(cell)?.[1]) > 12) ? 'mdy' : 'dmy'

/** Whether the order of day and month has to be asked. */
export const isOrderOpen = (cell: string) => /^\d{1,2}[-/.]\d{1,2}[-/.]/.test(cell)

function parts(cell: string): { date: string; clock: string; offset: string | null } {
  const [, date = '', rest = ''] = /^([\d./-]+)[T,\s]+(.*)$/.exec(cell) ?? []
  const offset = OFFSET.exec(rest)?.[0] ?? null
  return { date, clock: offset === null ? rest : rest.slice(0, -offset.length).trim(), offset }
}

/** Midnight of the date as if it were UTC. */
export function dateMs(cell: string, order: DateOrder): number | null {
  const [, a = '', b = '', c = ''] = DATE.exec(cell) ?? []
  const isYearFirst = a.length > 2
  const [year, month, day] = isYearFirst ? [a, b, c] : order === 'dmy' ? [c, b, a] : [c, a, b]
  const full = Number(year) < 100 ? 2000 + Number(year) : Number(year)
  const ms = Date.UTC(full, Number(month) - 1, Number(day))
  const made = new Date(ms)
  const exists = made.getUTCMonth() === Number(month) - 1 && made.getUTCDate() === Number(day)
  return Number.isFinite(ms) && exists ? ms : null
}

/** Time of day, ms. */
export function clockMs(cell: string): number | null {
  const found = CLOCK.exec(cell)
  if (!found) return null
  const [, hours = '', minutes = '', secs = '0', part = '', half] = found
  const h = half ? (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : Number(hours)
  if (h > 23 || Number(minutes) > 59 || Number(secs) > 59 || (half && Number(hours) > 12)) return null
  return ((h * 60 + Number(minutes)) * 60 + Number(secs)) * 1000 + Math.floor(Number(`0.${part || 0}`) * 1000)
}

/** Wall time as if UTC, or with its own offset the instant itself. */
export function dateTimeMs(
  cell: string,
  order: DateOrder,
): { readonly ms: number; readonly isInstant: boolean } | null {
  const { date, clock, offset } = parts(cell)
  const [day, time] = [dateMs(date, order), clockMs(clock)]
  if (day === null || time === null) return null
  return { ms: day + time - offsetMs(offset), isInstant: offset !== null }
}

function offsetMs(offset: string | null): number {
  if (offset === null || offset === 'Z') return 0
  const digits = offset.replace(/\D/g, '')
  const ms = (Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2))) * 60_000
  return offset.startsWith('-') ? -ms : ms
}

/** Ms since the start. */
export function elapsedMs(cell: string, form: TimeForm, decimal: '.' | ','): number | null {
  if (form === 'elapsed-hms') {
    const found = SPAN.exec(cell)
    return found ? ((Number(found[1]) * 60 + Number(found[2])) * 60 + Number(found[3] ?? 0)) * 1000 : null
  }
  const value = numberIn(cell, decimal)
  return value === null ? null : Math.round(value * (form === 'elapsed-min' ? 60_000 : 1000))
}

/** Seconds since 1970, or milliseconds where there are so many of them. */
export function epochMs(cell: string): number | null {
  if (!EPOCH.test(cell)) return null
  const value = Number(cell)
  return Math.round(value > 1e11 ? value : value * 1000)
}

export function numberIn(cell: string, decimal: '.' | ','): number | null {
  const plain = (decimal === ',' ? cell.replace(',', '.') : cell).replace('−', '-')
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null
}

/** Times of day that run over midnight: which day each is, from the one before. Either way, for some files run backwards. */
export class Days {
  #last: number | null = null
  #day = 0
  wallOf(clock: number): number {
    const step = this.#last === null ? 0 : clock - this.#last
    if (step < -DAY_MS / 2) this.#day++
    if (step > DAY_MS / 2) this.#day--
    this.#last = clock
    return this.#day * DAY_MS + clock
  }
}
