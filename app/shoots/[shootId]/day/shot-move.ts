import { setAt, shotsOf, valueAt } from '@/lib/plan/edit'
import { canPin, pinShot } from '@/lib/plan/edit-shots'
import type { ShootDocument } from '@/lib/plan/shoot'
import { firstSliceIsWished } from '../../../words/day'
import { clockWords } from './clock-words'
import type { ShotRow } from './day-view'

/** How a shot may be moved on the axis: held to the clock, with the whole cook, or not at all. */
export type Hold = 'pin' | 'wish' | 'fixed'
export interface ShotMove {
  readonly hold: Hold
  readonly pinned: boolean
  /** The document with the shot at this instant, ms. */
  readonly movedTo: (at: number) => ShootDocument
  /** What has then been done. */
  readonly told: (at: number) => string
}

/** What it means to move this shot in time; `slice`: the likely first slice, ms, what a wish is counted from. */
export function shotMove(document: ShootDocument, row: ShotRow, title: string, slice: number | null): ShotMove {
  const zone = typeof document.zone === 'string' ? document.zone : 'UTC'
  const shot = shotsOf(document).find(({ id }) => id === row.id)
  const first = valueAt(document, '/cooks/0/id')
  const ofFirst = shot?.cook === undefined || shot.cook === first
  const hold: Hold = canPin(shot) ? 'pin' : shot?.at !== undefined && ofFirst && slice !== null ? 'wish' : 'fixed'
  const movedTo = (at: number): ShootDocument => {
    if (hold === 'pin') return pinShot(document, row.id, clockWords(at, zone))
    const moved = (slice ?? 0) + at - (row.place?.start ?? at)
    const chance = valueAt(document, '/day/slice/chance')
    return setAt(document, '/day/slice', { at: clockWords(moved, zone), ...(chance === undefined ? {} : { chance }) })
  }
  const told = (at: number) =>
    hold === 'pin'
      ? `${title} is pinned at ${clockWords(at, zone)}.`
      : firstSliceIsWished(String(valueAt(movedTo(at), '/day/slice/at')))
  return { hold, pinned: shot?.pin !== undefined, movedTo, told }
}
