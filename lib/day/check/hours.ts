import { type Facts, nextDate, peopleSpan, type Span } from './facts'
import { LIMITS } from './limits'
import { type Violation, violation } from './violation'

/** When a person is there, ms; the whole day where the plan does not say. A clock time before the call is the next day's. */
export function hoursOf({ shoot, edge, clock }: Pick<Facts, 'shoot' | 'edge' | 'clock'>, person: string): Span {
  const hours = shoot.people?.find((p) => p.id === person)?.hours
  const start =
    hours?.from === undefined ? Number.NEGATIVE_INFINITY : (edge('', hours.from) ?? Number.NEGATIVE_INFINITY)
  if (hours?.to === undefined) return { start, end: Number.POSITIVE_INFINITY }
  let end = edge('', hours.to) ?? Number.POSITIVE_INFINITY
  // A shift that ends at an earlier time of day than it begins ends a day later.
  for (let date = shoot.date; end < start; ) {
    date = nextDate(date)
    end = clock.instantOf(date, hours.to)
  }
  return { start, end }
}

/** Nobody is in a shot, a task or a meal while they are not there. */
export function checkHours(facts: Facts): Violation[] {
  const spans = [
    ...facts.booked.map((b) => ({ what: facts.titleOf(b.id), people: b.people, shots: [b.id], ...peopleSpan(b) })),
    ...facts.duties.map((d) => ({
      what: `Task "${d.id}"`,
      people: d.people,
      shots: [] as string[],
      start: d.start,
      end: d.end,
    })),
    ...facts.meals.map((m) => ({
      what: 'The meal',
      people: m.people,
      shots: [] as string[],
      start: m.start,
      end: m.end,
    })),
  ]
  return spans.flatMap(({ what, people, shots, start, end }) =>
    people.flatMap((person) => {
      const there = hoursOf(facts, person)
      if (start >= there.start - LIMITS.graceMs && end <= there.end + LIMITS.graceMs) return []
      const at = facts.clock.show(start)
      return [violation('outside-hours', `${what} at ${at} has ${person}, who is not there then.`, shots, [person])]
    }),
  )
}
