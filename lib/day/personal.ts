import type { Draft, DutyPlace, Place } from './draft'
import { ALL_DAY } from './hours'
import type { DayProblem } from './problem'
import { RULES } from './rules'

/** When each person comes and may leave; minutes of the day. Nobody is listed who is not needed. */
export interface PersonDay {
  readonly person: number
  readonly call: number
  readonly wrap: number
}

/**
 * Calls staggered by need: so long before somebody's own first setup or task that they arrive, to the five minutes, and
 * not before the crew; only who lights the fire may come sooner. They leave when their own last need is struck.
 */
export function personalDays(problem: DayProblem, draft: Draft, duties: readonly DutyPlace[]): PersonDay[] {
  const needs = problem.crew.people.map((): { start: number; end: number; lights: boolean }[] => [])
  const add = (people: readonly number[], start: number, end: number, lights = false) => {
    for (const p of people) needs[p]?.push({ start, end, lights })
  }
  const stand = (place: Place | null | undefined, locked: boolean) => {
    if (!place) return
    // A locked-off camera is taken down by whoever set it up.
    add([...place.mode.operators, ...place.mode.hands], place.setupStart, locked ? place.start : place.end)
  }
  for (const place of draft.moments) stand(place, false)
  for (const [i, job] of problem.floats.entries()) stand(draft.floats[i], job.span !== null)
  for (const duty of duties) {
    const task = problem.tasks[duty.task]?.task
    add(duty.people, duty.start, duty.end, task?.from === 'fire-lit')
  }
  return needs.flatMap((own, person) => {
    const first = own.reduce((a, b) => (b.start < a.start ? b : a), own[0] ?? { start: 0, end: 0, lights: false })
    if (own.length === 0) return []
    const wanted = Math.floor((first.start - RULES.arrivalMin) / 5) * 5
    // The fire does not wait for the crew.
    const soonest = first.lights ? wanted : Math.max(wanted, draft.crewCall)
    const { from } = problem.hours[person] ?? ALL_DAY
    const call = Math.max(soonest, Math.min(first.start, from))
    const last = Math.max(...own.map((n) => n.end))
    // Who watches a fire out stays after the others have gone.
    return [{ person, call, wrap: Math.max(last, Math.min(draft.wrap, Math.ceil((last + RULES.strikeMin) / 5) * 5)) }]
  })
}
