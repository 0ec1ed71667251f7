import { whenText } from '@/lib/log/entry-words'
import { instant } from '@/lib/units'
import type { EntryDraft } from '../set-feed'

/** A time put right is read off the board, which has the server's; the log takes every time by the clock of who logs. */
export function byOwnClock(draft: EntryDraft, aheadMs: number): EntryDraft {
  const put = draft.put as { readonly at?: string } | undefined
  if (put?.at === undefined) return draft
  return { ...draft, put: { ...put, at: whenText(instant(Date.parse(put.at) + aheadMs)) } }
}
