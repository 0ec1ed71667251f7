import type { Claim, ClaimKind } from './claim'
import type { Found } from './figures'
import { figureWords } from './wording'

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

/** What a time runs between, or where a level was read. */
export const whatOf = (claim: Claim): string =>
  claim.says === 'lead' ? 'from lighting to meat on' : (WHAT[claim.kind] ?? '')

export function foundWords(claim: Claim, { figure, nature }: Found): string {
  const words = figureWords(claim, figure)
  if (nature === 'setting') return `${words} in the plan`
  if (claim.kind === 'yield') return yieldWords(claim, words)
  if (claim.says === 'coldest') return `${words} at the coldest point by the slice`
  return [words, whatOf(claim)].filter(Boolean).join(' ')
}
const yieldWords = (claim: Claim, words: string) =>
  claim.unit === '1'
    ? `${words} of the weight lost`
    : claim.unit === 'kg'
      ? `${words} cooked, off the bone`
      : `serves ${words}`
