import type { Call, Layout, PlacedShot } from '../day/layout'
import { formatClock, fromIso } from '../plan/clock'
import { momentName } from '../plan/moments'
import type { Shoot } from '../plan/shoot'
import { celsius, formatDuration, formatTemp, seconds, type UnitSystem } from '../units'
import { isOperator, personName, usualOperator } from './lanes'

export { isLiveCall as isLive } from './lanes'

/** What the words of a call sheet are made from. */
export interface Sheet {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly units: UnitSystem
}

export const clockOf = ({ shoot }: Sheet, iso: string | null) =>
  iso === null ? '–' : formatClock(fromIso(iso), shoot.zone)
export const nameOf = ({ shoot }: Sheet, moment: Call['moment'], cook: string | null) => {
  const cooker = shoot.cooks.find((c) => c.id === cook)?.cooker.kind ?? shoot.cooks[0]?.cooker.kind ?? 'oven'
  return moment === null ? '' : momentName(moment, cooker)
}

/** "43 °C", "15 min after off the heat", "follows vents open": what calls people when the clock does not. */
export function triggerWords(sheet: Sheet, call: Call): string {
  if (call.trigger) return formatTemp(celsius(call.trigger.probe), sheet.units)
  if (!call.follows) return ''
  const name = call.follows.moment === 'pull' ? 'the pull' : nameOf(sheet, call.follows.moment, call.cook)
  return call.follows.after < 60 ? `follows ${name}` : `${formatDuration(seconds(call.follows.after))} after ${name}`
}

/** "19:16 to 20:21"; nothing where the moment is certain to the minute. */
export function callWindow(sheet: Sheet, { window }: Call): string {
  if (window.early === null) return 'may never come'
  if (window.late === null) return `from ${clockOf(sheet, window.early)}, or never`
  const [early, late] = [clockOf(sheet, window.early), clockOf(sheet, window.late)]
  return early === late ? '' : `${early} to ${late}`
}

/** "A, B, presenter": cameras by letter, then whoever does not stand behind one; "all" where it is everybody. */
export function whoWords({ shoot }: Sheet, placed: Pick<PlacedShot, 'people' | 'camera'>): string {
  const people = shoot.people ?? []
  if (people.length > 2 && people.every((person) => placed.people.includes(person.id))) return 'all'
  const others = people.filter((person) => placed.people.includes(person.id) && !isOperator(person))
  return [...placed.camera, ...others.map((person) => shortName(people, person))].join(', ')
}

type Person = NonNullable<Shoot['people']>[number]
/** The first name where nobody else has it: tables are narrow and names are long. */
function shortName(people: readonly Person[], person: Person): string {
  const first = (each: Person) => personName(each).split(/\s/)[0] ?? ''
  const twins = people.filter((each) => first(each) === first(person))
  return twins.length === 1 && first(person) !== '' ? first(person) : personName(person)
}

/** "presenter, Ann". */
export const namesOf = ({ shoot }: Pick<Sheet, 'shoot'>, ids: readonly string[]) =>
  ids
    .map((id) => shoot.people?.find((person) => person.id === id))
    .flatMap((person) => (person ? [shortName(shoot.people ?? [], person)] : []))
    .join(', ')

/** "cam-2, camera B, sound": a person and what they do. */
export function roleWords({ shoot, layout }: Sheet, id: string): { readonly name: string; readonly does: string } {
  const person = (shoot.people ?? []).find((p) => p.id === id)
  if (!person) return { name: id, does: '' }
  const camera = (shoot.cameras ?? []).find((c) => usualOperator(shoot, layout, c.id) === id)
  const roles = person.roles.filter((role) => role !== personName(person) && (role !== 'camera' || !camera))
  return { name: personName(person), does: [...(camera ? [`camera ${camera.id}`] : []), ...roles].join(', ') }
}
