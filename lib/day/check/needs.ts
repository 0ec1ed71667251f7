import type { Shoot } from '../../plan/shoot'
import type { Booked, Facts } from './facts'

/**
 * The first need that no assignment of different people can meet, or null. A need is a role or a person.
 * `offCamera`: asks the same with this person anywhere but behind a camera.
 */
export function unmetNeed(
  shoot: Shoot,
  needs: readonly string[],
  people: readonly string[],
  offCamera?: string,
): string | null {
  const roles = new Map((shoot.people ?? []).map((p) => [p.id, p.roles]))
  const holds = new Map<string, number>()
  const meets = (person: string, need: string) =>
    person === need || (!(need === 'camera' && person === offCamera) && (roles.get(person)?.includes(need) ?? false))
  const seat = (slot: number, tried: Set<string>): boolean =>
    people.some((person) => {
      if (tried.has(person) || !meets(person, needs[slot] as string)) return false
      tried.add(person)
      const other = holds.get(person)
      if (other !== undefined && !seat(other, tried)) return false
      holds.set(person, slot)
      return true
    })
  return needs.find((_, slot) => !seat(slot, new Set())) ?? null
}

/** Nobody else in the shot could be behind that camera. */
export const behindCamera = (facts: Facts, b: Booked, person: string): boolean =>
  unmetNeed(facts.shoot, b.shot.needs ?? [], b.people, person) !== null
