import { formatShare } from '../units'
import { clockAt, type ZoneClock } from './heat-line-clock'
import type { MomentFact } from './heat-line-facts'

const MINUTE = 60_000

/** "19:16 to 20:21"; nothing where the moment is certain to the minute, or has happened. */
export function windowWords({ early, late, reached, marked }: MomentFact, clock: ZoneClock): string {
  if (marked) return ''
  if (early === null) return neverWords(reached)
  if (late === null) return `from ${clockAt(clock, early)}; ${neverWords(reached)}`
  if (late - early < MINUTE) return ''
  return `${clockAt(clock, early)} to ${clockAt(clock, late)}`
}

/** "never in 7 % of cooks". */
export const neverWords = (reached: number) => `never in ${formatShare(Math.max(0.01, 1 - reached))} of cooks`
