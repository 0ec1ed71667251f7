import type { CheckedClaim, FindingKind, Judge } from '@/lib/card/claim'
import { nothingOnCardIsContradicted, oneSentenceOnCard } from '../../../words/card'

export function headline(checked: readonly CheckedClaim[]): string {
  const wrong = new Set(checked.filter((claim) => claim.finding === 'contradicted').map((claim) => claim.sentence)).size
  if (wrong === 0) return nothingOnCardIsContradicted
  return wrong === 1 ? oneSentenceOnCard : `${wrong} sentences on the card are not true yet.`
}

const isOpinion = ({ by }: CheckedClaim) => by === 'author'
export function tally(checked: readonly CheckedClaim[]): string {
  const opinions = checked.filter(isOpinion).length
  const count = (finding: FindingKind) =>
    checked.filter((claim) => claim.finding === finding && !isOpinion(claim)).length
  const parts = [
    `${count('borne-out')} borne out`,
    `${count('borne-out-with-care')} with care`,
    `${count('contradicted')} contradicted`,
    `${count('cannot-be-checked')} cannot be checked`,
    ...(opinions > 0 ? [`${opinions} the author’s opinion`] : []),
  ]
  return `${checked.length} figures and words are claims: ${parts.join(', ')}.`
}

const WHO: readonly (readonly [Judge, string])[] = [
  ['log', 'the day’s log'],
  ['plan', 'the plan'],
  ['model', 'the model'],
  ['table', 'published tables'],
]
/** "12 judged by the day’s log, 8 by the plan, 3 by published tables." */
export function judges(checked: readonly CheckedClaim[]): string {
  const parts = WHO.map(([by, name]) => [checked.filter((claim) => claim.by === by).length, name] as const)
    .filter(([n]) => n > 0)
    .map(([n, name], i) => `${n}${i === 0 ? ' judged' : ''} by ${name}`)
  return parts.length > 0 ? `${parts.join(', ')}.` : ''
}
