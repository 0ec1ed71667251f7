import type { EntryDocument } from '@/lib/log/entry'
import { entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import { whenText } from '@/lib/log/fields'
import { instant } from '@/lib/units'

export type Who = { readonly device: string; readonly person?: string }

/** A new line for the slate log, made on this phone. `getRandomValues` works without a secure context too. */
export function newEntry(by: Who, kind: string, rest: Readonly<Record<string, unknown>>): EntryDocument {
  const now = instant(Date.now())
  const id = entryId(now, crypto.getRandomValues(new Uint8Array(RANDOM_BYTES)))
  return { id, at: whenText(now), by, kind, ...rest }
}
