import type { DayState } from '../log/day-state'
import { formatClock } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { Note } from '../session/continuity'
import { type Seconds, seconds, type UnitSystem } from '../units'
import { namesOf } from './call-words'
import { factWords } from './captions'
import { type FilmFacts, filmFacts } from './film-facts'

/** One note as the report prints it. */
export interface SeenThen {
  readonly id: string
  readonly clock: string
  readonly text: string
  /** The name of its photograph. */
  readonly photo: string | null
  /** Roast, state, who said it. */
  readonly of: string
  /** What the log knew of the roast then. */
  readonly facts: string | null
}
export interface SeenGroup {
  readonly title: string
  readonly takes: string
  readonly notes: readonly SeenThen[]
}
export interface ContinuityReport {
  readonly shots: readonly SeenGroup[]
  /** Notes of no shot, by roast and by the state of the food. */
  readonly roasts: readonly SeenGroup[]
}

/** How it looked: the day's notes and photographs by shot in the plan's order, the rest by roast and state. */
export function continuityReport(shoot: Shoot, day: DayState, units: UnitSystem): ContinuityReport {
  const facts = new Map(shoot.cooks.map(({ id }) => [id, filmFacts(shoot, day, id)]))
  const seen = (note: Note) => seenThen(shoot, note, facts, units)
  const known = new Set((shoot.shots ?? []).map(({ id }) => id))
  const loose = day.notes.filter(({ entry }) => entry.shot === undefined || !known.has(entry.shot))
  const shots = (shoot.shots ?? []).map((shot, i) => ({
    title: `${i + 1} ${shot.title}`,
    takes: takesOf(day, shot.id),
    notes: day.notes.filter(({ entry }) => entry.shot === shot.id).map(seen),
  }))
  return { shots: shots.filter(({ notes }) => notes.length > 0), roasts: byRoast(loose, seen) }
}

function byRoast(notes: readonly Note[], seen: (note: Note) => SeenThen): SeenGroup[] {
  const titles = notes.map(({ entry }) => [entry.cook, entry.state].filter(Boolean).join(', ') || 'Of the day')
  return [...new Set(titles)].sort().map((title) => ({
    title,
    takes: '',
    notes: notes.filter((_, i) => titles[i] === title).map(seen),
  }))
}

/** "A take 2 good: Soft at the end." */
const takesOf = (day: DayState, shot: string) =>
  day.takes
    .filter((take) => take.shot === shot)
    .map(({ camera, take, verdict, notes }) => {
      const said = notes.length > 0 ? `: ${notes.join(' ')}` : ''
      return `${camera} take ${take} ${verdict?.replace('-', ' ') ?? 'without a verdict'}${said}`
    })
    .join('; ')

type Facts = ReadonlyMap<string, FilmFacts | null>
function seenThen(shoot: Shoot, { entry, at }: Note, facts: Facts, units: UnitSystem): SeenThen {
  const cook = entry.cook ?? shoot.shots?.find(({ id }) => id === entry.shot)?.cook ?? shoot.cooks[0]?.id ?? ''
  const known = facts.get(cook)
  const since = known ? seconds((at - known.meatOn) / 1000) : null
  const who = entry.by.person === undefined ? entry.by.device : namesOf({ shoot }, [entry.by.person])[0]
  return {
    id: entry.id,
    clock: formatClock(at, shoot.zone),
    text: entry.text,
    photo: entry.photo ?? null,
    of: [entry.cook, entry.state, who].filter(Boolean).join(', '),
    facts: known && isCooking(since) ? factWords(known, Math.floor(since / 60), units) : null,
  }
}
const isCooking = (since: Seconds | null): since is Seconds => since !== null && since >= 0
