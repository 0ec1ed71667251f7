import { z } from 'zod'
import { record, text } from '../plan/fields'
import { quoted } from '../plan/nearest'
import { type Instant, instant } from '../units'
import { ENTRY_ID } from './entry-id'
import { DEVICE, SENSOR, WHEN } from './entry-words'

/** The building blocks of log entries, each with its own sentences. */

const ID_RULE = 'Write a ULID made by the sender: 26 letters and digits, "01J8ZK3V5Q0000000000000000".'
export const entryIdField = z.string({ error: (issue) => wrongId(issue.input) }).regex(ENTRY_ID, {
  error: (issue) => wrongId(issue.input),
})
const wrongId = (written: unknown) =>
  written === undefined ? `The id of the entry is missing here. ${ID_RULE}` : `${quoted(written)} is no id. ${ID_RULE}`

const WHEN_RULE = 'Write date, time and offset, "2027-05-15T16:05:12Z" or "2027-05-15T17:05:12+01:00".'
/** A point in time as text, with its offset: a clock time alone could be any zone's. */
export const when = z
  .unknown()
  .meta({ type: 'string', format: 'date-time' })
  .transform((written, ctx): Instant => {
    const at = typeof written === 'string' && WHEN.test(written) ? Date.parse(written) : Number.NaN
    if (Number.isFinite(at) && at >= 0) return instant(at)
    const wrong = written === undefined ? 'The time is missing here' : `${quoted(written)} is no point in time`
    ctx.addIssue({ code: 'custom', message: `${wrong}. ${WHEN_RULE}` })
    return z.NEVER
  })
export { whenText } from './entry-words'

const SENSOR_RULE = 'Write "core", "cooker" or "air"; a second one is "core-2".'
/** "core" is the probe in the meat, "cooker" the one where the crew clipped it. */
export const sensor = z
  .string({ error: (issue) => wrongSensor(issue.input) })
  .regex(SENSOR, { error: (issue) => wrongSensor(issue.input) })
const wrongSensor = (written: unknown) =>
  written === undefined ? `The probe is missing here. ${SENSOR_RULE}` : `${quoted(written)} is no probe. ${SENSOR_RULE}`
export type Sensor = string

const NAME_RULE = 'Write letters, digits, hyphens and points, at most 60 ("phone-3f2a").'
export const deviceField = z
  .string({ error: (issue) => wrongName(issue.input) })
  .regex(DEVICE, { error: (issue) => wrongName(issue.input) })
const wrongName = (written: unknown) =>
  written === undefined
    ? `The device is missing here. ${NAME_RULE}`
    : `${quoted(written)} names no device. ${NAME_RULE}`

export const person = text('the person', 40, 1)
/** A probe's own key has a device and no person. */
export const by = record('who logged it', { device: deviceField, person: person.optional() })
