import type { Shoot } from '@/lib/plan/shoot'
import { formatDuration, type Instant, type Seconds } from '@/lib/units'
import type { CallRow } from '@/lib/wrap/calls'
import { MEAL_ON_TIME_S, type PersonRow } from '@/lib/wrap/people'
import { offBy } from '@/lib/wrap/words'
import {
  alertsWords,
  calledAs,
  calledWords,
  callsAnswered,
  callsWords,
  happenedWords,
  lateHead,
  mealsWords,
  none,
  ofWords,
  peopleWords,
  plannedWords,
  readyWords,
  stoodBy,
  stoodHead,
  whatCame,
} from '../../../words/wrap'
import type { WrapModel } from '../../wrap-model'

interface Props {
  readonly model: WrapModel
  readonly clock: (at: Instant) => string
  readonly shoot: Shoot
}

/** Every call and every person of the day: what was planned, and what came of it. */
export function CallsAndPeople({ model, clock: clockOf, shoot }: Props) {
  const names = new Map((shoot.people ?? []).map(({ id, name }) => [id, name ?? id]))
  const clock = (at: Instant | null) => (at === null ? '' : clockOf(at))
  return (
    <>
      {model.calls.length > 0 && (
        <section aria-label={callsWords} className="mt-8">
          <h2>{callsWords}</h2>
          <table className="tells mt-2">
            <thead>
              <tr>
                {['call', 'planned', 'called', 'ready', 'happened', 'stood', ''].map((name, i) => (
                  <th key={name || 'outcome'} scope="col" className={i > 0 && i < 6 ? 'text-right' : undefined}>
                    {name || whatCame}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {model.calls.map((call) => (
                <tr key={call.id}>
                  <th scope="row">
                    {call.title}
                    {call.why && <span className="small block">{calledAs(call.why)}</span>}
                  </th>
                  <td className="time text-right" data-label={plannedWords}>
                    {clock(call.planned)}
                  </td>
                  <td className="time text-right" data-label={calledWords}>
                    {clock(call.called)}
                  </td>
                  <td className="time text-right" data-label={readyWords}>
                    {clock(lastReady(call))}
                  </td>
                  <td className="time text-right" data-label={happenedWords}>
                    {clock(call.happened)}
                  </td>
                  <td className="text-right" data-label={stoodHead}>
                    {call.stood === null ? '' : formatDuration(call.stood)}
                  </td>
                  <td data-label="">{outcomeOf(call, names)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {model.people.length > 0 && (
        <section aria-label={peopleWords} className="mt-8">
          <h2>{peopleWords}</h2>
          <table className="tells mt-2">
            <thead>
              <tr>
                {['person', 'calls answered', 'late', 'stood by', 'meals', 'alerts'].map((name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {model.people.map((person) => (
                <tr key={person.person}>
                  <th scope="row">{person.name}</th>
                  <td data-label={callsAnswered}>
                    {person.calls === 0 ? none : ofWords(person.answered, person.calls)}
                  </td>
                  <td data-label={lateHead}>{lateWords(person)}</td>
                  <td data-label={stoodBy}>{person.calls === 0 ? '' : stoodWords(person.stood)}</td>
                  <td data-label={mealsWords}>{mealWords(person, clock)}</td>
                  <td data-label={alertsWords}>{alertWords(person)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </>
  )
}

function lastReady({ people }: CallRow): Instant | null {
  const ready = people.flatMap((one) => one.ready ?? [])
  return ready.length > 0 ? (Math.max(...ready) as Instant) : null
}
function outcomeOf({ outcome, people, called }: CallRow, names: ReadonlyMap<string, string>): string {
  const silent = called === null ? [] : people.filter(({ answered }) => answered === null)
  const who = silent.map(({ person }) => names.get(person) ?? person).join(', ')
  return who === '' ? outcome : `${outcome}; no answer from ${who}`
}

const lateWords = ({ late, latest }: PersonRow) =>
  latest === null ? '' : `${late === 1 ? 'once' : `${late} times`}, ${formatDuration(latest)} at most`
const stoodWords = (stood: Seconds) => (stood === 0 ? '0 min' : formatDuration(stood))

function mealWords({ meals, mealsPlanned }: PersonRow, clock: (at: Instant) => string): string {
  if (mealsPlanned === 0) return ''
  const told = meals.map(({ begun, off }) =>
    Math.abs(off) <= MEAL_ON_TIME_S ? `${clock(begun)}, on time` : `${clock(begun)}, ${offBy(off)}`,
  )
  const missing = mealsPlanned - meals.length
  return [...told, ...(missing > 0 ? [missing === 1 ? 'one not told of' : `${missing} not told of`] : [])].join('; ')
}
function alertWords({ alerts, unanswered, passedOn }: PersonRow): string {
  const owned = alerts === 0 ? '' : `${alerts} seen to`
  const silent = unanswered === 0 ? '' : `${unanswered} not answered`
  const passed = passedOn === 0 ? '' : `${passedOn} passed on`
  return [owned, silent, passed].filter((words) => words !== '').join(', ')
}
