import type { Take } from '../log/day-state'
import { minutes } from '../units'
import type { Channel, Session } from './session'

/** At most one alert a person in ten minutes, on average (design 11). */
export const LOAD_S = minutes(10)

const rolling = ({ told }: Session): readonly Take[] => told.takes.filter((take) => take.rolling)
const shotsRolling = (session: Session) =>
  rolling(session).flatMap(({ shot }) => (shot === null ? [] : (session.day.shots[shot] ?? [])))

export const inShot = (session: Session): ReadonlySet<string> =>
  new Set(shotsRolling(session).flatMap((shot) => shot.inShot))
const behindCamera = (session: Session): ReadonlySet<string> =>
  new Set(shotsRolling(session).flatMap((shot) => shot.operators))

/** While any take rolls every phone is silent. */
export const channelsNow = (session: Session): readonly Channel[] =>
  rolling(session).length > 0 ? ['screen', 'vibration'] : ['screen', 'vibration', 'sound']

/** How often somebody was alerted in the last ten minutes. */
export const loadOf = ({ load, now }: Session, person: string): number =>
  load.filter((one) => one.person === person && one.at > now - LOAD_S * 1000).length

/**
 * Who owns an alert: of those off camera one of the wanted roles before others, then who was alerted least; somebody in
 * shot only where everybody is. `roles` in order of preference; persons count as roles of their own.
 */
export function ownerFor(session: Session, roles: readonly string[], not: readonly string[] = []): string | null {
  const [seen, behind] = [inShot(session), behindCamera(session)]
  const rank = ({ id, roles: own }: Session['day']['people'][number]) => {
    const role = roles.findIndex((wanted) => wanted === id || own.includes(wanted))
    // Behind a rolling camera somebody can look at a screen, not leave.
    const busy = seen.has(id) ? 4 : behind.has(id) ? 2 : 0
    return [busy + (role < 0 ? 1 : 0), loadOf(session, id), role < 0 ? roles.length : role] as const
  }
  const free = session.day.people
    .filter(({ id }) => !not.includes(id))
    .map((person) => ({ person, rank: rank(person) }))
  free.sort((a, b) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1] || a.rank[2] - b.rank[2])
  return free[0]?.person.id ?? null
}
/** Whether somebody can do it themselves; else they see to it that it is done. */
export const hasRole = ({ day }: Session, person: string, roles: readonly string[]): boolean =>
  roles.includes(person) ||
  (day.people.find(({ id }) => id === person)?.roles.some((role) => roles.includes(role)) ?? false)
