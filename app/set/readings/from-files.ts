import type { EntryDocument } from '@/lib/log/entry'
import { type EntryId, entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import { FILE_DEVICE, whenText } from '@/lib/log/entry-words'
import type { Session } from '@/lib/session/session'
import type { Instant } from '@/lib/units'

/** What a probe has in the log from files. */
export interface FromFiles {
  readonly cook: string
  readonly sensor: string
  readonly from: Instant
  readonly to: Instant
  readonly standing: readonly EntryId[]
  /** The corrections that took readings back. */
  readonly takenBack: readonly EntryId[]
}

export function fromFiles({ log, told }: Pick<Session, 'log' | 'told'>): readonly FromFiles[] {
  const voids = new Map<EntryId, EntryId>()
  for (const { id, corrects, outcome } of told.corrections) {
    const entry = log.get(id)?.entry
    if (outcome === 'applied' && entry?.kind === 'correction' && entry.void) voids.set(corrects, id)
  }
  const found = new Map<string, FromFiles & { standing: EntryId[]; takenBack: EntryId[] }>()
  for (const { entry } of log.values()) {
    if (entry.kind !== 'reading' || entry.by.device !== FILE_DEVICE) continue
    const { cook, sensor, at, id } = entry
    const key = `${cook}/${sensor}`
    const known = found.get(key) ?? { cook, sensor, from: at, to: at, standing: [], takenBack: [] }
    const by = voids.get(id)
    if (by) known.takenBack.push(by)
    else known.standing.push(id)
    found.set(key, { ...known, from: earlier(at, known.from), to: later(at, known.to) })
  }
  return [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, one]) => one)
}

const earlier = (a: Instant, b: Instant) => Math.min(a, b) as Instant
const later = (a: Instant, b: Instant) => Math.max(a, b) as Instant

/** Corrections that take entries back; of a correction, that put back what it took. */
export const takeBack = (ids: readonly EntryId[], at: Instant, person: string | null): EntryDocument[] =>
  ids.map((corrects) => ({
    id: entryId(at, crypto.getRandomValues(new Uint8Array(RANDOM_BYTES))),
    at: whenText(at),
    by: person === null ? { device: FILE_DEVICE } : { device: FILE_DEVICE, person },
    kind: 'correction',
    corrects,
    void: true,
  }))
