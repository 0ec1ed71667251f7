import type { Layout } from '../day/layout'
import { fromIso } from '../plan/clock'
import { type Instant, instant } from '../units'

/** Minutes to arrive, park and find the place before the first work; common practice, no source. */
const ARRIVE_MIN = 15
/** People are called on full five minutes. */
const GRID_MS = 5 * 60_000

/** When this person has to come: a little before the first thing they are needed for, never before the crew's call. */
export function ownCallAt(layout: Layout, person: string): Instant {
  const crew = fromIso(layout.crewCall)
  const has = ({ people }: { readonly people: readonly string[] }) => people.includes(person)
  const needed = [
    ...layout.shots.filter(has).map((shot) => shot.setupStart),
    ...layout.tasks.filter(has).map((task) => task.start),
    ...layout.meals.filter(has).map((meal) => meal.start),
  ].map(fromIso)
  if (needed.length === 0) return crew
  const come = Math.floor((Math.min(...needed) - ARRIVE_MIN * 60_000) / GRID_MS) * GRID_MS
  return instant(Math.max(crew, come))
}
