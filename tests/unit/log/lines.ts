import type { Entry, EntryDocument } from '../../../lib/log/entry'
import { entryId } from '../../../lib/log/entry-id'
import { whenText } from '../../../lib/log/fields'
import { EMPTY_LOG, type Line, type Log, merge } from '../../../lib/log/log'
import { readEntry } from '../../../lib/log/read-entry'
import { type Instant, instant } from '../../../lib/units'

export const NOON = Date.parse('2027-05-15T12:00:00Z')
/** So many minutes after noon. */
export const at = (minutes: number): Instant => instant(NOON + minutes * 60_000)

let made = 0
/** Ids of their own, in order of making. */
export function newId(minutes = 0): string {
  made++
  return entryId(
    at(minutes),
    Uint8Array.from({ length: 10 }, (_, i) => (i < 6 ? 0 : (made >> (8 * (9 - i))) & 255)),
  )
}

type Extra = {
  readonly id?: string
  readonly device?: string
  readonly person?: string
  readonly aheadS?: number
  readonly sentAfterMin?: number
  readonly unsent?: boolean
}
/** A line as a device writes it: `aheadS` is how far its clock runs ahead of the true minute given. */
export function line(minutes: number, kind: Entry['kind'], rest: EntryDocument, extra: Extra = {}): Line {
  const { id = newId(minutes), device = 'phone-a', person, aheadS = 0, sentAfterMin = 0, unsent = false } = extra
  const ahead = aheadS * 1000
  const document = {
    id,
    at: whenText(instant(at(minutes) + ahead)),
    by: person ? { device, person } : { device },
    kind,
    ...rest,
  }
  const read = readEntry(document)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const received = at(minutes + sentAfterMin)
  return unsent
    ? { entry: read.value, document }
    : { entry: read.value, document, receipt: { received, sent: instant(received + ahead) } }
}
export const logOf = (...lines: readonly Line[]): Log => merge(EMPTY_LOG, lines)
export const reading = (minutes: number, c: number, extra: Extra = {}, sensor = 'core') =>
  line(minutes, 'reading', { cook: 'hero', sensor, temp: `${c} °C` }, extra)
export const mark = (minutes: number, moment: string, extra: Extra = {}) =>
  line(minutes, 'mark', { cook: 'hero', moment }, extra)
