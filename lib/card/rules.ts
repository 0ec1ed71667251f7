import type { Claim, Figure, FindingKind } from './claim'
import type { Found } from './figures'

/**
 * When a claim is borne out. The whole rule, for claims that are numbers:
 *
 * setting (the plan fixes it): the distance from the plan to the claim
 *   ≤ `right`                                   borne out
 *   ≤ `care`                                    with care
 *   more                                        contradicted
 * outcome (the ensemble finds it): the claim against the 5 to 95 % window of width W, both widened by rounding
 *   disjoint from the window                    contradicted
 *   "at least", "at most": whole window inside  borne out; only a part of it: with care
 *   point within W/4 of likely ("about": W/2)   borne out; elsewhere in the window: with care
 *   range that holds likely, W/3 to 3 W wide    borne out; narrower, wider or off likely: with care
 *
 * So a claim drawn from the window is never contradicted, and one two windows off always is.
 */
export interface Verdict {
  readonly finding: FindingKind
  readonly why:
    | 'as-planned'
    | 'near-plan'
    | 'off-plan'
    | 'inside'
    | 'beside'
    | 'narrow'
    | 'wide'
    | 'beyond'
    | 'all-of-it'
    | 'part-of-it'
}
const verdict = (finding: FindingKind, why: Verdict['why']): Verdict => ({ finding, why })

/** How far a setting may be said off the plan. Rounding of print, then the scatter of cookers at meat level. */
interface Tolerance {
  readonly right: number
  readonly care: number
}
const SETTING: Partial<Record<Claim['kind'], Tolerance>> = {
  'cooker-temperature': { right: 6, care: 12 },
  'sear-temperature': { right: 15, care: 40 },
  'pull-temperature': { right: 1, care: 2 },
  'off-heat-temperature': { right: 1, care: 2 },
  'start-temperature': { right: 1.5, care: 3 },
  thickness: { right: 0.005, care: 0.01 },
  'turn-time': { right: 300, care: 600 },
  'probe-time': { right: 300, care: 600 },
}
/** Mass: 5 and 10 % of it. */
export const toleranceOf = (kind: Claim['kind'], plan: number): Tolerance =>
  SETTING[kind] ?? { right: 0.05 * plan, care: 0.1 * plan }

/** The least width of a window: what nobody can read off finer, in the unit. */
const GRAIN: Record<Claim['unit'], number> = { s: 60, degC: 1, K: 1, '1': 0.01, kg: 0.1, m: 0.002, people: 1, word: 1 }
/** Half of what a printed number is rounded to: an hour and more to 5 minutes. */
const rounding = (unit: Claim['unit'], size: number) => (unit === 's' && size >= 3600 ? 150 : GRAIN[unit] / 2)

/** The window, no narrower than it can be read. */
export function readable(figure: Figure, unit: Claim['unit']): Figure {
  const short = Math.max(0, GRAIN[unit] - (figure.high - figure.low)) / 2
  return { low: figure.low - short, likely: figure.likely, high: figure.high + short }
}

function judgeSetting(claim: Claim, plan: number): Verdict {
  const { right, care } = toleranceOf(claim.kind, plan)
  const off = Math.max(0, claim.low - plan, plan - claim.high)
  const vague = Number.isFinite(claim.high - claim.low) && claim.high - claim.low > 2 * care
  if (off <= right) return vague ? verdict('borne-out-with-care', 'wide') : verdict('borne-out', 'as-planned')
  return off <= care ? verdict('borne-out-with-care', 'near-plan') : verdict('contradicted', 'off-plan')
}

function judgeOutcome(claim: Claim, found: Figure): Verdict {
  const figure = readable(found, claim.unit)
  const width = figure.high - figure.low
  const slack = Math.min(rounding(claim.unit, Math.abs(figure.likely)), width / 2)
  if (claim.high < figure.low - slack || claim.low > figure.high + slack) return verdict('contradicted', 'beyond')
  if (claim.hedge === 'at-least' || claim.hedge === 'at-most') {
    const all = claim.low <= figure.low + slack && claim.high >= figure.high - slack
    return all ? verdict('borne-out', 'all-of-it') : verdict('borne-out-with-care', 'part-of-it')
  }
  return claim.low === claim.high ? judgePoint(claim, figure, slack) : judgeRange(claim, figure, slack)
}

function judgePoint(claim: Claim, figure: Figure, slack: number): Verdict {
  const near = (figure.high - figure.low) * (claim.hedge === 'about' ? 0.5 : 0.25)
  const off = Math.abs(claim.low - figure.likely)
  return off <= near + slack ? verdict('borne-out', 'inside') : verdict('borne-out-with-care', 'beside')
}

function judgeRange(claim: Claim, figure: Figure, slack: number): Verdict {
  const [said, known] = [claim.high - claim.low, figure.high - figure.low]
  const holds = claim.low <= figure.likely + slack && claim.high >= figure.likely - slack
  if (!holds) return verdict('borne-out-with-care', 'beside')
  if (said + 2 * slack < known / 3) return verdict('borne-out-with-care', 'narrow')
  return said > 3 * known + 2 * slack ? verdict('borne-out-with-care', 'wide') : verdict('borne-out', 'inside')
}

export const judge = (claim: Claim, found: Found): Verdict =>
  found.nature === 'setting' ? judgeSetting(claim, found.figure.likely) : judgeOutcome(claim, found.figure)
