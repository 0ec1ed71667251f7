import type { DayState } from '../log/day-state'
import type { EntryOf } from '../log/entry'
import type { Instant } from '../units'
import type { BoardFacts, BoardShot, BoardSpan } from './board-facts'
import type { SessionDay } from './session-day'

type Move = NonNullable<EntryOf<'plan-change'>['moves']>[number]

/** The last place of everything that a re-plan moved and sent to the crew, by id. */
export function movesOf({ changes }: Pick<DayState, 'changes'>): ReadonlyMap<string, Move> {
  const moves = changes.flatMap(({ entry }) => (entry.kind === 'plan-change' ? (entry.moves ?? []) : []))
  return new Map(moves.map((move) => [move.id, move]))
}

/** The day as it was announced, with what was sent since. */
export function factsNow(facts: BoardFacts, told: Pick<DayState, 'changes'>): BoardFacts {
  const moves = movesOf(told)
  if (moves.size === 0) return facts
  const span = (one: BoardSpan): BoardSpan => ({ ...one, ...placeOf(moves.get(one.id)) })
  const shots = Object.entries(facts.shots).map(([id, shot]) => [id, shotNow(shot, moves.get(`shot-${id}`))])
  return { ...facts, shots: Object.fromEntries(shots), tasks: facts.tasks.map(span), meals: facts.meals.map(span) }
}
const placeOf = (move: Move | undefined) => move && { start: move.start, end: move.end, people: move.people }
const shotNow = (shot: BoardShot, move: Move | undefined): BoardShot =>
  move
    ? { ...shot, ...placeOf(move), setupStart: move.setup ?? move.start, cameras: move.cameras ?? shot.cameras }
    : shot

/** Meals as the crew was told of them last. */
export const mealsNow = (
  { meals }: SessionDay,
  told: Pick<DayState, 'changes'>,
): readonly { readonly start: Instant }[] => {
  const moves = movesOf(told)
  return meals.map((meal, i) => ({ start: moves.get(`meal-${i}`)?.start ?? meal.start }))
}
