import type { CookFacts } from '../log/cook-facts'
import type { Forecast } from '../model/forecast'
import type { Card } from './card'
import type { CheckContext } from './check'
import { checkClaim } from './check-claim'
import type { CheckedClaim } from './claim'
import type { Topic } from './cues'
import { readClaims } from './read-claims'

/** What a sentence is checked against, and where it stands. */
export interface SentenceContext {
  readonly card: Pick<Card, 'cook' | 'animal' | 'boneShare' | 'authority'> & Pick<CheckContext, 'recipe'>
  readonly forecast: Forecast
  readonly facts?: CookFacts | null
  readonly step: string
  readonly before: Topic | null
}

/** The claims of one sentence with their findings; the contradicted ones carry the sentence that would be true. */
export function checkSentence(sentence: string, context: SentenceContext): CheckedClaim[] {
  const { card, forecast, facts, step, before } = context
  const claims = readClaims(sentence, { cook: card.cook, step, massKg: forecast.cook.roast.mass, before })
  const checked = claims.map((claim) => checkClaim(claim, forecast, { ...card, facts }))
  const trueSentence = rewrite(sentence, checked)
  return checked.map((c) => (c.finding === 'contradicted' ? { ...c, trueSentence } : c))
}

/** The sentence with each contradicted number in its place; a false word of safety or evenness takes the whole sentence with it. */
function rewrite(sentence: string, checked: readonly CheckedClaim[]): string | null {
  const wrong = checked.filter((c) => c.finding === 'contradicted')
  const whole = wrong.find((c) => c.trueSentence)?.trueSentence
  if (whole) return whole
  if (wrong.some((c) => c.mend === null)) return null
  return wrong.reduceRight((text, claim) => {
    const words = claim.mend ?? claim.words
    const cased = /^\p{Lu}/u.test(claim.words) ? words.charAt(0).toUpperCase() + words.slice(1) : words
    return text.slice(0, claim.start) + cased + text.slice(claim.start + claim.words.length)
  }, sentence)
}
