import type { Timed } from '../log/corrections'
import type { EntryOf } from '../log/entry'
import type { Instant } from '../units'
import type { BoardFacts } from './board-facts'
import { allDuties, isOver } from './board-view'
import type { Session } from './session'

export type Note = Timed<EntryOf<'note'>>
/** A shot with what was noted of it, newest first. */
export interface ShotNotes {
  readonly shot: string
  readonly number: number | null
  readonly title: string
  readonly at: Instant
  readonly isOver: boolean
  /** The state in which it wants the food. */
  readonly food: string | null
  readonly notes: readonly Note[]
  /** Of a shot still to do without a note of its own: how the roast looked last. */
  readonly before: readonly Note[]
}
export interface Continuity {
  readonly shots: readonly ShotNotes[]
  /** Notes of no shot. */
  readonly other: readonly Note[]
}

/** So many shots ahead are worth a look. */
const AHEAD = 3
const SEEN_BEFORE = 2

/** What was noted, by shot: those still to do in their order first, then those that are done, the last of them first. */
export function continuityOf(session: Session, facts: BoardFacts): Continuity {
  const notes = [...session.told.notes].reverse()
  const cookOf = new Map(session.day.calls.map(({ shot, cook }) => [shot, cook]))
  const duties = allDuties(session, facts, null).filter(({ shot }) => shot !== null)
  const next = duties.find((duty) => !isOver(duty))
  const shots = duties.flatMap((duty): ShotNotes[] => {
    if (duty.shot === null) return []
    const { shot, number, title, sort } = duty
    const own = notes.filter(({ entry }) => entry.shot === shot)
    const over = isOver(duty)
    const food = facts.shots[shot]?.food ?? null
    const before = over || own.length > 0 ? [] : seenBefore(notes, cookOf.get(shot), food, duty === next)
    return [{ shot, number, title, at: sort, isOver: over, food, notes: own, before }]
  })
  const ahead = shots.filter((one) => !one.isOver)
  const done = shots.filter((one) => one.isOver && one.notes.length > 0).reverse()
  const known = new Set(shots.map(({ shot }) => shot))
  return {
    shots: [...ahead.filter((one, i) => i < AHEAD || one.notes.length > 0), ...done],
    other: notes.filter(({ entry }) => entry.shot === undefined || !known.has(entry.shot)),
  }
}

/** The latest of the same roast in the state that the shot wants; for the shot that is next the latest of any state too. */
function seenBefore(notes: readonly Note[], cook: string | undefined, food: string | null, isNext: boolean) {
  const same = notes.filter(({ entry }) => cook === undefined || entry.cook === undefined || entry.cook === cook)
  const inState = same.filter(({ entry }) => food !== null && entry.state === food)
  return [...new Set([...inState, ...(isNext ? same : [])])].slice(0, SEEN_BEFORE)
}
