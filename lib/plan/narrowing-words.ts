import { type Measurable, type Narrowing, type Narrowings, type PullWindow, widthOf } from '../model/what-narrows'
import { type Instant, later, seconds } from '../units'
import { formatClock } from './clock'

/** Where the plan stands on the clock. */
export interface OnTheClock {
  readonly meatOn: Instant
  readonly zone: string
}
/** Less than this is within what two runs of the model differ by. */
const WORTH_S = 120

/** What stands under the field of a thing that is or could be measured; none where it would not be worth the walk. */
export function narrowingSentence(found: Narrowing, { now }: Narrowings, clock: OnTheClock): string | undefined {
  const { what, measured, other, gainS } = found
  if (measured && Math.abs(gainS) < WORTH_S && !hasMoved(now, other))
    return `Measured. For this cook the window at pull, ${inMinutes(now)}, hardly hangs on it.`
  if (measured) return `Measured: pull ${onClock(now, clock)} instead of ${onClock(other, clock)}.`
  if (gainS >= WORTH_S)
    return `${MEASURED[what]} the window at pull shrinks from ${wholeMinutes(now)} to ${inMinutes(other)}.`
  return what === 'thickness' ? `Measured it would hardly narrow the window at pull, ${inMinutes(now)}.` : undefined
}
const MEASURED: Readonly<Record<Measurable, string>> = {
  thickness: 'Measure it:',
  'width-and-length': 'With width and length measured',
  start: 'With a thermometer in the middle',
  cooker: 'With a thermometer at meat level',
}

const middleOf = ({ earlyS, lateS }: PullWindow) => (earlyS + lateS) / 2
const hasMoved = (a: PullWindow, b: PullWindow) => Math.abs(middleOf(a) - middleOf(b)) >= WORTH_S
const wholeMinutes = (window: PullWindow) => Math.round(widthOf(window) / 60)
const inMinutes = (window: PullWindow) => `${wholeMinutes(window)} min`
const onClock = ({ earlyS, lateS }: PullWindow, { meatOn, zone }: OnTheClock) =>
  [earlyS, lateS].map((at) => formatClock(later(meatOn, seconds(Math.round(at))), zone)).join(' to ')
