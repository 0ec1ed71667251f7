import type { Instant } from '../units'
import type { Timed } from './corrections'
import type { Probe, Read } from './day-state'
import type { EntryOf } from './entry'
import { groupBy } from './group-by'

type Reading = Timed<EntryOf<'reading'>>
type Check = Timed<EntryOf<'probe-check'>>
export const probeKey = (cook: string, sensor: string) => `${cook}/${sensor}`
const keyOf = ({ entry }: Reading | Check) => probeKey(entry.cook, entry.sensor)

/** Every probe of the day, with what may be believed of its readings. */
export function foldProbes(readings: readonly Reading[], checks: readonly Check[]): Record<string, Probe> {
  const [read, checked] = [groupBy(readings, keyOf), groupBy(checks, keyOf)]
  const keys = [...new Set([...read.keys(), ...checked.keys()])].sort()
  return Object.fromEntries(keys.map((key) => [key, probeOf(read.get(key) ?? [], checked.get(key) ?? [])]))
}

/** A stretch of time; open where `to` is infinite. */
type Stretch = { from: number; to: number }

function probeOf(readings: readonly Reading[], checks: readonly Check[]): Probe {
  const { cook, sensor } = ((readings[0] ?? checks[0]) as Reading | Check).entry
  const wrong = stretches(checks, 'wrong', ['right'])
  const out = stretches(checks, 'pulled-out', ['in', 'moved'])
  const moves = checks.filter(({ entry }) => entry.found === 'moved' || entry.found === 'in').map(({ at }) => at)
  const placedAt = (at: Instant) => moves.filter((move) => move <= at).length
  const within = (all: readonly Stretch[], at: Instant) => all.some(({ from, to }) => from <= at && at < to)
  const said = readings.map(({ entry, at }) => ({ at, temp: entry.temp, id: entry.id, hand: entry.hand ?? false }))
  return {
    cook,
    sensor,
    placed: moves.length,
    out: out.at(-1)?.to === Number.POSITIVE_INFINITY,
    wrong: wrong.at(-1)?.to === Number.POSITIVE_INFINITY,
    // A reading by hand is of a thermometer that was put in for it.
    readings: said
      .filter(({ at, hand }) => !within(wrong, at) && (hand || !within(out, at)))
      .map((one) => ({ ...one, placed: placedAt(one.at) })),
    last: said.at(-1) ?? (null as Read | null),
  }
}

/** `from` of a check says since when: a probe that is found wrong has been so for a while. */
function stretches(checks: readonly Check[], begins: string, ends: readonly string[]): Stretch[] {
  const all: Stretch[] = []
  for (const { entry, at } of checks) {
    const open = all.at(-1)?.to === Number.POSITIVE_INFINITY ? (all.at(-1) as Stretch) : null
    const since = entry.from === undefined ? at : Math.min(at, entry.from - (entry.at - at))
    if (entry.found === begins && open) open.from = Math.min(open.from, since)
    if (entry.found === begins && !open) all.push({ from: since, to: Number.POSITIVE_INFINITY })
    if (ends.includes(entry.found) && open) open.to = Math.max(open.from, since)
  }
  return all
}
