import { jsonFault } from '../plan/json-fault'
import type { Problem } from '../refusals'
import type { Instant } from '../units'
import type { EntryDocument } from './entry'
import { when, whenText } from './fields'
import type { Line, Receipt } from './log'
import { readEntry } from './read-entry'

/** What is wrong in which line of a log, counted from 1. */
export type LineFault = Problem & { readonly line: number }
export interface ReadLog {
  readonly lines: readonly Line[]
  readonly faults: readonly LineFault[]
}
/** A whole day with a reading each second is about 10 MB. */
const LONGEST_LINE = 100_000

/** One line of text a line of the log; `received` and `sent` are the server's receipt, where it has one. */
export const writeLine = ({ document, receipt }: Line): string =>
  JSON.stringify(
    receipt ? { ...document, received: whenText(receipt.received), sent: whenText(receipt.sent) } : document,
  )
export const writeLog = (lines: Iterable<Line>): string => [...lines].map((line) => `${writeLine(line)}\n`).join('')

/** Every line that reads, and every fault of those that do not; empty lines are nothing. */
export function readLog(text: string): ReadLog {
  const lines: Line[] = []
  const faults: LineFault[] = []
  for (const [i, written] of text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (written.trim() === '') continue
    const read = readLine(written)
    if ('problems' in read) faults.push(...read.problems.map((problem) => ({ line: i + 1, ...problem })))
    else lines.push(read)
  }
  return { lines, faults }
}

function readLine(written: string): Line | { readonly problems: readonly Problem[] } {
  const whole = (sentence: string) => ({ problems: [{ pointer: '', sentence }] })
  if (written.length > LONGEST_LINE) return whole('This line is far too long for one entry. Write one entry a line.')
  const fault = jsonFault(written)
  if (fault)
    return whole(
      fault
        .replace('The file is not JSON: in line 1,', 'This line is not JSON: in')
        .replace('the file ends', 'the line ends')
        .replace('a shoot file, which begins with {', 'an entry, which begins with {'),
    )
  const json: unknown = JSON.parse(written)
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return whole('This line holds no entry. Write { … }.')
  const { received, sent, ...document } = json as Record<string, unknown>
  const entry = readEntry(document)
  const receipt = readReceipt(received, sent)
  if (!entry.ok) return entry
  return 'problems' in receipt ? receipt : { entry: entry.value, document: document as EntryDocument, ...receipt }
}

function readReceipt(
  received: unknown,
  sent: unknown,
): { receipt?: Receipt } | { readonly problems: readonly Problem[] } {
  if (received === undefined && sent === undefined) return {}
  const at = (written: unknown, pointer: string): Instant | Problem => {
    const read = when.safeParse(written)
    return read.success ? read.data : { pointer, sentence: read.error.issues[0]?.message ?? '' }
  }
  const [got, gone] = [at(received, '/received'), at(sent ?? received, '/sent')]
  if (typeof got === 'number' && typeof gone === 'number') return { receipt: { received: got, sent: gone } }
  return { problems: [got, gone].filter((one): one is Problem => typeof one !== 'number') }
}
