import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import { windowOf } from '../model/quantiles'
import { fromIso, toIso } from '../plan/clock'
import { later, type Seconds } from '../units'
import type { WholeDay } from './compare-days'
import type { Call } from './layout'

/** A moment's window today, and on the other day; null where that day has no such moment. */
export interface MomentBeside {
  readonly cook: string
  readonly moment: MomentId
  readonly today: Call['window'] | null
  readonly other: Call['window'] | null
}

/** Every moment of every cook that either day has, in reading order. */
export const momentsBeside = (today: WholeDay, other: WholeDay): MomentBeside[] =>
  other.shoot.cooks.flatMap(({ id: cook }) =>
    MOMENT_IDS.map((moment) => ({
      cook,
      moment,
      today: windowIn(today, cook, moment),
      other: windowIn(other, cook, moment),
    })).filter((beside) => beside.today !== null || beside.other !== null),
  )

function windowIn({ shoot, forecasts, layout }: WholeDay, cook: string, moment: MomentId): Call['window'] | null {
  const samples = forecasts.get(cook)?.moments[moment]
  const zero = layout.meatOn[cook]
  if (!samples || zero === undefined) return null
  const { early, likely, late } = windowOf(samples)
  const at = (s: Seconds | null) => (s === null ? null : toIso(later(fromIso(zero), s), shoot.zone))
  return { early: at(early), likely: at(likely), late: at(late) }
}
