/** How times of day and dates are written where the reader lives. The core writes "14:05" and "Saturday 15 May 2027"; a page rewrites it at its edge. */
export interface ReadersWay {
  readonly clock: '24h' | '12h'
  readonly dates: 'day-first' | 'month-first'
}
export const CORES_OWN: ReadersWay = { clock: '24h', dates: 'day-first' }

/** A time of day that is still the core's own, but no part of an instant ("T14:05", "+01:00"), a timecode or a number. */
const TIME = /(^|[^\d:T.+−-])([01]?\d|2[0-3]):([0-5]\d)(?![\d:]| [ap]m\b)/g
const DATE =
  /\b((?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day )?(\d{1,2}) (January|February|March|April|May|June|July|August|September|October|November|December)\b( \d{4})?/g

/** "2:05 pm" of 14 and 05; noon is 12 pm. */
const twelve = (hour: number, minute: string) =>
  `${hour % 12 === 0 ? 12 : hour % 12}:${minute} ${hour < 12 ? 'am' : 'pm'}`

/** The same sentence with its times and dates as the reader writes them. */
export function asRead(text: string, { clock, dates }: ReadersWay): string {
  const timed =
    clock === '24h'
      ? text
      : text.replace(TIME, (_, before: string, hour: string, minute: string) => before + twelve(Number(hour), minute))
  return dates === 'day-first'
    ? timed
    : timed.replace(
        DATE,
        (_, day: string | undefined, date: string, month: string, year?: string) =>
          `${day ? `${day.trim()}, ` : ''}${month} ${date}${year ? `,${year}` : ''}`,
      )
}

/** Kept as they are: changes of a document, whose times the file writes its own way. */
const OF_THE_FILE = ['edits', 'document']

/** The same for every text of what a page shows. */
export function allAsRead<T>(shown: T, way: ReadersWay): T {
  if (way.clock === '24h' && way.dates === 'day-first') return shown
  if (typeof shown === 'string') return asRead(shown, way) as T
  if (Array.isArray(shown)) return shown.map((one) => allAsRead(one, way)) as T
  if (shown === null || typeof shown !== 'object' || Object.getPrototypeOf(shown) !== Object.prototype) return shown
  return Object.fromEntries(
    Object.entries(shown).map(([key, value]) => [key, OF_THE_FILE.includes(key) ? value : allAsRead(value, way)]),
  ) as T
}

/** "2:30 pm" and "2 pm" as the file keeps them, "14:30"; every other text as it was typed. */
export function typedClock(text: string): string {
  const typed = /^\s*(\d{1,2})(?:[:.]([0-5]\d))?\s*([ap])\.?\s?m\.?\s*$/i.exec(text)
  const hour = Number(typed?.[1])
  if (!typed || hour < 1 || hour > 12) return text
  const evening = typed[3]?.toLowerCase() === 'p' ? 12 : 0
  return `${String((hour % 12) + evening).padStart(2, '0')}:${typed[2] ?? '00'}`
}
