import type { DayState } from '../log/day-state'
import type { EntryOf } from '../log/entry'
import { instant } from '../units'
import { pulledAsAdopted } from './adopted'
import type { BoardFacts, BoardShot, BoardSpan } from './board-facts'
import type { SessionDay, SessionShot } from './session-day'

/** Why a shot's state changed, as a sent re-plan logs it. */
export const RE_PLAN = 're-plan'
export type Move = NonNullable<EntryOf<'plan-change'>['moves']>[number]

/** The last place of everything that a re-plan moved and sent to the crew, by id; null for what it dropped. */
function placesOf({ changes }: Pick<DayState, 'changes'>): Map<string, Move | null> {
  const places = new Map<string, Move | null>()
  for (const { entry } of changes) {
    if (entry.kind !== 'plan-change') continue
    for (const move of entry.moves ?? []) places.set(move.id, move)
    for (const id of entry.gone ?? []) places.set(id, null)
  }
  return places
}
export const movesOf = (told: Pick<DayState, 'changes'>): ReadonlyMap<string, Move> =>
  new Map([...placesOf(told)].flatMap(([id, move]) => (move ? [[id, move] as const] : [])))
/** Tasks and meals that a re-plan dropped. */
export const goneOf = (told: Pick<DayState, 'changes'>): ReadonlySet<string> =>
  new Set([...placesOf(told)].flatMap(([id, move]) => (move ? [] : [id])))

/** The day as it was announced, with what was sent since. */
export function factsNow(facts: BoardFacts, told: Pick<DayState, 'changes'>): BoardFacts {
  const [moves, gone] = [movesOf(told), goneOf(told)]
  if (moves.size + gone.size === 0) return facts
  const spans = (all: readonly (readonly [string, BoardSpan])[]): BoardSpan[] =>
    all.flatMap(([id, one]) => (gone.has(id) ? [] : [{ ...one, ...placeOf(moves.get(id)) }]))
  const shots = { ...broughtIn(facts, moves), ...facts.shots }
  const known = new Set([...byShift(facts.tasks).map(([id]) => id), ...facts.meals.map(({ id }) => id)])
  const fresh = [...moves.values()].filter(({ id }) => !id.startsWith('shot-') && !known.has(id))
  const [meals, tasks] = [fresh.filter(({ id }) => isMeal(id)), fresh.filter(({ id }) => !isMeal(id))]
  const titles = new Map(facts.tasks.map(({ id, title }) => [id, title]))
  return {
    ...facts,
    shots: Object.fromEntries(Object.entries(shots).map(([id, shot]) => [id, shotNow(shot, moves.get(`shot-${id}`))])),
    tasks: [
      ...spans(byShift(facts.tasks)),
      ...tasks.map(({ id, ...at }) => ({ ...spanAt(at), id, title: titles.get(id.replace(/\/.*/, '')) ?? id })),
    ],
    meals: [
      ...spans(facts.meals.map((meal) => [meal.id, meal])),
      ...meals.map(({ id, ...at }) => ({ ...spanAt(at), id, title: 'Meal' })),
    ],
  }
}
const isMeal = (id: string) => id.startsWith('meal-')
const spanAt = ({ start, end, people }: Omit<Move, 'id'>) => ({ start, end, people })
/** Shots that had no place this morning and were given one since. */
function broughtIn({ spare = {} }: BoardFacts, moves: ReadonlyMap<string, Move>): Record<string, BoardShot> {
  return Object.fromEntries(
    Object.entries(spare).flatMap(([id, shot]) => {
      const move = moves.get(`shot-${id}`)
      if (!move) return []
      const at = { setupStart: move.setup ?? move.start, start: move.start, end: move.end }
      return [[id, { ...shot, ...at, people: move.people, cameras: move.cameras ?? [] }] as const]
    }),
  )
}
const placeOf = (move: Move | undefined) => move && spanAt(move)
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
  const pulled = pulledAsAdopted(day, told)
  const [moves, gone] = [movesOf(told), goneOf(told)]
  if (moves.size + gone.size === 0) return pulled
  const spare = (day.spare ?? []).filter(({ shot }) => moves.has(`shot-${shot}`))
  const shots = [...spare.map(({ shot, crew }) => [shot, crew] as const), ...Object.entries(day.shots)].map(
    ([id, shot]) => [id, peopledNow(shot, moves.get(`shot-${id}`))] as const,
  )
  return {
    ...pulled,
    calls: [...pulled.calls, ...spare.flatMap(({ call }) => call ?? [])].map((call) => {
      const move = moves.get(`shot-${call.shot}`)
      if (!move) return call
      // Called anew, it has no other time than the one that was sent.
      return { ...call, people: move.people, standby: call.standby ?? move.setup ?? move.start }
    }),
    shots: Object.fromEntries(shots),
    meals: [...day.meals, ...addedMeals(day, moves)].map((meal, i) => {
      const move = moves.get(`meal-${i}`)
      if (gone.has(`meal-${i}`)) return { ...meal, gone: true }
      return move ? { start: move.start, people: move.people } : meal
    }),
  }
}
/** Meals beyond this morning's, in their row. */
function addedMeals({ meals }: SessionDay, moves: ReadonlyMap<string, Move>): SessionDay['meals'] {
  const added = []
  for (let i = meals.length; moves.has(`meal-${i}`); i++) added.push({ start: instant(0), people: [] })
  return added
}
/** Behind a camera stand as many as did, or as the cameras it has now; a locked-off camera holds nobody. */
function peopledNow(shot: SessionShot, move: Move | undefined): SessionShot {
  if (!move || shot.locked) return shot
  const behind = move.cameras?.length ?? shot.operators.length
  return { ...shot, operators: move.people.slice(0, behind), inShot: move.people.slice(behind) }
}
