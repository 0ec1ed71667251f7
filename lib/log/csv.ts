/** The cells of a text with separators, as tables are saved and loggers write them (RFC 4180, and what is near it). */

export const SEPARATORS = [';', '\t', ',', '|'] as const
export type Separator = (typeof SEPARATORS)[number]
/** `line` counts from 1, as an editor shows it. */
export interface Row {
  readonly line: number
  readonly cells: readonly string[]
}

/** Rows that are not empty. A quoted cell may hold separators, line breaks and doubled quotes. */
export function rowsOf(text: string, separator: Separator, most = Number.POSITIVE_INFINITY): Row[] {
  const rows: Row[] = []
  let line = 1
  let at = text.startsWith('\uFEFF') ? 1 : 0
  while (at < text.length && rows.length < most) {
    const begins = line
    const cells: string[] = []
    for (let ended = false; !ended; ) {
      const cell = text[at] === '"' ? quotedCell(text, at, separator) : plainCell(text, at, separator)
      cells.push(cell.value.trim())
      line += cell.breaks
      at = cell.end
      ended = text[at] !== separator
      if (!ended) at++
    }
    if (text[at] === '\r') at++
    if (text[at] === '\n') at++
    line++
    if (cells.some((cell) => cell !== '')) rows.push({ line: begins, cells })
  }
  return rows
}

interface Cell {
  readonly value: string
  readonly end: number
  readonly breaks: number
}

function plainCell(text: string, from: number, separator: Separator): Cell {
  let end = from
  while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end] !== '\r') end++
  return { value: text.slice(from, end), end, breaks: 0 }
}

function quotedCell(text: string, from: number, separator: Separator): Cell {
  let [end, value] = [from + 1, '']
  for (; end < text.length; end++) {
    if (text[end] !== '"') value += text[end]
    else if (text[end + 1] === '"') value += text[end++]
    else break
  }
  // What stands between the closing quote and the separator, blanks most often, belongs to the cell.
  const rest = plainCell(text, Math.min(text.length, end + 1), separator)
  return { value: value + rest.value, end: rest.end, breaks: value.split('\n').length - 1 }
}

/** How many cells most rows have. */
export function usualWidth(rows: readonly Row[]): { readonly width: number; readonly share: number } {
  const counts = new Map<number, number>()
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1)
  const [width, count] = [...counts].sort(([a, m], [b, n]) => n - m || b - a)[0] ?? [1, 0]
  return { width, share: rows.length === 0 ? 0 : count / rows.length }
}
