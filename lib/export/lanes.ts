import type { Call, Layout, PlacedShot } from '../day/layout'
import { fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, instant } from '../units'

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

/** A call that the probe or an earlier moment makes; the planned time is only likely. */
export const isLiveCall = (call: Call) => call.trigger !== null || call.follows !== null

/** The earliest standby of a call made live; from then on the day is called, not clocked. Null where none is. */
export function liveFrom(layout: Layout): Instant | null {
  const starts = layout.calls.filter(isLiveCall).flatMap((call) => {
    const placed = layout.shots.find((shot) => shot.id === call.for)
    const at = call.window.early ?? call.standby
    if (!placed || !at) return []
    return [fromIso(at) - (fromIso(placed.start) - fromIso(placed.setupStart))]
  })
  return starts.length > 0 ? instant(Math.min(...starts)) : null
}

/** Called live, or loose in the stretch in which others are. */
export function isCalledLive(shot: PlacedShot, layout: Layout): boolean {
  if (layout.calls.some((call) => call.for === shot.id && isLiveCall(call))) return true
  const from = liveFrom(layout)
  return shot.hold === 'tentative' && from !== null && fromIso(shot.end) > from
}
