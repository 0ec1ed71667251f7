import type { DayState } from '../log/day-state'
import { type Instant, instant, type Seconds, seconds } from '../units'
import { type ClipInDay, clipsInDay, spanOf, type WithClips } from './clip-times'

/** The time that chapters and captions count in. */
export interface EditClock {
  /** From the beginning of the finished video, or from the first slate while no clip has its place in it. */
  readonly counts: 'video' | 'first-slate'
  readonly ends: Seconds
  /** Null for what is not in it. A camera is named where only its own pictures will do. */
  readonly timeOf: (at: Instant, camera?: string) => Seconds | null
  /** The stretches of the day that it shows, with the time of each one's first frame. */
  readonly shown: readonly { readonly from: Instant; readonly to: Instant; readonly startS: Seconds }[]
}

/** A mark is made a little late or early: so near a clip it belongs to it. [estimate] */
const NEAR_S = 60

/** Null where the day has neither a slate nor a clip in the video. */
export function editClock(shoot: WithClips, day: DayState): EditClock | null {
  const placed = clipsInDay(shoot, day).flatMap((one) =>
    one.clip.in === undefined ? [] : [{ ...one, in: one.clip.in }],
  )
  return placed.length > 0 ? inVideo(placed) : fromFirstSlate(day)
}

type Placed = ClipInDay & { readonly in: Seconds }
function inVideo(placed: readonly Placed[]): EditClock {
  const shown = placed
    .map((one) => ({ ...one, startS: one.in }))
    .sort((a, b) => a.startS - b.startS)
    // A clip that another cuts short in the video shows no more than that.
    .map((one, i, all) => ({ ...one, to: cutBy(one, all[i + 1]) }))
  const timeOf = (at: Instant, camera?: string) => {
    const own = shown.filter(({ clip }) => camera === undefined || clip.camera === camera)
    const away = ({ from, to }: Placed) => Math.max(0, from - at, at - to)
    const near = own.filter((one) => away(one) <= NEAR_S * 1000).sort((a, b) => away(a) - away(b))[0]
    if (!near) return null
    return seconds(near.startS + (Math.min(Math.max(at, near.from), near.to) - near.from) / 1000)
  }
  const last = shown.map(({ startS, from, to }) => startS + (to - from) / 1000)
  return { counts: 'video', ends: seconds(Math.max(...last)), timeOf, shown }
}
const cutBy = (one: Placed, next: Placed | undefined) =>
  next === undefined ? one.to : instant(Math.min(one.to, one.from + 1000 * (next.in - one.in)))

function fromFirstSlate(day: DayState): EditClock | null {
  const rolls = day.takes.flatMap(({ from, to }) => (from === null ? [] : [{ from, to: to ?? from }]))
  const span = spanOf(day)
  if (rolls.length === 0 || !span) return null
  rolls.sort((a, b) => a.from - b.from)
  const zero = rolls[0]?.from ?? instant(0)
  const since = (at: Instant) => seconds((at - zero) / 1000)
  const timeOf = (at: Instant) => (at < zero ? null : since(at))
  return {
    counts: 'first-slate',
    ends: since(span.to),
    timeOf,
    shown: together(rolls).map((one) => ({ ...one, startS: since(one.from) })),
  }
}

/** Two cameras that roll at once show one stretch. */
function together(rolls: readonly { readonly from: Instant; readonly to: Instant }[]) {
  const stretches: { from: Instant; to: Instant }[] = []
  for (const { from, to } of rolls) {
    const last = stretches.at(-1)
    if (last && from <= last.to) last.to = instant(Math.max(last.to, to))
    else stretches.push({ from, to })
  }
  return stretches
}
