import type { DayState } from '../log/day-state'
import type { EntryOf } from '../log/entry'
import type { BoardFacts, BoardShot, BoardSpan } from './board-facts'
import type { SessionDay, SessionShot } from './session-day'

export type Move = NonNullable<EntryOf<'plan-change'>['moves']>[number]

/** The last place of everything that a re-plan moved and sent to the crew, by id. */
export function movesOf({ changes }: Pick<DayState, 'changes'>): ReadonlyMap<string, Move> {
  const moves = changes.flatMap(({ entry }) => (entry.kind === 'plan-change' ? (entry.moves ?? []) : []))
  return new Map(moves.map((move) => [move.id, move]))
}

/** The day as it was announced, with what was sent since. */
export function factsNow(facts: BoardFacts, told: Pick<DayState, 'changes'>): BoardFacts {
  const moves = movesOf(told)
  if (moves.size === 0) return facts
  const span = (id: string, one: BoardSpan): BoardSpan => ({ ...one, ...placeOf(moves.get(id)) })
  const tasks = byShift(facts.tasks).map(([id, task]) => span(id, task))
  const shots = Object.entries(facts.shots).map(([id, shot]) => [id, shotNow(shot, moves.get(`shot-${id}`))])
  return { ...facts, shots: Object.fromEntries(shots), tasks, meals: facts.meals.map((meal) => span(meal.id, meal)) }
}
const placeOf = (move: Move | undefined) => move && { start: move.start, end: move.end, people: move.people }
const shotNow = (shot: BoardShot, move: Move | undefined): BoardShot =>
  move
    ? { ...shot, ...placeOf(move), setupStart: move.setup ?? move.start, cameras: move.cameras ?? shot.cameras }
    : shot

/** A task in shifts has one id: the first shift keeps it, each later one is numbered. */
export function byShift<T extends { readonly id: string }>(spans: readonly T[]): (readonly [string, T])[] {
  const seen = new Map<string, number>()
  return spans.map((span) => {
    const shift = (seen.get(span.id) ?? 0) + 1
    seen.set(span.id, shift)
    return [shift === 1 ? span.id : `${span.id}/${shift}`, span] as const
  })
}

/** Whom the live day calls, shoots with and feeds, as they were told last. */
export function dayNow(day: SessionDay, told: Pick<DayState, 'changes'>): SessionDay {
  const moves = movesOf(told)
  if (moves.size === 0) return day
  const shots = Object.entries(day.shots).map(([id, shot]) => [id, peopledNow(shot, moves.get(`shot-${id}`))])
  return {
    ...day,
    calls: day.calls.map((call) => ({ ...call, people: moves.get(`shot-${call.shot}`)?.people ?? call.people })),
    shots: Object.fromEntries(shots),
    meals: day.meals.map((meal, i) => {
      const move = moves.get(`meal-${i}`)
      return move ? { start: move.start, people: move.people } : meal
    }),
  }
}
/** Behind a camera stand as many as did, or as the cameras it has now; a locked-off camera holds nobody. */
function peopledNow(shot: SessionShot, move: Move | undefined): SessionShot {
  if (!move || shot.operators.length + shot.inShot.length === 0) return shot
  const behind = move.cameras?.length ?? shot.operators.length
  return { ...shot, operators: move.people.slice(0, behind), inShot: move.people.slice(behind) }
}
