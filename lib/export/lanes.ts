import type { Call, Layout, PlacedShot } from '../day/layout'
import type { Shoot } from '../plan/shoot'

type Person = NonNullable<Shoot['people']>[number]

/** "camera A", or "camera B, sound" where its usual operator also keeps the sound. */
export function cameraName(shoot: Shoot, layout: Layout, camera: string): string {
  const operator = (shoot.people ?? []).find((person) => person.id === usualOperator(shoot, layout, camera))
  return `camera ${camera}${operator?.roles.includes('sound') ? ', sound' : ''}`
}
export const personName = (person: Person) => person.name ?? person.id
export const isOperator = (person: Person) => person.roles.includes('camera')

/** Who of the camera crew stands at this camera most often. */
export function usualOperator(shoot: Shoot, layout: Layout, camera: string): string | null {
  const operators = (shoot.people ?? []).filter(isOperator).map((person) => person.id)
  const counts = operators.map(
    (id) => layout.shots.filter((shot) => shot.camera.includes(camera) && shot.people.includes(id)).length,
  )
  const most = Math.max(0, ...counts)
  return most > 0 ? (operators[counts.indexOf(most)] ?? null) : null
}

/** Called on the day by the probe or by an earlier moment; the planned time is only likely. */
export const isCalledLive = (shot: PlacedShot, calls: readonly Call[]) =>
  shot.hold === 'tentative' || calls.some((call) => call.for === shot.id && (call.trigger || call.follows))
