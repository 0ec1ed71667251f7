import type { Forecast } from '../model/forecast'
import type { SourceId } from '../model/sources'
import { celsius, formatTempBoth, fromFahrenheit } from '../units'
import type { Keeping } from './bind-keeping'
import { type Check, cannot } from './check'
import type { Claim, Figure } from './claim'

const [HOUR, DAY, KG_PER_LB] = [3600, 86400, 0.45359237]
const MONTH = 30.44 * DAY

/** What a table prints: up to `right` a claim is its own, up to `care` some other table has it so, beyond it is against the table. */
interface Row {
  readonly source: SourceId
  readonly figure: Figure
  readonly says: string
  readonly why: string
  /** Greatest (or, of least values, smallest) that is borne out, and that is borne out with care. */
  readonly right: number
  readonly care: number
  readonly mostly: 'at-most' | 'at-least' | 'near'
  readonly mend: string
}
const point = (x: number): Figure => ({ low: x, likely: x, high: x })
const both = (f: number) => formatTempBoth(celsius(Math.round(fromFahrenheit(f))))

const FIXED: Partial<Record<Keeping, Row>> = {
  out: {
    source: 'fsis-safe-minimum',
    figure: point(2 * HOUR),
    says: `2 h out of the fridge at most, 1 h in air above ${both(90)}`,
    why: 'The authority’s rule for food left out.',
    right: 2 * HOUR,
    care: 2 * HOUR,
    mostly: 'at-most',
    mend: '2 hours',
  },
  fridge: {
    source: 'fsis-leftovers',
    figure: { low: 3 * DAY, likely: 3 * DAY, high: 4 * DAY },
    says: '3 to 4 days in the fridge',
    why: 'The authority’s advice on cooked leftovers.',
    right: 4 * DAY,
    care: 4 * DAY,
    mostly: 'at-most',
    mend: '3 to 4 days',
  },
  freezer: {
    source: 'fsis-leftovers',
    figure: { low: 3 * MONTH, likely: 3 * MONTH, high: 4 * MONTH },
    says: '3 to 4 months frozen',
    why: 'The authority’s advice on cooked leftovers; frozen for longer they stay safe and grow dry.',
    right: 4 * MONTH,
    care: Number.POSITIVE_INFINITY,
    mostly: 'at-most',
    mend: '3 to 4 months',
  },
  reheat: {
    source: 'fsis-leftovers',
    figure: point(fromFahrenheit(165)),
    says: `${both(165)} for leftovers`,
    why: 'The authority’s temperature for leftovers.',
    right: fromFahrenheit(165) - 1,
    care: fromFahrenheit(165) - 1,
    mostly: 'at-least',
    mend: both(165),
  },
  cold: {
    source: 'fda-food-code-2017',
    figure: { low: fromFahrenheit(40), likely: fromFahrenheit(40), high: fromFahrenheit(41) },
    says: `${both(40)} or colder; the Food Code allows ${both(41)}`,
    why: 'Above it food spoils faster than the storage times allow for.',
    right: fromFahrenheit(40) + 0.1,
    care: fromFahrenheit(41) + 0.1,
    mostly: 'at-most',
    mend: both(40),
  },
  'cool-21': {
    source: 'fda-food-code-2017',
    figure: point(2 * HOUR),
    says: `${both(135)} to ${both(70)} within 2 h`,
    why: 'The first step of the Food Code’s cooling.',
    right: 2 * HOUR,
    care: 2 * HOUR,
    mostly: 'at-most',
    mend: '2 hours',
  },
  'cool-5': {
    source: 'fda-food-code-2017',
    figure: point(6 * HOUR),
    says: `${both(135)} to ${both(41)} within 6 h, of which 2 h to ${both(70)}`,
    why: 'Both steps of the Food Code’s cooling.',
    right: 6 * HOUR,
    care: 6 * HOUR,
    mostly: 'at-most',
    mend: '6 hours',
  },
  'thaw-warm': {
    source: 'fsis-big-thaw',
    figure: point(0),
    says: 'in a fridge or in cold water, never at room temperature',
    why: 'The outside is warm for hours before the middle has thawed.',
    right: -1,
    care: -1,
    mostly: 'at-most',
    mend: '',
  },
  'from-frozen': {
    source: 'fsis-big-thaw',
    figure: point(1.5),
    says: 'about half as long again from frozen',
    why: 'The authority’s word on roasts cooked without thawing.',
    right: 0.15,
    care: 0.3,
    mostly: 'near',
    mend: 'half as long again',
  },
}

/** [fsis-big-thaw] a day for each 4 to 5 lb in a fridge; half an hour for each pound in cold water. */
function thawing(says: Keeping, massKg: number): Row | null {
  if (says !== 'thaw-fridge' && says !== 'thaw-water') return null
  const lb = massKg / KG_PER_LB
  const fridge = says === 'thaw-fridge'
  const [low, high] = fridge ? [Math.floor(lb / 5) * DAY || DAY, Math.ceil(lb / 4) * DAY] : [lb * 1800, lb * 1800]
  const words = fridge
    ? daysWords(Math.round(low / DAY), Math.round(high / DAY))
    : `${Math.round(low / 1800) / 2} hours`
  return {
    source: 'fsis-big-thaw',
    figure: { low, likely: (low + high) / 2, high },
    says: `${words} for this weight, ${fridge ? 'in a fridge' : 'in cold water changed every half hour'}`,
    why: fridge ? 'A day for each 4 to 5 lb.' : 'Half an hour for each pound.',
    right: fridge ? DAY / 4 : 0.1 * low,
    care: fridge ? DAY : 0.25 * low,
    mostly: 'near',
    mend: words,
  }
}

function daysWords(low: number, high: number): string {
  if (low < high) return `${low} to ${high} days`
  return low === 1 ? 'a day' : `${low} days`
}

function finding({ mostly, right, care, figure }: Row, claim: Claim): Check['finding'] {
  const off =
    mostly === 'near'
      ? Math.max(0, claim.low - figure.high, figure.low - claim.high)
      : mostly === 'at-most'
        ? boundOf(claim.high, claim.low)
        : -boundOf(claim.low, claim.high)
  // "At least" of the very limit is beyond it.
  if (mostly === 'at-most' && !Number.isFinite(claim.high) && claim.low >= care) return 'contradicted'
  const [good, fair] = mostly === 'at-least' ? [-right, -care] : [right, care]
  return off <= good ? 'borne-out' : off <= fair ? 'borne-out-with-care' : 'contradicted'
}
/** "At least" of what the table limits upward says nothing of its far end: its near one counts. */
const boundOf = (end: number, other: number) => (Number.isFinite(end) ? end : other)

/** The words of a claim hold its hedge ("within four hours"). */
function mended({ hedge, unit }: Claim, words: string): string {
  if (hedge === 'at-most') return `${unit === 's' ? 'within' : 'at most'} ${words}`
  return hedge === 'at-least' && unit === 'degC' ? `at least ${words}` : words
}

/** A claim about thawing, chilling, keeping or warming up again, against the authority's printed tables. */
export function checkKeeping(claim: Claim, f: Forecast): Check {
  const says = claim.says as Keeping
  const row = FIXED[says] ?? thawing(says, f.cook.roast.mass)
  if (!row) return cannot('No table that we hold speaks of this.')
  const found = finding(row, claim)
  return {
    finding: found,
    figure: row.figure,
    found: row.says,
    reason: row.why,
    by: 'table',
    source: row.source,
    mend: found === 'contradicted' && row.mend ? mended(claim, row.mend) : null,
    trueSentence: null,
  }
}
