import type { Forecast } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { medianOf } from '../model/quantiles'
import { type Seconds, seconds } from '../units'
import { between } from './figures'
import { aboutTime } from './wording'

/** One part of the day on the card: as long as it is likely to be. */
export interface DayPart {
  readonly id: 'warm-up' | 'roast' | 'sear' | 'rest'
  readonly label: string
  readonly likely: Seconds
  readonly words: string
}
const PARTS: readonly (readonly [DayPart['id'], string, MomentId, MomentId])[] = [
  ['warm-up', 'warm the cooker', 'fire-lit', 'meat-on'],
  ['roast', 'roast', 'meat-on', 'pull'],
  ['sear', 'sear', 'pull', 'off-heat'],
  ['rest', 'rest', 'off-heat', 'first-slice'],
]

/** Warm-up, roast, sear and rest with their likely lengths; a part that the plan lacks, or most members never end, is left out. */
export function timeLine(f: Forecast): DayPart[] {
  return PARTS.flatMap(([id, label, from, to]) => {
    const samples = between(f, from, to)
    const likely = samples ? medianOf(samples) : Number.NaN
    if (!Number.isFinite(likely) || likely < 30) return []
    const words = id === 'roast' ? `about ${aboutTime(likely)}` : aboutTime(likely)
    return [{ id, label, likely: seconds(likely), words }]
  })
}
