import type { Claim, Figure, FindingKind } from './claim'
import type { Verdict } from './rules'

/**
 * The log is one cook, the model says how cooks of this plan scatter. The whole rule where both speak:
 *
 * the filmed cook was not so                      contradicted, whatever the model says
 * it was so, and the model says contradicted      with care: a reader's cook will not be so
 * it was nearly so                                with care; contradicted where the model has it otherwise too
 * it was so                                       borne out, unless the model cares about more than the likely
 *                                                 (narrower or wider than is known, true of a part of the cooks)
 */
export type OnTheDay = 'so' | 'nearly' | 'not-so'

interface Tolerance {
  readonly right: number
  readonly care: number
}
/** How far a claim may be off what the log has: marks are some seconds late, thermometers a degree wrong, times are said round. [estimate] */
const DAY: Partial<Record<Claim['kind'], Tolerance>> = {
  'cooker-temperature': { right: 8, care: 20 },
  'sear-temperature': { right: 25, care: 60 },
  'pull-temperature': { right: 1.5, care: 3 },
  'off-heat-temperature': { right: 1.5, care: 3 },
  'sliced-temperature': { right: 1.5, care: 3 },
  'carryover-rise': { right: 1.5, care: 3 },
  'turn-time': { right: 300, care: 600 },
  'probe-time': { right: 300, care: 600 },
}
/** Other times: 5 and 15 % of them, never less than a mark may be off. */
export const dayToleranceOf = (kind: Claim['kind'], filmed: number): Tolerance =>
  DAY[kind] ?? { right: Math.max(120, 0.05 * filmed), care: Math.max(300, 0.15 * filmed) }

/** A claim against what the log has: `low` and `high` are where a cooker wandered, elsewhere they are the one figure. */
export function judgeByLog(claim: Pick<Claim, 'kind' | 'low' | 'high' | 'hedge'>, filmed: Figure): OnTheDay {
  const { right, care } = dayToleranceOf(claim.kind, filmed.likely)
  const off = Math.max(0, claim.low - filmed.likely, filmed.likely - claim.high)
  if (off <= (claim.hedge === 'about' ? Math.min(2 * right, care) : right)) return 'so'
  const wandered = claim.low <= filmed.high && claim.high >= filmed.low
  return wandered || off <= care ? 'nearly' : 'not-so'
}

/** What the log does not lift: more is said, or less, than of one cook. */
const MODELS_OWN: readonly Verdict['why'][] = ['narrow', 'wide', 'part-of-it']

/** `unsure`: a part of the model's cooks never gets there. */
export function joined(day: OnTheDay, model: Verdict | null, unsure = false): FindingKind {
  const otherwise = model?.finding === 'contradicted'
  if (day === 'not-so' || (day === 'nearly' && otherwise)) return 'contradicted'
  const care = day === 'nearly' || unsure || otherwise
  return care || (model && MODELS_OWN.includes(model.why)) ? 'borne-out-with-care' : 'borne-out'
}
