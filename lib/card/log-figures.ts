import type { CookFacts } from '../log/cook-facts'
import type { MomentId } from '../model/moment-ids'
import type { Claim, Figure } from './claim'

const point = (value: number | null): Figure | null =>
  value === null ? null : { low: value, likely: value, high: value }

/** From one marked moment to another, s; null where one of them was not marked. */
function between({ at }: CookFacts, from: MomentId, to: MomentId): number | null {
  const [a, b] = [at[from], at[to]]
  return a === undefined || b === undefined || b < a ? null : b - a
}

/** What the day's log has on a claim of this kind, in the claim's unit; null where it says nothing. */
export function logFigure(facts: CookFacts, claim: Pick<Claim, 'kind' | 'says'>): Figure | null {
  const time = timeOf(facts, claim)
  return time === undefined ? levelOf(facts, claim) : point(time)
}

/** Undefined for a claim of no time. */
function timeOf(facts: CookFacts, { kind, says }: Pick<Claim, 'kind' | 'says'>): number | null | undefined {
  switch (kind) {
    case 'warm-up-time':
      return between(facts, 'fire-lit', says === 'lead' ? 'meat-on' : 'cooker-steady')
    case 'roast-time':
      return between(facts, 'meat-on', 'pull')
    case 'sear-time':
      // Without a sear the meat comes off at the pull, and that is no sear of no length.
      return between(facts, 'pull', 'off-heat') || null
    case 'rest-time':
      return between(facts, 'off-heat', 'first-slice')
    case 'total-time':
      return between(facts, 'fire-lit', 'first-slice')
    case 'turn-time':
      return between(facts, 'meat-on', 'turn')
    case 'probe-time':
      return between(facts, 'meat-on', 'probe-in')
    default:
      return undefined
  }
}

function levelOf({ probeC, cookerC }: CookFacts, { kind, says }: Pick<Claim, 'kind' | 'says'>): Figure | null {
  switch (kind) {
    case 'cooker-temperature':
      return cookerC.roast
    case 'sear-temperature':
      return cookerC.sear
    case 'pull-temperature':
      return point(probeC.pull ?? null)
    case 'off-heat-temperature':
      return point(probeC['off-heat'] ?? null)
    case 'sliced-temperature':
      // One probe in one place is not the coldest point.
      return says === 'coldest' ? null : point(probeC['first-slice'] ?? null)
    case 'carryover-rise':
      return point(riseOf(probeC))
    default:
      return null
  }
}
const riseOf = (probeC: CookFacts['probeC']): number | null =>
  probeC['off-heat'] === undefined || probeC['first-slice'] === undefined
    ? null
    : probeC['first-slice'] - probeC['off-heat']
