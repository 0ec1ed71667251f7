import type { Call, Layout, PlacedShot } from '../day/layout'
import type { DayState } from '../log/day-state'
import { fromIso, toIso } from '../plan/clock'
import { type Instant, instant } from '../units'
import { byShift, goneOf, type Move, movesOf } from './re-planned'

type Told = Pick<DayState, 'changes' | 'shots'>

/** The layout with the last place of everything that a sent re-plan moved. */
function withMoves(layout: Layout, moves: ReadonlyMap<string, Move>, zone: string): Layout {
  if (moves.size === 0) return layout
  const iso = (at: Instant) => toIso(at, zone)
  const span = <T extends { start: string; end: string; people: readonly string[] }>(one: T, move?: Move): T =>
    move ? { ...one, start: iso(move.start), end: iso(move.end), people: move.people } : one
  const placed = (shot: PlacedShot): PlacedShot => {
    const move = moves.get(`shot-${shot.id}`)
    if (!move) return shot
    return { ...span(shot, move), setupStart: iso(move.setup ?? move.start), camera: move.cameras ?? shot.camera }
  }
  const found = layout.dropped.filter(({ id }) => moves.has(`shot-${id}`))
  const shots = [...layout.shots, ...found.map(({ id }) => blank(id))].map(placed)
  const tasks = byShift(layout.tasks).map(([id, task]) => span(task, moves.get(id)))
  const meals = layout.meals.map((meal, i) => span(meal, moves.get(`meal-${i}`)))
  const ends = [layout.wrap, ...[...shots, ...tasks, ...meals].map(({ end }) => end)].map(fromIso)
  return {
    ...layout,
    shots,
    tasks,
    meals,
    calls: layout.calls.map((call) => calledThen(call, layout, moves.get(`shot-${call.for}`), iso)),
    dropped: layout.dropped.filter((one) => !found.includes(one)),
    wrap: iso(instant(Math.max(...ends))),
  }
}
/** A shot that had no place this morning and was given one since. */
const blank = (id: string): PlacedShot => ({
  id,
  setupStart: '',
  start: '',
  end: '',
  people: [],
  camera: [],
  hold: 'tentative',
})

/** What calls people moves as much as what they are called for; what the probe must read stays. */
function calledThen(call: Call, layout: Layout, move: Move | undefined, iso: (at: Instant) => string): Call {
  const was = layout.shots.find(({ id }) => id === call.for)
  if (!move || !was) return call
  const by = move.start - fromIso(was.start)
  const later = (time: string | null) => (time === null ? null : iso(instant(fromIso(time) + by)))
  const { early, likely, late } = call.window
  const standby = call.standby === null ? null : iso(move.setup ?? move.start)
  const window = { early: later(early), likely: later(likely), late: later(late) }
  return { ...call, standby, window, people: move.people }
}

/** The day as everybody was told of it last: this morning's, what was sent since, and without what was dropped since. */
export function layoutNow(layout: Layout, told: Told, zone: string): Layout {
  const moved = placedNow(layout, told, zone)
  const gone = goneOf(told)
  if (gone.size === 0) return moved
  return {
    ...moved,
    tasks: byShift(moved.tasks).flatMap(([id, task]) => (gone.has(id) ? [] : [task])),
    meals: moved.meals.filter((_, i) => !gone.has(`meal-${i}`)),
  }
}

/** The same with its dropped tasks and meals still in their row, by which a re-plan names them. */
export function placedNow(layout: Layout, told: Told, zone: string): Layout {
  const moved = withMoves(layout, movesOf(told), zone)
  const isDropped = (id: string) => told.shots[id]?.state === 'dropped'
  const gone = moved.shots.filter(({ id }) => isDropped(id))
  if (gone.length === 0) return moved
  return {
    ...moved,
    shots: moved.shots.filter(({ id }) => !isDropped(id)),
    calls: moved.calls.filter((call) => !isDropped(call.for)),
    dropped: [...moved.dropped, ...gone.map(({ id }) => ({ id, why: 'Dropped on the day.', wouldSave: '' }))],
  }
}

/** When the crew was last sent a re-plan, how much it moved, and what it said. */
export interface LastRePlan {
  readonly at: Instant
  readonly moved: number
  readonly what: string
}
export function lastRePlan({ changes }: Pick<DayState, 'changes'>): LastRePlan | null {
  const last = changes.findLast(({ entry }) => entry.kind === 'plan-change' && entry.moves !== undefined)
  if (last?.entry.kind !== 'plan-change') return null
  return { at: last.at, moved: last.entry.moves?.length ?? 0, what: last.entry.what }
}
