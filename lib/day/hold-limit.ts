import { coldestBetween } from '../model/coldest-history'
import { cutOf } from '../model/custom-cut'
import type { Forecast } from '../model/forecast'
import type { HotHold } from '../model/hot-hold'
import { quantileOf } from '../model/quantiles'
import { holdOf } from '../model/safety-summary'
import { type HoldPlace, holdWords } from '../plan/day-changes'
import { formatDuration, formatShare, formatTempBoth, seconds } from '../units'
import { sorted } from './samples'

/** How long a roast may be held in one place. */
export interface HoldLimit {
  readonly place: HoldPlace
  readonly planned: number
  /** Minutes that all but 5 % of cooks stay hot enough; as long as planned where they do to its end. */
  readonly minutes: number
  readonly hold: HotHold
  readonly sentence: string
}
const MISS_SHARE = 0.05

/** From the safety ledger; null where the cook has no hold in that place, or one that goes by a reading. */
export function holdLimit(forecast: Forecast, place: HoldPlace): HoldLimit | null {
  const cut = cutOf(forecast.cook.roast)
  const { stages } = forecast.cook
  const index = stages.findLastIndex((s) => s.do === 'hold' && (s.in ?? 'cooker') === place)
  const lengths = stages
    .slice(index)
    .map((s) => (s.do !== 'preheat' && 'after' in s.until ? s.until.after : Number.NaN))
  const [heldS = 0, ...after] = lengths
  const toS = after.reduce((sum, s) => sum + s, 0)
  if (index < 0 || !cut || !Number.isFinite(heldS + toS)) return null
  const hold = holdOf(forecast, cut.animal)
  if (!hold) return null
  const kept = Float64Array.from({ length: forecast.members }, (_, m) =>
    hotForS(forecast, m, { heldS, toS, leastC: hold.leastC }),
  )
  const minutes = Math.floor(quantileOf(sorted(kept), MISS_SHARE) / 60)
  const limit = { place, planned: heldS / 60, minutes, hold }
  return { ...limit, sentence: sentenceOf(limit) }
}

type Span = { readonly heldS: number; readonly toS: number; readonly leastC: number }
/** How long one member stays at the least temperature from the beginning of its hold. */
function hotForS(f: Forecast, m: number, { heldS, toS, leastC }: Span): number {
  const slice = f.moments['first-slice']?.[m] ?? Number.POSITIVE_INFINITY
  if (!Number.isFinite(slice)) return heldS
  const begin = slice - toS - heldS
  for (let t = 0; t < heldS; t += f.trace.stepS) if (coldestBetween(f, m, begin + t, begin + t) < leastC) return t
  return heldS
}

function sentenceOf({ place, planned, minutes, hold }: Omit<HoldLimit, 'sentence'>): string {
  const least = `${formatTempBoth(hold.leastC)}, the least that the FDA Food Code asks of a roast held hot`
  const time = (min: number) => formatDuration(seconds(min * 60))
  const held = `Held ${time(planned)} ${holdWords(place)}`
  if (minutes >= planned) return `${held} it stays at or above ${least}, in ${formatShare(hold.keptShare)} of cooks.`
  const below = `${held} it falls below ${least}, in ${formatShare(1 - hold.keptShare)} of cooks`
  return minutes < 5
    ? `${below}: do not hold it so, or bring it hotter.`
    : `${below}: hold it ${time(minutes)} at most.`
}
