import type { CookFacts } from '../log/cook-facts'
import type { Forecast } from '../model/forecast'
import { type Check, type CheckContext, cannot, modelSource } from './check'
import { byLog } from './check-by-log'
import type { Claim } from './claim'
import { between, type Found, findFigure } from './figures'
import { foundWords } from './found-words'
import { logFigure } from './log-figures'
import { judge, readable, type Verdict } from './rules'
import { figureWords, settingWords } from './wording'

/** What plan or model say of a claim, with how it was judged; null where they have no such thing. */
export interface ByModel {
  readonly check: Check
  readonly verdict: Verdict | null
  readonly found: Found | null
  /** In some of the model's cooks the end of this time never comes. */
  readonly unsure: boolean
}

const WHY: Record<Verdict['why'], string> = {
  'as-planned': 'As the plan sets it.',
  'near-plan': 'Near the plan, but not what it sets.',
  'off-plan': 'The plan sets something else.',
  inside: 'Inside what 9 cooks in 10 give, near the likely.',
  beside: 'Possible, but off the likely.',
  narrow: 'True of some cooks; narrower than is known.',
  wide: 'True, and wider than is known.',
  beyond: 'Outside what 9 cooks in 10 give.',
  'all-of-it': 'So it is in at least 19 cooks of 20.',
  'part-of-it': 'So it is in a part of the cooks only.',
}
const COMMON_PRACTICE = '125 to 250 g of cooked meat a head is common practice, no source.'
function reasonOf(claim: Claim, found: Found, verdict: Verdict, f: Forecast): string {
  const why = claim.unit === 'people' ? `${WHY[verdict.why]} ${COMMON_PRACTICE}` : WHY[verdict.why]
  const missing = missingShare(claim, f)
  if (missing === 0 || found.nature === 'setting') return why
  return `${why} In ${Math.max(1, Math.round(missing * 100))} % of runs it never gets there.`
}

/** The share of members that never come to the end of a time. */
function missingShare(claim: Claim, f: Forecast): number {
  if (claim.unit !== 's') return 0
  const end = claim.kind === 'roast-time' ? between(f, 'meat-on', 'pull') : between(f, 'meat-on', 'first-slice')
  if (!end) return 0
  return end.reduce((n, t) => n + (Number.isFinite(t) ? 0 : 1), 0) / end.length
}

function byModel(claim: Claim, f: Forecast, { boneShare }: CheckContext): ByModel {
  const found = findFigure(f, claim, boneShare)
  const nothing = (reason: string) => ({ check: cannot(reason), verdict: null, found: null, unsure: false })
  if (!found) return nothing('The plan has no such thing to check it against.')
  if (!Number.isFinite(found.figure.likely)) return nothing('In most runs the cook never gets there.')
  // Serving sizes have no source: at best with care. A planned end that the fire may miss likewise.
  const unsure = claim.unit === 'people' || (missingShare(claim, f) > 0.05 && found.nature === 'outcome')
  const verdict = judge(claim, found)
  const figure = found.nature === 'setting' ? found.figure : readable(found.figure, claim.unit)
  const check: Check = {
    finding: unsure && verdict.finding === 'borne-out' ? 'borne-out-with-care' : verdict.finding,
    figure,
    found: foundWords(claim, found),
    reason: reasonOf(claim, found, verdict, f),
    by: found.nature === 'setting' ? 'plan' : 'model',
    source: found.nature === 'setting' ? 'plan' : modelSource(f),
    mend: verdict.finding === 'contradicted' ? figureWords(claim, figure) : null,
    trueSentence: null,
  }
  return { check, verdict, found, unsure }
}

/** A number against plan and model, and against the day's log where it has one. */
export function checkNumber(claim: Claim, f: Forecast, context: CheckContext): Check {
  const model = byModel(claim, f, context)
  const filmed = filmedFigure(context.facts, claim)
  const check = filmed ? byLog(claim, filmed, model) : model.check
  return /^gas/i.test(claim.words) ? { ...check, reason: `${gasMarkWords(claim)} ${check.reason}` } : check
}
/** [gas-mark] A mark is no temperature until somebody says which. */
const gasMarkWords = ({ words, low }: Claim) =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)} is ${settingWords(low)} by the usual conversion.`

const filmedFigure = (facts: CookFacts | null | undefined, claim: Claim) => (facts ? logFigure(facts, claim) : null)
