import type { Shoot } from '../plan/shoot'

/** A shot's number is its place in the shoot file: it stays when the day is laid out anew. */
export function shotNumbers(shoot: Shoot): ReadonlyMap<string, number> {
  return new Map((shoot.shots ?? []).map((shot, i) => [shot.id, i + 1]))
}
