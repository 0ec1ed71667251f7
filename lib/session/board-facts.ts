import type { Layout, PlacedShot } from '../day/layout'
import { lightBands } from '../day/sun'
import type { MomentId } from '../model/moment-ids'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { tasksOf } from '../plan/side-tasks'
import { type Instant, instant } from '../units'

/** What the set board knows of the day besides the live session: made once where shoot and layout are, sent to the phone. */
export interface BoardFacts {
  readonly title: string
  readonly zone: string
  readonly people: readonly BoardPerson[]
  readonly cameras: readonly string[]
  readonly cooks: readonly BoardCook[]
  readonly shots: Readonly<Record<string, BoardShot>>
  /** Shots without a place this morning: a re-plan may bring them in. */
  readonly spare?: Readonly<Record<string, Pick<BoardShot, 'number' | 'title' | 'place' | 'food'>>>
  readonly tasks: readonly BoardSpan[]
  readonly meals: readonly BoardSpan[]
  /** When the sun is down. */
  readonly dark: readonly { readonly from: Instant; readonly to: Instant }[]
}
export interface BoardPerson {
  readonly id: string
  readonly name: string
  readonly roles: readonly string[]
}
export interface Span95 {
  readonly early: Instant | null
  readonly likely: Instant | null
  readonly late: Instant | null
}
/** What is planned and may be said of a roast before it has a live forecast. */
export interface PlannedCook {
  readonly windows: Readonly<Partial<Record<MomentId, Span95>>>
  readonly tasting: { readonly allowed: boolean; readonly why: string }
  /** Whose rules its food clock goes by, in words. */
  readonly whose: string
}
export interface BoardCook extends PlannedCook {
  readonly id: string
  /** It has vents and a lid. */
  readonly burns: boolean
}
export interface BoardShot {
  readonly number: number
  readonly title: string
  readonly place: string | null
  readonly cameras: readonly string[]
  readonly people: readonly string[]
  readonly setupStart: Instant
  readonly start: Instant
  readonly end: Instant
  readonly food: string | null
}
export interface BoardSpan {
  readonly id: string
  readonly title: string
  readonly start: Instant
  readonly end: Instant
  readonly people: readonly string[]
}

const DAY_MS = 86_400_000

export function boardFacts(
  shoot: Shoot,
  layout: Layout,
  planned: Readonly<Record<string, PlannedCook>>,
  burns: (cooker: string) => boolean,
): BoardFacts {
  const tasks = new Map(tasksOf(shoot).map((task) => [task.id, task.title]))
  return {
    title: shoot.title,
    zone: shoot.zone,
    people: (shoot.people ?? []).map(({ id, name, roles }) => ({ id, name: name ?? id, roles })),
    cameras: (shoot.cameras ?? []).map(({ id }) => id),
    cooks: shoot.cooks.flatMap(({ id, cooker }) => {
      const known = planned[id]
      return known ? [{ id, burns: burns(cooker.kind), ...known }] : []
    }),
    ...shotsOf(shoot, layout),
    tasks: layout.tasks.map((task) => spanOf(task.id, tasks.get(task.id) ?? task.id, task)),
    meals: layout.meals.map((meal, i) => spanOf(`meal-${i}`, 'Meal', meal)),
    dark: darkOf(shoot.place, fromIso(layout.start)),
  }
}

const spanOf = (
  id: string,
  title: string,
  { start, end, people }: { readonly start: string; readonly end: string; readonly people: readonly string[] },
): BoardSpan => ({ id, title, start: fromIso(start), end: fromIso(end), people })

function shotsOf(shoot: Shoot, { shots }: Layout): Pick<BoardFacts, 'shots' | 'spare'> {
  const placed = new Map(shots.map((shot) => [shot.id, shot]))
  const all = (shoot.shots ?? []).map(({ id, title, place, state }, i) => {
    const known = { number: i + 1, title, place: place ?? null, food: state ?? null }
    return { id, known, at: placed.get(id) }
  })
  return {
    shots: Object.fromEntries(all.flatMap(({ id, known, at }) => (at ? [[id, { ...known, ...placeOf(at) }]] : []))),
    spare: Object.fromEntries(all.flatMap(({ id, known, at }) => (at ? [] : [[id, known]]))),
  }
}
const placeOf = ({ camera, people, setupStart, start, end }: PlacedShot) => ({
  cameras: camera,
  people,
  setupStart: fromIso(setupStart),
  start: fromIso(start),
  end: fromIso(end),
})

/** From the day before to two days on, whatever the day becomes. */
function darkOf(place: { readonly lat: number; readonly lon: number }, around: Instant): BoardFacts['dark'] {
  const [from, to] = [instant(around - DAY_MS), instant(around + 2 * DAY_MS)]
  const days = lightBands(place, from, to).filter(({ light }) => light === 'daylight')
  const edges = [from, ...days.flatMap(({ start, end }) => [start, end]), to]
  const spans = []
  for (let i = 0; i + 1 < edges.length; i += 2) spans.push({ from: edges[i] as Instant, to: edges[i + 1] as Instant })
  return spans.filter((span) => span.to > span.from)
}
