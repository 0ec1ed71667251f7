import type { EntryId } from '@/lib/log/entry-id'
import type { Line } from '@/lib/log/log'
import type { Session } from '@/lib/session/session'
import { type Instant, instant } from '@/lib/units'

/** A line as the log page shows it: when by the server's clock, and what became of it. */
export interface LogItem {
  readonly line: Line
  readonly at: Instant
  /** Not confirmed by the server yet. */
  readonly waits: boolean
  readonly fate: 'stands' | 'void' | 'put-right'
  /** The correction by which it did not happen: taken back itself, it did. */
  readonly voidedBy: EntryId | null
}

/** Newest first. */
export function logItems({ log, told }: Session): readonly LogItem[] {
  const applied = new Map(
    told.corrections.filter(({ outcome }) => outcome === 'applied').map(({ id, corrects }) => [id, corrects]),
  )
  const fates = new Map<string, 'void' | 'put-right'>()
  const voids = new Map<string, EntryId>()
  for (const [id, corrects] of applied) {
    const entry = log.get(id)?.entry
    if (entry?.kind === 'correction' && (entry.void || !fates.has(corrects)))
      fates.set(corrects, entry.void ? 'void' : 'put-right')
    if (entry?.kind === 'correction' && entry.void) voids.set(corrects, id)
  }
  const items = [...log.values()].map((line): LogItem => {
    const ahead = told.skews[line.entry.by.device]?.ahead ?? 0
    return {
      line,
      at: instant(line.entry.at - ahead * 1000),
      waits: line.receipt === undefined,
      fate: fates.get(line.entry.id) ?? 'stands',
      voidedBy: voids.get(line.entry.id) ?? null,
    }
  })
  return items.sort((a, b) => b.at - a.at || (a.line.entry.id < b.line.entry.id ? 1 : -1))
}
