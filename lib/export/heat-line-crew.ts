import type { Layout } from '../day/layout'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { sideTaskIds } from '../plan/side-tasks'
import { type Instant, instant } from '../units'
import type { CrewFacts, ShotFact } from './heat-line-facts'
import { cameraName, isCalledLive, isOperator, liveFrom, personName, usualOperator } from './lanes'
import { shotNumbers } from './shot-numbers'

/** Who films what when, as the picture's lanes and its read-out need it. */
export function crewFacts(shoot: Shoot, layout: Layout): CrewFacts {
  const first = shoot.cooks[0]?.id
  return {
    cameras: (shoot.cameras ?? []).map(({ id }) => ({
      id,
      name: cameraName(shoot, layout, id),
      operator: usualOperator(shoot, layout, id),
    })),
    people: (shoot.people ?? []).map((person) => ({
      id: person.id,
      name: personName(person),
      operator: isOperator(person),
    })),
    shots: shotFacts(shoot, layout),
    meals: mealsTogether(layout),
    sides: (shoot.sides ?? []).flatMap((side) => {
      const ids = sideTaskIds(side)
      const [on, off] = [ids.on, ids.off].map((id) => layout.tasks.find((task) => task.id === id))
      return on && off ? [{ name: side.title, on: fromIso(on.start), off: fromIso(off.end) }] : []
    }),
    tentative: tentative(layout),
    called: layout.calls.flatMap((call) =>
      call.moment && call.cook === first ? [{ moment: call.moment, shot: call.for }] : [],
    ),
  }
}

function shotFacts(shoot: Shoot, layout: Layout): ShotFact[] {
  const numbers = shotNumbers(shoot)
  const asked = new Map((shoot.shots ?? []).map((shot) => [shot.id, shot]))
  const shots = layout.shots.map((placed): ShotFact => {
    const shot = asked.get(placed.id)
    return {
      id: placed.id,
      number: String(numbers.get(placed.id) ?? '?'),
      title: shot?.title ?? placed.id,
      free: shot?.at === undefined,
      cameras: placed.camera,
      people: placed.people,
      place: shot?.place ?? null,
      setup: fromIso(placed.setupStart),
      start: fromIso(placed.start),
      end: fromIso(placed.end),
      live: isCalledLive(placed, layout),
      hard: placed.hold === 'hard',
    }
  })
  return shots.sort((a, b) => a.start - b.start)
}

function mealsTogether({ meals }: Layout): CrewFacts['meals'] {
  const times = [...new Set(meals.map((meal) => `${meal.start} ${meal.end}`))]
  return times.map((time) => {
    const together = meals.filter((meal) => `${meal.start} ${meal.end}` === time)
    const [start = '', end = ''] = time.split(' ')
    return { start: fromIso(start), end: fromIso(end), people: together.flatMap((meal) => meal.people) }
  })
}

/** From the earliest possible standby of a call made live to the end of the last such shot. */
function tentative(layout: Layout): { from: Instant; to: Instant } | null {
  const from = liveFrom(layout)
  if (from === null) return null
  const ends = layout.shots
    .filter((shot) => isCalledLive(shot, layout))
    .map((shot) => {
      const late = layout.calls.find((call) => call.for === shot.id)?.window.late
      return Math.max(fromIso(shot.end), late ? fromIso(late) : 0)
    })
  return { from, to: instant(Math.max(from, ...ends)) }
}
