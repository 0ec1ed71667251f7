import { formatDuration, readQuantity, seconds } from '../units'
import { freeShotId, removeAt, setAt, shotsOf, valueAt } from './edit'
import type { ShootDocument } from './shoot'

/** Edits of one shot as a whole; the day screen's buttons. */
type ShotDocument = ReturnType<typeof shotsOf>[number]

const indexOf = (document: ShootDocument, id: string) => shotsOf(document).findIndex((shot) => shot.id === id)
const titleOf = (shot: ShotDocument) => (typeof shot.title === 'string' ? shot.title : 'Untitled shot')
/** A title is printed whole: what is added must not push it over the longest. */
const LONGEST_TITLE = 120
const retitled = (shot: ShotDocument, more: string) => titleOf(shot).slice(0, LONGEST_TITLE - more.length) + more

function putAfter(document: ShootDocument, index: number, shot: ShotDocument): ShootDocument {
  const shots = shotsOf(document)
  return setAt(document, '/shots', [...shots.slice(0, index + 1), shot, ...shots.slice(index + 1)])
}

/** The same once more, behind it in the list; where it was pinned the new one is free again. */
export function duplicateShot(document: ShootDocument, id: string): ShootDocument {
  const index = indexOf(document, id)
  const shot = shotsOf(document)[index]
  if (!shot) return document
  const { pin: _, ...rest } = shot
  return putAfter(document, index, { ...rest, id: freeShotId(document, id), title: retitled(shot, ', again') })
}

/** What of a shot can be cut in two: its roll, or what is held after its moment. */
function lengthAt(shot: ShotDocument): '/roll' | '/at/after' | null {
  if (shot.from !== undefined || shot.to !== undefined) return null
  return shot.at === undefined ? '/roll' : '/at/after'
}
const LEAST_S = 120
/** Where nothing is written the layout takes 4 min of roll and 2 min after a moment; common practice, no source. */
const UNWRITTEN_S = { '/roll': 240, '/at/after': 120 } as const

/** Seconds that could be cut in two; null where the shot is too short, or its length is the meat's. */
function divisible(shot: ShotDocument): number | null {
  const place = lengthAt(shot)
  if (!place) return null
  const written = valueAt(shot, place)
  const read = written === undefined ? null : readQuantity(written, 'duration')
  const length = read === null ? UNWRITTEN_S[place] : read.ok ? read.si : 0
  return length >= LEAST_S ? length : null
}
export const canSplit = (shot: ShotDocument | undefined) => shot !== undefined && divisible(shot) !== null

/**
 * Two shots of half the length. The second comes after the first and, where the first is at a moment, as soon as
 * somebody has time; what came after the one now comes after both.
 */
export function splitShot(document: ShootDocument, id: string): ShootDocument {
  const index = indexOf(document, id)
  const shot = shotsOf(document)[index]
  const length = shot ? divisible(shot) : null
  const place = shot ? lengthAt(shot) : null
  if (!shot || length === null || !place) return document
  const half = Math.ceil(length / 120) * 60
  const first = setAt(shot, place, formatDuration(seconds(half))) as ShotDocument
  const { at: _, pin: __, light, ...rest } = shot
  const form = shot.at ? { free: true } : light === undefined ? {} : { light }
  const second: ShotDocument = {
    ...rest,
    ...form,
    id: freeShotId(document, id),
    title: retitled(shot, ', the rest'),
    roll: formatDuration(seconds(Math.max(60, length - half))),
    after: [id],
  }
  const waiting = shotsOf(document).map((each, i) =>
    i === index ? first : Array.isArray(each.after) && each.after.includes(id) ? withAfter(each, second.id) : each,
  )
  return putAfter(setAt(document, '/shots', waiting), index, second)
}
const withAfter = (shot: ShotDocument, id: string): ShotDocument => ({
  ...shot,
  after: [...(shot.after as readonly string[]), id],
})

/** The minute from which a shot rolls, come what may; null frees it. */
export function pinShot(document: ShootDocument, id: string, clock: string | null): ShootDocument {
  const index = indexOf(document, id)
  if (index < 0) return document
  const at = `/shots/${index}/pin`
  return clock === null ? removeAt(document, at) : setAt(document, at, clock)
}
/** Only a shot that the meat does not time can be held to the clock. */
export const canPin = (shot: ShotDocument | undefined) =>
  shot !== undefined && shot.at === undefined && shot.from === undefined && shot.to === undefined
