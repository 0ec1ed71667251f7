import type { Instant } from '../units'
import type { Entry, EntryDocument } from './entry'
import type { EntryId } from './entry-id'

/** When the server got an entry, by its own clock, and what the sender's clock said as it sent it. */
export interface Receipt {
  readonly received: Instant
  readonly sent: Instant
}
/** A line of the log; without a receipt it is still on its way. */
export interface Line {
  readonly entry: Entry
  readonly document: EntryDocument
  readonly receipt?: Receipt
}
/** A set of lines by id: it grows, and nothing in it is changed or taken out. */
export type Log = ReadonlyMap<EntryId, Line>
export const EMPTY_LOG: Log = new Map()

/**
 * The union of a log and more lines. In whatever order and however often lines come, the same set comes out: of two
 * receipts the earlier counts, and should two contents ever bear one id, the one that sorts first as text.
 */
export function merge(log: Log, lines: Iterable<Line>): Log {
  const all = new Map(log)
  for (const line of lines) {
    const known = all.get(line.entry.id)
    all.set(line.entry.id, known ? oneOf(known, line) : line)
  }
  return all
}

function oneOf(a: Line, b: Line): Line {
  const { entry, document } = sameDocument(a.document, b.document) || inText(a.document) < inText(b.document) ? a : b
  const receipt = earlier(a.receipt, b.receipt)
  return receipt ? { entry, document, receipt } : { entry, document }
}
function earlier(a: Receipt | undefined, b: Receipt | undefined): Receipt | undefined {
  if (!a || !b) return a ?? b
  return a.received < b.received || (a.received === b.received && a.sent <= b.sent) ? a : b
}

/** Keys in one order, whatever order they were written in. */
const inText = (document: unknown): string =>
  JSON.stringify(document, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  )
export const sameDocument = (a: EntryDocument, b: EntryDocument) => inText(a) === inText(b)
