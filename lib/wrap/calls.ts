import type { Answer, DayState } from '../log/day-state'
import { type Instant, type Seconds, seconds } from '../units'
import { happenedAt } from './moments'
import type { ToldCall } from './told'

/** One of those who were called: when they answered, stood ready, and how long they then stood. */
export interface Stood {
  readonly person: string
  readonly answered: Instant | null
  readonly ready: Instant | null
  readonly stood: Seconds | null
  /** Ready only so long after the moment. */
  readonly late: Seconds | null
}
export interface CallRow {
  readonly id: string
  readonly title: string
  readonly planned: Instant | null
  readonly called: Instant | null
  readonly why: string | null
  readonly happened: Instant | null
  readonly outcome: 'caught' | 'missed' | 'dropped' | 'not told'
  readonly people: readonly Stood[]
  /** The longest that anybody stood. */
  readonly stood: Seconds | null
}

/** In the order in which they were called. */
export const callRows = (calls: readonly ToldCall[], day: DayState): readonly CallRow[] =>
  calls.map((call) => rowOf(call, day)).sort((a, b) => orderOf(a) - orderOf(b))
const orderOf = ({ called, happened, planned }: CallRow) => called ?? happened ?? planned ?? Number.POSITIVE_INFINITY

function rowOf(call: ToldCall, day: DayState): CallRow {
  const happened = happenedAt(day, call.cook, call.moment) ?? rolledAt(day, call.shot)
  const people = call.people.map((person) => stoodOf(person, day.answers[call.id] ?? [], happened))
  const longest = Math.max(...people.map(({ stood }) => stood ?? Number.NEGATIVE_INFINITY))
  return {
    id: call.id,
    title: call.title,
    planned: call.standby,
    called: call.called,
    why: call.why,
    happened,
    outcome: outcomeOf(day.shots[call.shot]?.state ?? call.state),
    people,
    stood: Number.isFinite(longest) ? seconds(longest) : null,
  }
}

function rolledAt(day: DayState, shot: string): Instant | null {
  const rolled = day.takes.flatMap((take) => (take.shot === shot && take.from !== null ? [take.from] : []))
  return rolled.length > 0 ? (Math.min(...rolled) as Instant) : null
}
function outcomeOf(state: string): CallRow['outcome'] {
  return state === 'caught' || state === 'missed' || state === 'dropped' ? state : 'not told'
}

function stoodOf(person: string, answers: readonly Answer[], happened: Instant | null): Stood {
  const own = answers.filter((one) => one.person === person)
  const answered = own.find(({ answer }) => answer === 'coming' || answer === 'ready')?.at ?? null
  const ready = own.find(({ answer }) => answer === 'ready')?.at ?? null
  const known = ready !== null && happened !== null
  return {
    person,
    answered,
    ready,
    stood: known ? seconds(Math.max(0, (happened - ready) / 1000)) : null,
    late: known && ready > happened ? seconds((ready - happened) / 1000) : null,
  }
}
