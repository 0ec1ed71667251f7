import type { Reading } from '../model/readings'
import type { Narrowings } from '../model/what-narrows'
import { type Celsius, celsius, formatTemp, type Kelvins, type Seconds, seconds, type UnitSystem } from '../units'
import type { MomentRow } from './moments'
import type { Why } from './why'
import { halfMinutes, minutesWord } from './words'

export interface NextTimeInput {
  readonly why: Why | null
  /** At the meat against the dial, as this cooker is known now. */
  readonly levelK: Kelvins | null
  /** What the roast asks of the cooker. */
  readonly asked: Celsius | null
  readonly rows: readonly MomentRow[]
  /** Since the meat went on. */
  readonly readings: readonly Reading[]
  /** Seconds after meat-on. */
  readonly pullS: Seconds | null
  readonly offS: Seconds | null
  readonly sliceS: Seconds | null
  readonly narrows: Narrowings | null
  readonly burns: boolean
  readonly units: UnitSystem
}

/** A dial this much off is worth turning. [estimate] */
const DIAL_K = 3
const WORTH_S = 300
const LID_WORTH_S = 90
/** A probe should not stay unread for longer. [estimate] */
const GAP_S = 1200
const MOST = 5

/** What to do otherwise at the next cook, each from a figure of this one. */
export function nextTime(input: NextTimeInput): readonly string[] {
  const said = [dial(input), light(input), lid(input), probe(input), gap(input), ...measure(input)]
  return said.filter((sentence) => sentence !== null).slice(0, MOST)
}

/** What the cooker has taught at the meat counts before what the sensor showed where it was clipped. */
function dial({ why, levelK, asked, units }: NextTimeInput): string | null {
  const cooker = why?.causes.find((cause) => cause.what === 'cooker')
  const offK = levelK ?? cooker?.offK ?? null
  if (offK === null || asked === null || Math.abs(offK) < DIAL_K) return null
  return `Set the dial to ${formatTemp(rounded(celsius(asked - offK)), units)} for ${formatTemp(asked, units)} at the meat.`
}
const rounded = (level: Celsius) => celsius(Math.round(level))

/** A cooker that takes longer to steady than the plan thinks, or a match that came late. */
function light({ rows, burns }: NextTimeInput): string | null {
  const row = (moment: string) => rows.find((one) => one.moment === moment)
  const [lit, steady, on] = [row('fire-lit'), row('cooker-steady'), row('meat-on')]
  const took = tookS(lit?.happened, steady?.happened)
  const asked = tookS(lit?.morning.likely, steady?.morning.likely)
  const what = burns ? 'Light the fire' : 'Switch the cooker on'
  if (took !== null && asked !== null && took - asked >= WORTH_S)
    return `${what} ${minutesWord(seconds(took - asked))} earlier: it took ${minutesWord(took)} to be steady, not ${minutesWord(asked)}.`
  const late = lit?.offMorning ?? 0
  if (late < WORTH_S || (on?.offMorning ?? 0) < late / 2) return null
  return `${what} on time: it came ${minutesWord(seconds(late))} late, and the meat with it.`
}
const tookS = (from: number | null | undefined, to: number | null | undefined): Seconds | null =>
  from == null || to == null ? null : seconds((to - from) / 1000)

function lid({ why }: NextTimeInput): string | null {
  const cause = why?.causes.find((one) => one.what === 'lid')
  if (!cause || cause.open - cause.asked < LID_WORTH_S) return null
  return `Keep the lid to ${halfMinutes(cause.asked)} minutes in all: it stood open ${halfMinutes(cause.open)}.`
}

/** The peak of a roast that is cut before it comes was never there to be seen. */
function probe({ rows, readings, offS, sliceS }: NextTimeInput): string | null {
  if (offS === null || sliceS === null) return null
  const row = (moment: string) => rows.find((one) => one.moment === moment)
  const [peak, slice] = [row('carryover-peak'), row('first-slice')]
  const read = readings.filter(({ sensor, t }) => sensor === 'core' && t >= offS && t <= sliceS).length
  if (read === 0) return 'Leave the probe in through the rest: nothing was read after the fire.'
  const due = peak?.morning.likely != null && peak.morning.likely < (slice?.morning.likely ?? 0)
  return due && peak.happened === null ? 'Leave the probe in through the rest: the carryover peak was not seen.' : null
}

function gap({ readings, pullS }: NextTimeInput): string | null {
  const times = readings
    .filter(({ sensor, t }) => sensor === 'core' && t >= 0 && t <= (pullS ?? Infinity))
    .map(({ t }) => t)
  if (times.length === 0) return pullS === null ? null : 'Put a probe in: nothing was read in the meat before the pull.'
  const ends = pullS === null ? times : [...times, pullS]
  const gaps = ends.slice(1).map((t, i) => t - (ends[i] as number))
  const longest = Math.max(0, ...gaps)
  return longest < GAP_S ? null : `Read the probe every ten minutes: ${minutesWord(seconds(longest))} went by without.`
}

/** What would have narrowed the window, of what was not measured this time. */
function measure({ narrows, readings, why }: NextTimeInput): (string | null)[] {
  const gain = (what: string) => narrows?.each.find((one) => one.what === what && !one.measured)?.gainS ?? 0
  const off = (gainS: number) => `${minutesWord(seconds(gainS))} off the window`
  const read = readings.some(({ sensor }) => sensor === 'cooker')
  const left = Math.abs(why?.unexplainedS ?? 0) >= WORTH_S
  return [
    !read && gain('cooker') >= WORTH_S ? `A second thermometer at the grate: ${off(gain('cooker'))}.` : null,
    gain('thickness') >= WORTH_S ? `Measure the thickest place: ${off(gain('thickness'))}.` : null,
    left && gain('start') >= WORTH_S
      ? `Read the middle before it goes on: ${off(gain('start'))}, and what is left over here would have a name.`
      : null,
  ]
}
