import type { Kept } from '@/lib/data/append-log'
import { BorderError } from '@/lib/data/border-error'
import type { KeptLine } from '@/lib/data/folder/log-journal'
import { when, whenText } from '@/lib/log/fields'
import type { Problem } from '@/lib/refusals'
import type { Instant } from '@/lib/units'
import type { Body } from '../../../border'

/** A phone that was cut off sends its queue in pieces of this size. */
export const MOST_ENTRIES = 500

/** What one sending holds: the sender's clock as it sends, and the entries. */
export function readSending(body: Body): { readonly sent: Instant; readonly entries: readonly unknown[] } {
  const sent = when.safeParse(body.sent)
  const problems: Problem[] = []
  if (!sent.success)
    problems.push({
      pointer: '/sent',
      sentence: `${sent.error.issues[0]?.message ?? ''} It is what the sender's clock says as it sends.`,
    })
  const { entries } = body
  const count = Array.isArray(entries) ? entries.length : 0
  if (count < 1 || count > MOST_ENTRIES)
    problems.push({ pointer: '/entries', sentence: `Write a list of 1 to ${MOST_ENTRIES} entries, [ … ].` })
  if (!sent.success || problems.length > 0) throw new BorderError('log-invalid', { problems })
  return { sent: sent.data, entries: entries as readonly unknown[] }
}

/** A sending of which nothing could be kept is refused as a whole, so that who sends by hand sees why. */
export function refuseIfAllAre(kept: readonly Kept[]): void {
  const refused = kept.filter((one) => one.became === 'refused')
  if (refused.length === kept.length)
    throw new BorderError('log-invalid', { problems: refused.flatMap(({ problems }) => problems) })
}

/** The position after which somebody wants the log: nothing or a whole number, from 0. */
export function readSince(written: string | null, pointer: string): number {
  if (written === null || written === '') return 0
  if (/^\d{1,9}$/.test(written)) return Number(written)
  const sentence = `"${written.slice(0, 20)}" is no position in the log. Write a whole number from 0, or leave it out for the whole log.`
  throw new BorderError('log-invalid', { problems: [{ pointer, sentence }], sentence })
}

/** A kept line as it leaves: the entry as it was written, with its receipt. */
export const lineText = ({ document, received, sent }: KeptLine): string =>
  JSON.stringify({ ...document, received: whenText(received as Instant), sent: whenText(sent as Instant) })
