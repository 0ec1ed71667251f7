import { fittedShots, type Light, type ShotDocument, STARTING_SHOTS } from './coverage'
import { EXTRA_SHOTS } from './coverage-extras'
import { addShot, setAt, shotsOf, valueAt } from './edit'
import type { ShootDocument } from './shoot'
import { leftOf, listAt, peopleOf, sketchOf } from './sketch'

const ORDER = [...STARTING_SHOTS, ...EXTRA_SHOTS]

/**
 * The shots that this plan could have and has not: each fits the cook's moments and the crew there is. What was left
 * stays left, and the first cook is the one on camera.
 */
export function offersOf(document: ShootDocument): ShotDocument[] {
  const cook = sketchOf(valueAt(document, '/cooks/0'))
  if (!cook) return []
  const light = valueAt(document, '/day/slice/in') as Light | undefined
  const has = new Set(shotsOf(document).map(({ id }) => id))
  const left = new Set(leftOf(document))
  const cameras = listAt<{ id: string }>(document, '/cameras')
  return fittedShots(ORDER, cook, peopleOf(document), cameras, light)
    .filter((shot) => !has.has(shot.id) && !left.has(shot.id))
    .map((shot) => afterKnown(shot, has))
}

/** It comes after those of its shots that the plan has. */
function afterKnown(shot: ShotDocument, has: ReadonlySet<string>): ShotDocument {
  const { after, ...rest } = shot as ShotDocument & { after?: readonly string[] }
  const known = (after ?? []).filter((id) => has.has(id))
  return known.length > 0 ? { ...shot, after: known } : (rest as ShotDocument)
}

export const takeOffer = (document: ShootDocument, offer: ShotDocument): ShootDocument => addShot(document, offer)

/** Not wanted: it is not offered again. */
export const leaveOffer = (document: ShootDocument, offer: ShotDocument): ShootDocument =>
  setAt(document, '/coverage/left', [...leftOf(document), offer.id])
