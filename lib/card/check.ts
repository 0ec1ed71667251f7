import type { CookFacts } from '../log/cook-facts'
import type { Forecast } from '../model/forecast'
import type { Card } from './card'
import type { CheckedClaim } from './claim'

/** What a claim is checked against besides the forecast. */
export interface CheckContext extends Pick<Card, 'animal' | 'boneShare' | 'authority'> {
  /** What the card's own list is known to contain. */
  readonly recipe?: Pick<Card['recipe'], 'contains'>
  /** What the day's log says of the cook, where it was filmed. */
  readonly facts?: CookFacts | null
}

/** What a finding adds to its claim. */
export type Check = Pick<
  CheckedClaim,
  'finding' | 'figure' | 'found' | 'reason' | 'by' | 'source' | 'mend' | 'trueSentence'
>
export const modelSource = (f: Forecast) => `model ${f.modelVersion}`
export const LOG_SOURCE = 'the day’s log'

export const cannot = (reason: string): Check => ({
  finding: 'cannot-be-checked',
  figure: null,
  found: '',
  reason,
  by: 'nobody',
  source: '',
  mend: null,
  trueSentence: null,
})
