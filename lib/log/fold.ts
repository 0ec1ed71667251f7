import { standing, type Timed } from './corrections'
import type { Answer, ClockReading, DayState, FoodPlace, Mark, ShotState, Span } from './day-state'
import type { Entry, EntryOf } from './entry'
import { foldProbes } from './fold-probes'
import { foldTakes, shotStateOf } from './fold-takes'
import { groupBy } from './group-by'
import type { Log } from './log'
import { markKey } from './mark-key'
import { tellings } from './tellings'

/** The day as its log tells it: the same set of lines, in whatever order they came, gives the same state. */
export function foldLog(log: Log): DayState {
  const { entries, corrections, clocks } = standing(log)
  const skews = clocks.skews()
  const marks = foldMarks(of(entries, 'mark'))
  return {
    probes: foldProbes(of(entries, 'reading'), of(entries, 'probe-check')),
    marks,
    shots: foldShots(entries),
    answers: foldAnswers(of(entries, 'call-answer')),
    takes: foldTakes(of(entries, 'take')),
    notes: of(entries, 'note'),
    holds: foldHolds(entries),
    food: foldFood(of(entries, 'food')),
    fire: of(entries, 'fire'),
    meals: of(entries, 'meal'),
    late: of(entries, 'late'),
    changes: entries.filter((one): one is DayState['changes'][number] => CHANGES.has(one.entry.kind)),
    cameraClocks: foldClocks(of(entries, 'camera-clock')),
    corrections,
    skews,
    told: tellings({ marks, skews, corrections }),
  }
}
const CHANGES: ReadonlySet<Entry['kind']> = new Set(['plan-change', 'what-if-adopted'])

function of<K extends Entry['kind']>(entries: readonly Timed[], kind: K): Timed<EntryOf<K>>[] {
  return entries.filter((one): one is Timed<EntryOf<K>> => one.entry.kind === kind)
}

/** Keys in their own order, so that equal states are equal as text. */
export const sorted = <V>(map: ReadonlyMap<string, V>): Record<string, V> =>
  Object.fromEntries([...map].sort(([a], [b]) => (a < b ? -1 : 1)))

function foldMarks(marks: readonly Timed<EntryOf<'mark'>>[]): Record<string, Mark> {
  const found = new Map<string, Mark>()
  for (const { entry, at } of marks) {
    const { cook, moment, id, by } = entry
    const key = markKey(cook, moment)
    const first = found.get(key)
    const mark = { at, device: by.device }
    found.set(key, first ? { ...first, others: [...first.others, mark] } : { cook, moment, id, ...mark, others: [] })
  }
  return sorted(found)
}

function foldAnswers(answers: readonly Timed<EntryOf<'call-answer'>>[]): Record<string, readonly Answer[]> {
  const found = new Map<string, Answer[]>()
  for (const { entry, at } of answers) {
    const answer: Answer = { answer: entry.answer, person: entry.by.person ?? null, at, to: entry.to ?? null }
    found.set(entry.call, [...(found.get(entry.call) ?? []), answer])
  }
  return sorted(found)
}

function foldShots(entries: readonly Timed[]): Record<string, ShotState> {
  const found = new Map<string, ShotState>()
  for (const { entry, at } of entries) {
    const said = shotStateOf(entry)
    if (said) found.set(said.shot, { state: said.state, since: at, ...reasonOf(entry) })
  }
  return sorted(found)
}

function foldClocks(read: readonly Timed<EntryOf<'camera-clock'>>[]): Record<string, readonly ClockReading[]> {
  const byCamera = groupBy(read, ({ entry }) => entry.camera)
  return sorted(
    new Map(
      [...byCamera].map(([camera, all]) => [camera, all.map(({ entry, at }) => ({ at, timecode: entry.timecode }))]),
    ),
  )
}

const reasonOf = (entry: Entry) => (entry.kind === 'shot-state' && entry.why !== undefined ? { why: entry.why } : {})

/** Out again while it is out does not start its time anew. */
function foldFood(entries: readonly Timed<EntryOf<'food'>>[]): Record<string, FoodPlace> {
  const found = new Map<string, FoodPlace>()
  for (const { entry, at } of entries) {
    const before = found.get(entry.cook)
    if (before?.is === 'out' && entry.is === 'out') continue
    found.set(entry.cook, { is: entry.is, at, times: (before?.times ?? 0) + (entry.is === 'out' ? 1 : 0) })
  }
  return sorted(found)
}

/** A hold that begins anew before the last one ended is another place of the same hold. */
function foldHolds(entries: readonly Timed[]): Span[] {
  const holds: Span[] = []
  for (const { entry, at } of entries) {
    if (entry.kind !== 'hold-start' && entry.kind !== 'hold-end') continue
    const open = holds.findIndex((hold) => hold.cook === entry.cook && hold.to === null)
    if (open >= 0) holds[open] = { ...(holds[open] as Span), to: at }
    if (entry.kind === 'hold-start') holds.push({ cook: entry.cook, from: at, to: null, in: entry.in })
  }
  return holds
}
