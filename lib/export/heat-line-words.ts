import { formatClock } from '../plan/clock'
import { formatShare } from '../units'
import type { MomentFact } from './heat-line-facts'

const MINUTE = 60_000

/** "19:16 to 20:21"; nothing where the moment is certain to the minute. */
export function windowWords({ early, late, reached }: MomentFact, zone: string): string {
  if (early === null) return neverWords(reached)
  if (late === null) return `from ${formatClock(early, zone)}; ${neverWords(reached)}`
  if (late - early < MINUTE) return ''
  return `${formatClock(early, zone)} to ${formatClock(late, zone)}`
}

/** "never in 7 % of cooks". */
export const neverWords = (reached: number) => `never in ${formatShare(Math.max(0.01, 1 - reached))} of cooks`
