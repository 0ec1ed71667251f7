import type { Instant } from '../units'

/** The words and limits of log entries; apart from the schemas, so that a phone's board reads entries without them. */
export const CALL_STATES = ['ahead', 'standby', 'roll', 'caught', 'missed', 'dropped'] as const
export const ANSWERS = ['coming', 'ready', 'cannot', 'hand-over'] as const
export const ROLLS = ['start', 'end'] as const
export const VERDICTS = ['good', 'no-good', 'hold'] as const
export const FOUND = ['in', 'moved', 'pulled-out', 'wrong', 'right', 'checked'] as const
export const HELD_IN = ['cooker', 'oven', 'box'] as const
export const FIRE_WORK = ['fed', 'vents-open', 'vents-shut', 'lid-open', 'lid-shut'] as const
export const FOOD_PLACES = ['out', 'back', 'served', 'discarded'] as const
export const MEAL_ENDS = ['begins', 'ends'] as const

/** °C, and s. */
export const READING_LIMITS = { min: -40, max: 700 } as const
export const LATE_LIMITS = { min: 0, max: 12 * 3600 } as const
/** What may be adopted on the set: a core to pull at, what the cooker is set to, °C; a rest, s. */
export const CORE_LIMITS = { min: 20, max: 99 } as const
export const COOKER_LIMITS = { min: 40, max: 450 } as const

export const TIMECODE = /^\d{2}:\d{2}:\d{2}([:;.]\d{2,3})?$/
export const WHEN = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,6})?)?(Z|[+-]\d{2}:\d{2})$/
export const SENSOR = /^(core|cooker|air)(-[2-9])?$/
export const DEVICE = /^[A-Za-z0-9][A-Za-z0-9._/-]{0,59}$/
/** Who logs what comes from a file: one name for all, so that a file that overlaps an earlier one adds only what is new. */
export const FILE_DEVICE = 'logger-file'
export const whenText = (at: Instant) => new Date(at).toISOString()
/** Of an entry no correction touches these. */
export const FIXED = ['id', 'kind', 'by'] as const
