import type { DayState } from '../log/day-state'
import { type FrameRate, nearestFrame, printTimecode } from '../plan/timecode'

/** Clips as a shoot file writes them. */
export interface ClipDocument {
  readonly id: string
  readonly camera: string
  readonly start: string
  readonly rate: FrameRate
  readonly length: string
  readonly in?: string
}

/** A clip for each good take whose timecode was logged, named as cameras number their files. */
export function clipsOfTakes(day: DayState, rate: FrameRate): readonly ClipDocument[] {
  const numbers = new Map<string, number>()
  return day.takes.flatMap(({ camera, from, to, timecode, verdict }): ClipDocument[] => {
    if (timecode === null || from === null || to === null || verdict === 'no-good' || to <= from) return []
    const number = (numbers.get(camera) ?? 0) + 1
    numbers.set(camera, number)
    return [
      {
        id: `${camera}${String(number).padStart(3, '0')}`,
        camera,
        start: printTimecode(nearestFrame(timecode, rate), rate),
        rate,
        length: `${Math.ceil((to - from) / 1000)} s`,
      },
    ]
  })
}
