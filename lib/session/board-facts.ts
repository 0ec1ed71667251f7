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
    shots: shotsOf(shoot, layout),
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

function shotsOf(shoot: Shoot, layout: Layout): BoardFacts['shots'] {
  const placed = new Map(layout.shots.map((shot) => [shot.id, shot]))
  return Object.fromEntries(
    (shoot.shots ?? []).flatMap((shot, i) => {
      const at = placed.get(shot.id)
      return at ? [[shot.id, shotOf(at, i + 1, shot)] as const] : []
    }),
  )
}
const shotOf = (
  { camera, people, setupStart, start, end }: PlacedShot,
  number: number,
  { title, place, state }: { readonly title: string; readonly place?: string; readonly state?: string },
): BoardShot => ({
  number,
  title,
  place: place ?? null,
  cameras: camera,
  people,
  setupStart: fromIso(setupStart),
  start: fromIso(start),
  end: fromIso(end),
  food: state ?? null,
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
