import type { Layout } from '../day/layout'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { tasksOf } from '../plan/side-tasks'
import { type Instant, instant } from '../units'
import { byShift } from './re-planned'
import type { Expected, Session } from './session'
import type { SessionDay } from './session-day'

/** One thing that a re-plan moves, before anybody is told. */
export interface PlannedMove {
  readonly id: string
  readonly title: string
  /** When people must be there; null where it is new, or dropped. */
  readonly from: Instant | null
  readonly to: Instant | null
  /** Everybody who must know. */
  readonly people: readonly string[]
  /** A call at a moment, which the forecast moves. */
  readonly byMoment: boolean
  /** With other people or cameras. */
  readonly recast?: boolean
  /** Its new place as an entry has it; null for what is dropped. */
  readonly place: {
    readonly setup?: string
    readonly start: string
    readonly end: string
    readonly people: readonly string[]
    readonly cameras?: readonly string[]
  } | null
}
interface Item {
  readonly id: string
  readonly title: string
  readonly from: string
  readonly key: string
  readonly people: readonly string[]
  readonly byMoment: boolean
  readonly place: PlannedMove['place']
}

/** Less than this nobody needs to be told of. [estimate] */
const TOLD_FROM_MS = 60_000

/**
 * Every move from the day that was announced to the one laid out anew, in order of time; what has begun is past. `gone`:
 * what stands in the announced day and was dropped since.
 */
export function comparePlans(
  shoot: Shoot,
  before: Layout,
  after: Layout,
  now: Instant,
  gone: ReadonlySet<string> = new Set(),
): readonly PlannedMove[] {
  const [old, fresh] = [itemsOf(shoot, before), itemsOf(shoot, after)]
  for (const id of gone) old.delete(id)
  const ids = [...new Set([...old.keys(), ...fresh.keys()])]
  const moves = ids.flatMap((id): PlannedMove[] => {
    const [a, b] = [old.get(id), fresh.get(id)]
    const title = (b ?? a)?.title ?? id
    const people = [...new Set([...(a?.people ?? []), ...(b?.people ?? [])])]
    const [from, to] = [a ? fromIso(a.from) : null, b ? fromIso(b.from) : null]
    if (a && b && a.key === b.key && Math.abs((from ?? 0) - (to ?? 0)) < TOLD_FROM_MS) return []
    if ((from ?? now) <= now && (to ?? now) <= now) return []
    const byMoment = (b ?? a)?.byMoment ?? false
    return [{ id, title, from, to, people, byMoment, recast: a?.key !== b?.key, place: b?.place ?? null }]
  })
  return moves.sort((a, b) => (a.to ?? a.from ?? 0) - (b.to ?? b.from ?? 0))
}

interface Calls {
  readonly day: Pick<SessionDay, 'calls'>
  readonly calls: Session['calls']
}
/**
 * A call at a moment is where the live day has it, and moves as its moment is expected now: what only the forecast
 * moves, and has moved already, is no move.
 */
export function asCalled(moves: readonly PlannedMove[], { day, calls }: Calls, expected: readonly Expected[]) {
  return moves.flatMap((move): PlannedMove[] => {
    const call = day.calls.find(({ shot }) => move.id === `shot-${shot}`)
    const { announced = null, likely = null } = (call && calls[call.id]) ?? {}
    const next = expected.find(({ cook, moment }) => cook === call?.cook && moment === call.moment)?.likely
    if (announced === null || move.from === null || move.to === null) return [move]
    const byMs = likely === null || next === undefined ? 0 : next - likely
    if (Math.abs(byMs) < TOLD_FROM_MS && !move.recast) return []
    return [{ ...move, from: announced, to: instant(announced + byMs) }]
  })
}

function itemsOf(shoot: Shoot, layout: Layout): Map<string, Item> {
  const titles = new Map((shoot.shots ?? []).map(({ id, title }) => [id, title]))
  const tasks = new Map(tasksOf(shoot).map(({ id, title }) => [id, title]))
  const called = new Set(layout.calls.filter(({ moment }) => moment !== null).map((call) => call.for))
  const shots = layout.shots.map((shot): Item => {
    const { setupStart: setup, start, end, people, camera: cameras } = shot
    const place = { setup, start, end, people, cameras }
    const key = [...people, ...cameras].join()
    return {
      id: `shot-${shot.id}`,
      title: titles.get(shot.id) ?? shot.id,
      from: setup,
      key,
      people,
      byMoment: called.has(shot.id),
      place,
    }
  })
  const spans = [
    ...byShift(layout.tasks).map(([id, task]) => ({ ...task, id, title: tasks.get(task.id) ?? task.id })),
    ...layout.meals.map((meal, i) => ({ ...meal, id: `meal-${i}`, title: 'Meal' })),
  ]
  const others = spans.map(({ id, title, start, end, people }): Item => {
    return { id, title, from: start, key: people.join(), people, byMoment: false, place: { start, end, people } }
  })
  return new Map([...shots, ...others].map((item) => [item.id, item]))
}
