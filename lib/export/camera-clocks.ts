import type { ClockReading, DayState } from '../log/day-state'
import { formatClock, formatClockSeconds } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type FrameRate, framesInDay, nearestFrame, timeOfFrames } from '../plan/timecode'
import { formatDuration, type Seconds, seconds } from '../units'

/** A clock that is further off was never set to the time of day. [estimate] */
const NOT_THE_TIME_S = 1800
/** Nobody reads a running clock off more finely. [estimate] */
const READ_TO_S = 1

/** How each camera's clock stands to the set's, in a sentence. */
export function cameraClockWords(shoot: Shoot, day: DayState): readonly string[] {
  const named = [...(shoot.cameras ?? []).map(({ id }) => id), ...(shoot.clips ?? []).map(({ camera }) => camera)]
  return [...new Set([...named, ...Object.keys(day.cameraClocks)])].map((camera) => wordsOf(shoot, day, camera))
}

function wordsOf(shoot: Shoot, day: DayState, camera: string): string {
  const read = day.cameraClocks[camera] ?? []
  const [first, last] = [read[0], read.at(-1)]
  if (!first || !last) return unread(day, camera)
  const rate = shoot.clips?.find((clip) => clip.camera === camera)?.rate ?? '25'
  const off = aheadOf(last, rate, shoot.zone)
  const when = formatClock(last.at, shoot.zone)
  if (Math.abs(off) > NOT_THE_TIME_S)
    return `Camera ${camera}’s timecode is not the time of day: it read ${last.timecode} at ${when}.`
  const drift = seconds(off - aheadOf(first, rate, shoot.zone))
  const over =
    read.length > 1 && Math.abs(drift) > READ_TO_S
      ? `, ${drift > 0 ? 'gaining' : 'losing'} ${exact(drift)} since ${formatClock(first.at, shoot.zone)}`
      : ''
  if (Math.abs(off) <= READ_TO_S) return `Camera ${camera} runs with the set’s clock, read at ${when}${over}.`
  return `Camera ${camera} runs ${exact(off)} ${off > 0 ? 'ahead' : 'behind'}, read at ${when}${over}.`
}

const unread = (day: DayState, camera: string) =>
  day.takes.some((take) => take.camera === camera && take.timecode !== null && take.from !== null)
    ? `Camera ${camera}: nobody read its clock; it is set right by the timecodes of its takes.`
    : `Camera ${camera}: nobody read its clock, so its timecode is taken for the time of day. Read it on the set: More, Camera clock.`

/** "12 s", "2 min 05 s". */
function exact(time: Seconds): string {
  const s = Math.round(Math.abs(time))
  return s < 60 ? `${s} s` : `${formatDuration(seconds(60 * Math.floor(s / 60)))} ${String(s % 60).padStart(2, '0')} s`
}

/** How far the timecode is before the set's own time of day, the shorter way round the clock. */
function aheadOf({ at, timecode }: ClockReading, rate: FrameRate, zone: string): Seconds {
  const day = timeOfFrames(framesInDay(rate), rate)
  const label = timeOfFrames(nearestFrame(timecode, rate), rate)
  const [h = 0, m = 0, s = 0] = formatClockSeconds(at, zone).split(':').map(Number)
  const off = label - (3600 * h + 60 * m + s + ((at % 1000) - (at % 1000 >= 500 ? 1000 : 0)) / 1000)
  return seconds(off - day * Math.round(off / day))
}
