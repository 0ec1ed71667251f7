import { between } from '../card/figures'
import { roundMin } from '../card/wording'
import type { Forecast } from '../model/forecast'
import type { MomentId } from '../model/moment-ids'
import { medianOf } from '../model/quantiles'
import { type Seconds, seconds } from '../units'

/** The likely lengths of the recipe, as round as the card's own words; null where it has no such part, or most cooks never end it. */
export interface CardTimes {
  /** Until the meat goes on: the cooker warms. */
  readonly prep: Seconds | null
  /** On the heat. */
  readonly cook: Seconds | null
  /** From lighting the fire, or from the meat going on, to the first slice. */
  readonly total: Seconds | null
}

function likely(f: Forecast, from: MomentId, to: MomentId): Seconds | null {
  const samples = between(f, from, to)
  const median = samples ? medianOf(samples) : Number.NaN
  const rounded = Number.isFinite(median) ? roundMin(median) * 60 : 0
  return rounded > 0 ? seconds(rounded) : null
}

export function cardTimes(f: Forecast): CardTimes {
  const start = f.moments['fire-lit'] ? 'fire-lit' : 'meat-on'
  const end = f.moments['off-heat'] ? 'off-heat' : 'pull'
  return {
    prep: likely(f, 'fire-lit', 'meat-on'),
    cook: likely(f, 'meat-on', end),
    total: likely(f, start, 'first-slice'),
  }
}
