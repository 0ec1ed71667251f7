import { TIMECODE } from '@/lib/log/entry-words'
import { writeHoursMinutesSeconds } from '../words/sheets'

const OF_DAY = /^([01]\d|2[0-3])(:[0-5]\d){2}/
export const NO_TIMECODE = writeHoursMinutesSeconds

/** A timecode as somebody types it; null where no camera shows such. The number pad of a phone has no colon. */
export function typedTimecode(text: string): string | null {
  const typed = text.trim()
  const whole = /^(\d{6}|\d{8})$/.test(typed) ? (typed.match(/\d\d/g) ?? []).join(':') : typed
  return TIMECODE.test(whole) && OF_DAY.test(whole) ? whole : null
}
