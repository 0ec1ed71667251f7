import type { Forecast } from '../model/forecast'
import { type Check, type CheckContext, cannot } from './check'
import { checkDoneness } from './check-doneness'
import { checkEvenness } from './check-evenness'
import { checkFreeFrom } from './check-free-from'
import { checkKeeping } from './check-keeping'
import { checkNumber } from './check-number'
import { checkSafety } from './check-safety'
import type { CheckedClaim, Claim } from './claim'

const UNBOUND: Record<string, string> = {
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
  ratio: 'Nothing around it says how much longer than what.',
  'length-of-day': 'No length of time; say how many hours.',
  count: 'A number that the model knows nothing of.',
}
/** Taste is nobody's to check: it prints, and is the author's. */
const OPINION: Check = {
  ...cannot('A matter of taste; printed as the author’s opinion.'),
  by: 'author',
  source: 'the author’s opinion',
}

function check(claim: Claim, f: Forecast, context: CheckContext): Check {
  if (claim.kind === 'unbound' && claim.says === 'taste') return OPINION
  if (claim.kind === 'unbound' && claim.says === 'free-from') return checkFreeFrom(claim, context)
  if (claim.kind === 'unbound') return cannot(UNBOUND[claim.says] ?? 'Nothing in the plan or the model speaks of this.')
  if (claim.kind === 'keeping') return checkKeeping(claim, f)
  if (claim.kind === 'doneness') return checkDoneness(claim, f, context)
  if (claim.kind === 'safety') return checkSafety(claim, f, context)
  if (claim.kind === 'edge-to-edge') return checkEvenness(claim, f) ?? checkNumber(claim, f, context)
  return checkNumber(claim, f, context)
}

/** One claim with its finding, the figure found, the reason and where it comes from. */
export const checkClaim = (claim: Claim, f: Forecast, context: CheckContext): CheckedClaim => ({
  ...claim,
  ...check(claim, f, context),
})
