import { framesOfTime, framesPerSecond } from '../plan/timecode'
import { seconds } from '../units'
import type { ClipInDay } from './clip-times'
import type { FilmFacts } from './film-facts'
import { type OverlayStyle, overlayFigures, overlaySvg } from './overlay'

/** One picture, and for how many frames on end it stands. */
export interface OverlayRun {
  readonly svg: string
  readonly count: number
}
/** A zip without its 64-bit form holds 65 535 files. [PKWARE APPNOTE 6.3, 4.4.21] */
export const MOST_FRAMES = 60_000

export const framesOf = ({ clip, from, to }: ClipInDay) => framesOfTime(seconds((to - from) / 1000), clip.rate)

/** The frames of a clip as runs of equal pictures, in order. */
export function* overlayRuns(facts: FilmFacts, clip: ClipInDay, style: OverlayStyle): Generator<OverlayRun> {
  const total = framesOf(clip)
  const perSecond = framesPerSecond(clip.clip.rate)
  const begins = (clip.from - facts.meatOn) / 1000
  const timeOf = (frame: number) => seconds(Math.floor(begins + frame / perSecond))
  const keyOf = (frame: number) => JSON.stringify(overlayFigures(facts, timeOf(frame), style.units))
  for (let first = 0; first < total; ) {
    const key = keyOf(first)
    let next = first + 1
    while (next < total && (timeOf(next) === timeOf(next - 1) || keyOf(next) === key)) next++
    yield { svg: overlaySvg(facts, timeOf(first), style), count: next - first }
    first = next
  }
}

/** Why there is no overlay of a clip; null where there is one. */
export function overlayFault(clip: ClipInDay, facts: FilmFacts | null): string | null {
  const { id, rate } = clip.clip
  if (!facts) return 'Nobody marked that the meat went on, so nothing is known to show. Mark it in the log.'
  if (clip.to <= facts.meatOn) return `Filmed before the meat ${facts.went}: there is nothing to show over it.`
  if (framesOf(clip) === 0) return `Clip ${id} has no length. Give it one, such as "4 min 12 s".`
  if (framesOf(clip) <= MOST_FRAMES) return null
  const minutes = Math.floor(MOST_FRAMES / framesPerSecond(rate) / 60)
  return `Clip ${id} has ${framesOf(clip)} frames; one file takes ${MOST_FRAMES}, ${minutes} min at ${rate}. Write it as shorter clips.`
}
