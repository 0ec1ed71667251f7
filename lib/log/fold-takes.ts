import type { Timed } from './corrections'
import type { Take } from './day-state'
import type { CallProgress, Entry, EntryOf } from './entry'
import { groupBy } from './group-by'

type TakeEntry = EntryOf<'take'>
const keyOf = ({ shot, slate, take, camera }: TakeEntry) => JSON.stringify([shot, slate, take, camera])

/** Entries of one shot, slate, take and camera tell one take, from roll to verdict. In order of their first entry. */
export function foldTakes(entries: readonly Timed<TakeEntry>[]): Take[] {
  return [...groupBy(entries, ({ entry }) => keyOf(entry)).values()].map(takeOf)
}

function takeOf(entries: readonly Timed<TakeEntry>[]): Take {
  const first = (entries[0] as Timed<TakeEntry>).entry
  const last = <V>(value: (entry: TakeEntry) => V | undefined): V | null =>
    entries.map(({ entry }) => value(entry)).findLast((one) => one !== undefined) ?? null
  const from = entries.find(({ entry }) => entry.roll === 'start')?.at ?? null
  // A verdict is given when the camera has stopped, whether or not anybody said so.
  const ended = entries.find(({ entry, at }) => entry.roll === 'end' || (entry.verdict && at >= (from ?? at)))
  return {
    shot: first.shot ?? null,
    slate: first.slate ?? null,
    take: first.take,
    camera: first.camera,
    from,
    to: ended?.at ?? null,
    rolling: from !== null && !ended,
    timecode: entries.find(({ entry }) => entry.timecode)?.entry.timecode ?? null,
    verdict: last((entry) => entry.verdict),
    notes: entries.flatMap(({ entry }) => (entry.note ? [entry.note] : [])),
  }
}

/** What an entry says of its shot, if it says anything: the last that does counts. */
export function shotStateOf(entry: Entry): { readonly shot: string; readonly state: CallProgress } | null {
  if (entry.kind === 'shot-state') return { shot: entry.shot, state: entry.state }
  if (entry.kind !== 'take' || entry.shot === undefined) return null
  if (entry.verdict === 'good') return { shot: entry.shot, state: 'caught' }
  if (entry.verdict) return { shot: entry.shot, state: 'standby' }
  return entry.roll === 'start' ? { shot: entry.shot, state: 'roll' } : null
}
