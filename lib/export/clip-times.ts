import type { ClockReading, DayState } from '../log/day-state'
import type { Clip } from '../plan/clips'
import { type Calendar, toInstant } from '../plan/clock'
import {
  type Frames,
  frames,
  framesInDay,
  framesOfTime,
  nearestFrame,
  printTimecode,
  readTimecode,
  timeOfFrames,
} from '../plan/timecode'
import { type Instant, instant, later, type Seconds, seconds } from '../units'

/** A clip laid on the day's clock. */
export interface ClipInDay {
  readonly clip: Clip
  readonly from: Instant
  /** Without a length: where the camera's next clip begins, or the day's last entry. */
  readonly to: Instant
  readonly start: Frames
}
/** The part of a shoot that says which clips there are and what their timecode is the time of. */
export type WithClips = Calendar & { readonly clips?: readonly Clip[] }

/** Two readings that differ by more were of a clock that somebody set between them. [estimate] */
const SAME_CLOCK_S = 5

/** The clips on the day's clock, each camera's timecode put right by what the log read off it; in order of time. */
export function clipsInDay(shoot: WithClips, day: DayState): readonly ClipInDay[] {
  const span = spanOf(day)
  if (!span) return []
  const begun = (shoot.clips ?? []).flatMap((clip) => {
    const read = readTimecode(clip.start, clip.rate)
    return read.ok ? [{ clip, start: read.frames, from: beginOf(shoot, day, clip, read.frames, span) }] : []
  })
  begun.sort((a, b) => a.from - b.from)
  return begun.map((one): ClipInDay => {
    const next = begun.find(({ clip, from }) => clip.camera === one.clip.camera && from > one.from)
    const open = instant(Math.max(one.from, next?.from ?? span.to))
    return { ...one, to: one.clip.length === undefined ? open : later(one.from, one.clip.length) }
  })
}

/** What is known of a camera's clock: as it was read, else as the timecodes of its takes tell. */
export function clockReadings(day: DayState, camera: string): readonly ClockReading[] {
  const read = day.cameraClocks[camera] ?? []
  if (read.length > 0) return read
  return day.takes.flatMap(({ camera: of, from, timecode }) =>
    of === camera && from !== null && timecode !== null ? [{ at: from, timecode }] : [],
  )
}

/** Between two readings of one clock a straight line; beyond them, or where it was set, the nearest. */
function beginOf(shoot: Calendar, day: DayState, clip: Clip, start: Frames, span: Span): Instant {
  const by = clockReadings(day, clip.camera).map((reading) => ({
    reading,
    from: fromReading(clip, start, reading, span),
  }))
  if (by.length === 0) return fromReading(clip, start, asClock(shoot, clip.start), span)
  const away = ({ reading, from }: (typeof by)[number]) => Math.abs(from - reading.at)
  const nearest = by.reduce((best, one) => (away(one) < away(best) ? one : best))
  const before = by.findLast(({ reading, from }) => reading.at <= from)
  const after = by.find(({ reading, from }) => reading.at > from)
  if (
    !before ||
    !after ||
    before.reading.at >= after.reading.at ||
    Math.abs(before.from - after.from) > SAME_CLOCK_S * 1000
  )
    return nearest.from
  const share = (before.from - before.reading.at) / (after.reading.at - before.reading.at)
  return instant(before.from + share * (after.from - before.from))
}

/** Labels begin anew each day: of the days it could be, the one the log tells of. */
function fromReading(clip: Clip, start: Frames, { at, timecode }: ClockReading, span: Span): Instant {
  const by = start - nearestFrame(timecode, clip.rate)
  const ways = [-1, 0, 1].map((days) => {
    const count = frames(by + days * framesInDay(clip.rate))
    const from = later(at, timeOfFrames(count, clip.rate))
    return { from, outside: Math.max(0, span.from - from, from - span.to), far: Math.abs(count) }
  })
  return ways.sort((a, b) => a.outside - b.outside || a.far - b.far)[0]?.from ?? at
}

/** A camera whose clock nobody read is taken to show the time of day. */
function asClock(shoot: Calendar, timecode: string): ClockReading {
  const hour = toInstant(shoot, `${timecode.slice(0, 2)}:00`)
  return { at: hour, timecode: `${timecode.slice(0, 2)}:00:00` }
}

interface Span {
  readonly from: Instant
  readonly to: Instant
}
/** From the first to the last that the log tells of pictures and moments; null where it tells of none. */
export function spanOf(day: DayState): Span | null {
  const all = [
    ...Object.values(day.marks).map(({ at }) => at),
    ...day.takes.flatMap(({ from, to }) => [from, to]).filter((at) => at !== null),
    ...Object.values(day.cameraClocks).flatMap((read) => read.map(({ at }) => at)),
    ...day.notes.map(({ at }) => at),
  ]
  return all.length > 0 ? { from: instant(Math.min(...all)), to: instant(Math.max(...all)) } : null
}

export interface PlaceInClip {
  readonly clip: Clip
  readonly into: Seconds
  readonly timecode: string
}
/** Where in which clips an instant of the day was filmed. */
export function placesAt(clips: readonly ClipInDay[], at: Instant): readonly PlaceInClip[] {
  return clips
    .filter(({ from, to }) => from <= at && at <= to)
    .map(({ clip, from, start }) => {
      const into = seconds((at - from) / 1000)
      return { clip, into, timecode: printTimecode(frames(start + framesOfTime(into, clip.rate)), clip.rate) }
    })
}
