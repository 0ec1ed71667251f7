import { type ClipInDay, clipsInDay } from '@/lib/export/clip-times'
import { cookShown, filmFacts } from '@/lib/export/film-facts'
import { overlayFault } from '@/lib/export/overlay-frames'
import { formatClockSeconds } from '@/lib/plan/clock'
import { formatDuration, seconds } from '@/lib/units'
import type { EditDay } from '../../edit-day'

/** What the log makes of a clip. */
export interface ClipTold {
  readonly id: string
  /** "18:42:07 to 18:46:19 on the day's clock: Probe goes in, close." */
  readonly words: string
  /** Why there is no overlay; null where there is one. */
  readonly fault: string | null
}

export const clipsTold = (edit: EditDay): readonly ClipTold[] =>
  clipsInDay(edit.shoot, edit.day).map((clip) => {
    const cook = cookShown(edit.shoot, edit.day, clip.from, clip.clip.camera)
    const facts = cook === null ? null : filmFacts(edit.shoot, edit.day, cook)
    return { id: clip.clip.id, words: wordsOf(edit, clip), fault: overlayFault(clip, facts) }
  })

function wordsOf({ shoot, day }: EditDay, { clip, from, to }: ClipInDay): string {
  const shots = day.takes.filter(
    (take) => take.camera === clip.camera && take.from !== null && take.from < to && (take.to ?? take.from) > from,
  )
  const titles = [...new Set(shots.map(({ shot }) => shoot.shots?.find(({ id }) => id === shot)?.title ?? shot ?? ''))]
  const length = formatDuration(seconds((to - from) / 1000))
  const filmed = titles.filter(Boolean).join(', ') || 'no take of the log'
  return `${formatClockSeconds(from, shoot.zone)} on the day’s clock, ${length}: ${filmed}.`
}
