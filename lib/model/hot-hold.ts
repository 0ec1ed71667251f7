/** Whether a roast that is held warm before it is sliced stays as warm as the code asks of food held hot. */
import { type Celsius, type Frac, fromFahrenheit } from '../units'
import { coldestBetween } from './coldest-history'
import type { Stage } from './cook'
import type { Forecast, Spread } from './forecast'
import { spreadOf } from './quantiles'
import { type LedgerVerdict, verdictOf } from './safety-ledger'
import type { SourceId } from './sources'

/** [fda-food-code-2017] 3-501.16(A)(1): 135 °F, or 130 °F for a roast cooked by 3-401.11(B). */
export const HOLD_LEAST_C = fromFahrenheit(135)
export const HOLD_ROAST_LEAST_C = fromFahrenheit(130)

export interface HotHold {
  readonly source: SourceId
  /** What is asked of most members: the roast's own least where they keep the code's table. */
  readonly leastC: Celsius
  /** The coldest of core and skin while it is held. */
  readonly coldest: Spread<Celsius>
  readonly keptShare: Frac
  readonly verdict: LedgerVerdict
}

type After = Extract<Stage, { do: 'hold' | 'rest' }>
/** What follows the last heat, in order. */
const afterHeat = (stages: readonly Stage[]): readonly After[] =>
  stages
    .slice(1 + stages.reduce((last, stage, i) => (stage.do === 'roast' || stage.do === 'sear' ? i : last), -1))
    .filter((stage): stage is After => stage.do === 'hold' || stage.do === 'rest')

/** Each hold's time before the slice, s; from off the heat on where a stage after the hold goes by a reading. */
function holdsBeforeSlice(stages: readonly After[]): readonly (readonly [fromS: number, toS: number])[] {
  let toS = 0
  const holds: (readonly [number, number])[] = []
  for (const stage of stages.toReversed()) {
    const fromS = 'after' in stage.until ? toS + stage.until.after : Number.POSITIVE_INFINITY
    if (stage.do === 'hold') holds.push([fromS, toS])
    toS = fromS
  }
  return holds
}

/** Undefined where nothing is held. `roastKept` tells which members were cooked by the code's table. */
export function hotHold(f: Forecast, roastKept: readonly boolean[]): HotHold | undefined {
  const holds = holdsBeforeSlice(afterHeat(f.cook.stages))
  if (holds.length === 0) return undefined
  const coldest = Float64Array.from({ length: f.members }, (_, m) => {
    const slice = f.moments['first-slice']?.[m] ?? Number.POSITIVE_INFINITY
    const off = f.moments['off-heat']?.[m] ?? 0
    // A member never sliced is held to the end of its trace.
    const begins = (from: number) => (Number.isFinite(slice - from) ? Math.max(off, slice - from) : off)
    return Math.min(
      ...holds.map(([from, to]) => coldestBetween(f, m, begins(from), slice - (slice < Infinity ? to : 0))),
    )
  })
  const least = (m: number) => (roastKept[m] ? HOLD_ROAST_LEAST_C : HOLD_LEAST_C)
  const most = roastKept.filter(Boolean).length > f.members / 2
  const keptShare = (coldest.filter((c, m) => c >= least(m)).length / f.members) as Frac
  return {
    source: 'fda-food-code-2017',
    leastC: most ? HOLD_ROAST_LEAST_C : HOLD_LEAST_C,
    coldest: spreadOf<Celsius>(coldest),
    keptShare,
    verdict: verdictOf(keptShare, []),
  }
}
