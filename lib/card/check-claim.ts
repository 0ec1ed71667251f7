import type { Forecast } from '../model/forecast'
import type { Card } from './card'
import { checkDoneness } from './check-doneness'
import { checkEvenness } from './check-evenness'
import { checkSafety } from './check-safety'
import type { CheckedClaim, Claim, ClaimKind } from './claim'
import { between, type Found, findFigure } from './figures'
import { judge, readable, type Verdict } from './rules'
import { figureWords } from './wording'

export type CheckContext = Pick<Card, 'animal' | 'boneShare' | 'authority'>

/** What a finding adds to its claim. */
export type Check = Pick<CheckedClaim, 'finding' | 'figure' | 'found' | 'reason' | 'source' | 'trueSentence'>
export const modelSource = (f: Forecast) => `model ${f.modelVersion}`

const UNBOUND: Record<string, string> = {
  taste: 'A matter of taste; printed as the author’s opinion.',
  clock: 'A card knows no time of day; say how long instead.',
  degrees: 'Degrees of which scale? Write °C or °F.',
  storage: 'Neither plan nor model says how food is kept; the cautions do.',
  'how-often': 'The model reckons one turn; how often it is turned hardly moves the time.',
  aside: 'Work that the model does not reckon.',
  time: 'Nothing around it says which time is meant: warming up, roasting, searing, resting or all of it.',
  level: 'Nothing around it says which temperature is meant: the cooker, the pull, off the heat or when sliced.',
  share: 'Nothing around it says a share of what.',
  amount: 'An amount that the model knows nothing of.',
  length: 'A length that the model knows nothing of.',
  count: 'A number that the model knows nothing of.',
}
const cannot = (reason: string, found = ''): Check => ({
  finding: 'cannot-be-checked',
  figure: null,
  found,
  reason,
  source: '',
  trueSentence: null,
})

const WHAT: Partial<Record<ClaimKind, string>> = {
  'warm-up-time': 'from lighting to a steady cooker',
  'roast-time': 'from meat on to the pull',
  'sear-time': 'from the pull to off the heat',
  'rest-time': 'from off the heat to the first slice',
  'total-time': 'from lighting the fire to the first slice',
  'turn-time': 'after meat on',
  'probe-time': 'after meat on',
  'sliced-temperature': 'at the probe when sliced',
  'carryover-rise': 'from off the heat to the first slice',
  'pull-temperature': 'at the probe at the pull',
  'off-heat-temperature': 'at the probe off the heat',
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

function foundWords(claim: Claim, { figure, nature }: Found): string {
  const words = figureWords(claim, figure)
  if (nature === 'setting') return `${words} in the plan`
  if (claim.kind === 'yield') return yieldWords(claim, words)
  if (claim.says === 'lead') return `${words} from lighting to meat on`
  if (claim.says === 'coldest') return `${words} at the coldest point by the slice`
  return [words, WHAT[claim.kind]].filter(Boolean).join(' ')
}
const yieldWords = (claim: Claim, words: string) =>
  claim.unit === '1'
    ? `${words} of the weight lost`
    : claim.unit === 'kg'
      ? `${words} cooked, off the bone`
      : `serves ${words}`

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

/** Serving sizes have no source: at best with care. A planned end that the fire may miss likewise. */
function temper(claim: Claim, found: Found, verdict: Verdict, f: Forecast): Verdict {
  const unsure = claim.unit === 'people' || (missingShare(claim, f) > 0.05 && found.nature === 'outcome')
  return unsure && verdict.finding === 'borne-out' ? { ...verdict, finding: 'borne-out-with-care' } : verdict
}

function checkNumber(claim: Claim, f: Forecast, context: CheckContext): Check {
  const found = findFigure(f, claim, context.boneShare)
  if (!found) return cannot('The plan has no such thing to check it against.')
  if (!Number.isFinite(found.figure.likely)) return cannot('In most runs the cook never gets there.')
  const verdict = temper(claim, found, judge(claim, found), f)
  return {
    finding: verdict.finding,
    figure: found.nature === 'setting' ? found.figure : readable(found.figure, claim.unit),
    found: foundWords(claim, found),
    reason: reasonOf(claim, found, verdict, f),
    source: found.nature === 'setting' ? 'plan' : modelSource(f),
    trueSentence: null,
  }
}

function check(claim: Claim, f: Forecast, context: CheckContext): Check {
  if (claim.kind === 'unbound') return cannot(UNBOUND[claim.says] ?? 'Nothing in the plan or the model speaks of this.')
  if (claim.kind === 'doneness') return checkDoneness(claim, f, context.animal)
  if (claim.kind === 'safety') return checkSafety(claim, f, context)
  if (claim.kind === 'edge-to-edge') return checkEvenness(claim, f) ?? checkNumber(claim, f, context)
  return checkNumber(claim, f, context)
}

/** One claim with its finding, the figure found, the reason and where it comes from. */
export const checkClaim = (claim: Claim, f: Forecast, context: CheckContext): CheckedClaim => ({
  ...claim,
  ...check(claim, f, context),
})
