import type { Card, CardStep } from './card'
import type { CheckedClaim } from './claim'
import { sentencesOf } from './tokens'

/** One sentence of a step with its claims, and whether paper carries it. */
export interface CardSentence {
  readonly text: string
  readonly claims: readonly CheckedClaim[]
  /** `own`: contradicted, and printed as the author's own statement for the reason given. */
  readonly prints: 'yes' | 'no' | 'own'
  /** The author's reason, where it prints as their own. */
  readonly reason: string | null
}
export interface PrintableStep {
  readonly id: string
  readonly by: CardStep['by']
  readonly sentences: readonly CardSentence[]
}
export const OWN_STATEMENT = 'The author’s own statement:'

/** A text of the card sentence by sentence: what is contradicted is kept for the screen and does not print, unless its author overrides it with a reason. */
export function printable(step: CardStep, checked: readonly CheckedClaim[]): PrintableStep {
  const sentences = sentencesOf(step.text).map((text): CardSentence => {
    const claims = checked.filter((c) => c.step === step.id && c.sentence === text)
    const wrong = claims.some((c) => c.finding === 'contradicted')
    const reason = (wrong && step.override.find((o) => o.sentence === text)?.reason) || null
    return { text, claims, prints: !wrong ? 'yes' : reason ? 'own' : 'no', reason }
  })
  return { id: step.id, by: step.by, sentences }
}
export const printableSteps = (card: Card, checked: readonly CheckedClaim[]): PrintableStep[] =>
  card.steps.map((step) => printable(step, checked))

/** What paper carries of a text; empty where nothing stands. */
export const printedText = (step: PrintableStep): string =>
  step.sentences
    .filter((s) => s.prints !== 'no')
    .map((s) => (s.prints === 'own' ? `${OWN_STATEMENT} ${s.text}` : s.text))
    .join(' ')
