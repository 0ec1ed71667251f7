import type { Instant } from '../units'
import type { Entry, EntryOf } from './entry'
import type { EntryId } from './entry-id'
import { groupBy } from './group-by'
import type { Line, Log } from './log'
import { plainEntry } from './plain-entry'
import { Clocks } from './skew'

/** A line with its time by the server's clock. */
export interface Timed<E extends Entry = Entry> {
  readonly entry: E
  readonly at: Instant
}
/** What became of a correction: `taken-back` by a later one, `waiting` for the entry it names, `unreadable` as corrected. */
export interface CorrectionTold {
  readonly id: EntryId
  readonly corrects: EntryId
  readonly at: Instant
  readonly outcome: 'applied' | 'taken-back' | 'waiting' | 'unreadable'
  readonly sentence?: string
}
export interface Standing {
  /** In order of time, of two alike by id. */
  readonly entries: readonly Timed[]
  readonly corrections: readonly CorrectionTold[]
  readonly clocks: Clocks
}

export const byTime = (a: Timed, b: Timed) => a.at - b.at || (a.entry.id < b.entry.id ? -1 : 1)
type Correction = Timed<EntryOf<'correction'>>

/** The lines that stand once every correction in force is applied. The log itself keeps them all. */
export function standing(log: Log): Standing {
  const clocks = new Clocks(log)
  const timed = [...log.values()].map((line) => ({ line, entry: line.entry, at: clocks.timeOf(line) })).sort(byTime)
  const corrections = timed.filter((one): one is Correction & { line: Line } => one.entry.kind === 'correction')
  const of = groupBy(corrections, ({ entry }) => entry.corrects)
  const told: CorrectionTold[] = []
  const kept = timed.flatMap(({ line, at }): Timed[] => {
    if (line.entry.kind === 'correction') return []
    const inForce = (of.get(line.entry.id) ?? []).filter((c) => counts(c, of))
    const { result, unread } = corrected(line, at, inForce)
    told.push(...inForce.map((c) => tell(c, unread.get(c.entry.id))))
    return result ? [result] : []
  })
  const done = new Set(told.map(({ id }) => id))
  for (const c of corrections.filter(({ entry }) => !done.has(entry.id)))
    told.push({
      ...named(c),
      outcome: counts(c, of) ? (log.has(c.entry.corrects) ? 'applied' : 'waiting') : 'taken-back',
    })
  return { entries: kept.sort(byTime), corrections: told.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1)), clocks }
}

type ByCorrected = ReadonlyMap<EntryId, readonly Correction[]>
/** In force unless a correction in force voids it; two that void each other both fall. */
function counts({ entry }: Correction, of: ByCorrected, path: readonly EntryId[] = []): boolean {
  const against = (of.get(entry.id) ?? []).filter((c) => c.entry.void && !path.includes(c.entry.id))
  return !against.some((c) => counts(c, of, [...path, entry.id]))
}

const named = ({ entry, at }: Correction) => ({ id: entry.id, corrects: entry.corrects, at })
const tell = (c: Correction, sentence: string | undefined): CorrectionTold =>
  sentence === undefined ? { ...named(c), outcome: 'applied' } : { ...named(c), outcome: 'unreadable', sentence }

/** Field by field the last correction counts; one that leaves no readable entry is told, and passed over. */
function corrected(line: Line, at: Instant, corrections: readonly Correction[]) {
  const unread = new Map<EntryId, string>()
  let result: Timed | null = { entry: line.entry, at }
  let document = line.document
  for (const { entry, at: since } of corrections) {
    if (entry.void) result = null
    if (entry.void || result === null) continue
    const next = { ...document, ...entry.put }
    const read = plainEntry(next)
    if (!read.ok) {
      unread.set(entry.id, read.problems[0]?.sentence ?? '')
      continue
    }
    // A time put right was read off the corrector's clock.
    const ahead = entry.at - since
    const moved = entry.put && 'at' in entry.put ? ((read.value.at - ahead) as Instant) : result.at
    document = next
    result = { entry: read.value, at: moved }
  }
  return { result, unread }
}
