import type { DayState } from '../log/day-state'
import type { Shoot } from '../plan/shoot'
import { type Instant, type Seconds, seconds } from '../units'
import type { CallRow } from './calls'
import type { PlannedMeal, ToldAlert } from './told'

/** One person's day. */
export interface PersonRow {
  readonly person: string
  readonly name: string
  readonly calls: number
  readonly answered: number
  /** How often ready only after the moment, and how late at worst. */
  readonly late: number
  readonly latest: Seconds | null
  readonly stood: Seconds
  /** Meals that were told of, and how much later than planned they began. */
  readonly meals: readonly { readonly begun: Instant; readonly off: Seconds }[]
  readonly mealsPlanned: number
  /** Alerts that were theirs at the end, with and without an answer, and those that went on to somebody else. */
  readonly alerts: number
  readonly unanswered: number
  readonly passedOn: number
}
export interface PeopleInput {
  readonly shoot: Pick<Shoot, 'people'>
  readonly day: DayState
  readonly calls: readonly CallRow[]
  readonly meals: readonly PlannedMeal[]
  readonly alerts: readonly ToldAlert[]
}

/** A meal within this of its time is on time. [estimate] */
export const MEAL_ON_TIME_S = 600

export const peopleRows = ({ shoot, day, calls, meals, alerts }: PeopleInput): readonly PersonRow[] =>
  (shoot.people ?? []).map(({ id, name }) => {
    const own = calls.flatMap(({ people, called }) =>
      called === null ? [] : people.filter(({ person }) => person === id),
    )
    const late = own.flatMap((one) => one.late ?? [])
    return {
      person: id,
      name: name ?? id,
      calls: own.length,
      answered: own.filter(({ answered }) => answered !== null).length,
      late: late.length,
      latest: late.length > 0 ? seconds(Math.max(...late)) : null,
      stood: seconds(own.reduce((sum, { stood }) => sum + (stood ?? 0), 0)),
      ...mealsOf(id, day, meals),
      alerts: alerts.filter(({ owner, state }) => owner === id && state !== 'open').length,
      unanswered: alerts.filter(({ owner, state }) => owner === id && state === 'open').length,
      passedOn: alerts.filter(({ owner, asked }) => owner !== id && asked.includes(id)).length,
    }
  })

/** The first meal that somebody begins is their first of the plan, and so on. */
function mealsOf(person: string, day: DayState, planned: readonly PlannedMeal[]) {
  const has = ({ people }: { readonly people?: readonly string[] | undefined }) => people?.includes(person) ?? true
  const own = planned.filter(has).sort((a, b) => a.start - b.start)
  const begun = day.meals.filter(({ entry }) => entry.is === 'begins' && has(entry))
  const meals = begun.slice(0, own.length).map(({ at }, i) => {
    return { begun: at, off: seconds((at - (own[i] as PlannedMeal).start) / 1000) }
  })
  return { meals, mealsPlanned: own.length }
}
