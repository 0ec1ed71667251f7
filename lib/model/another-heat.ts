/** The same cook at another cooker temperature, its targets moved until the middle stands as the plan's does when sliced. */
import { type Celsius, celsius, seconds } from '../units'
import type { CookPlan, Stage, Until } from './cook'
import type { Forecast } from './forecast'
import { cookOne, forecastCook } from './forecast-cook'
import { medianOf } from './quantiles'

export interface AnotherHeat {
  /** What the targets were moved by, K, or what the roasting time was multiplied by. */
  readonly shiftK: number
  readonly timeFactor: number
  readonly forecast: Forecast
}

const ROUNDS = 6
const ROUNDS_3D = 3
/** The middle is the same when it is this near. */
const SAME_CORE_K = 0.1
/** A run of the cells is no better than this. */
const SAME_SLICE_K = 0.3

/** The member whose slice is shown seeks the targets, so that like is compared with like. Null where it, or most, never get there. */
export function anotherHeat(forecast: Forecast, at: Celsius): AnotherHeat | null {
  const { cook, seed, members, kernel } = forecast
  const shown = forecast.slice.member
  const timed = !cook.stages.some((stage) => hasCoreTarget(stage))
  const wantedC = cookOne(cook, shown, { seed, kernel }).atSlice.coreC
  const missAt = (move: number) =>
    cookOne(planAt(cook, at, move, timed), shown, { seed, kernel }).atSlice.coreC - wantedC
  const move = soughtMove(missAt, timed ? 0.2 : 2)
  if (Math.abs(missAt(move)) > 5 * SAME_CORE_K) return null
  const at3d = (forecast: Forecast) => forecast.slice.section.slicedC[0] as number
  let [moved, found] = [move, forecastCook(planAt(cook, at, move, timed), { seed, kernel, members, shown })]
  let slope = 1
  // the slices are 3-D, so it is in 3-D that their middles must be the same
  for (let round = 0; round < ROUNDS_3D && !timed; round++) {
    const gapK = at3d(forecast) - at3d(found)
    if (Math.abs(gapK) < SAME_SLICE_K) break
    const before = at3d(found)
    const stepK = gapK / slope
    moved += stepK
    found = forecastCook(planAt(cook, at, moved, timed), { seed, kernel, members, shown })
    slope = Math.min(3, Math.max(0.3, (at3d(found) - before) / stepK))
  }
  const finished = found.moments['first-slice']
  if (!finished || !Number.isFinite(medianOf(finished))) return null
  return { shiftK: timed ? 0 : moved, timeFactor: timed ? Math.exp(moved) : 1, forecast: found }
}

/** Where the miss is naught, by the secant; a first step of `stride` tells the slope. */
function soughtMove(missAt: (move: number) => number, stride: number): number {
  let [before, beforeMiss] = [0, missAt(0)]
  if (Math.abs(beforeMiss) < SAME_CORE_K) return before
  let now = beforeMiss > 0 ? -stride : stride
  for (let round = 0; round < ROUNDS; round++) {
    const miss = missAt(now)
    if (Math.abs(miss) < SAME_CORE_K || miss === beforeMiss) return now
    const next = now - (miss * (now - before)) / (miss - beforeMiss)
    ;[before, beforeMiss] = [now, miss]
    now = Math.max(before - 6 * stride, Math.min(before + 6 * stride, next))
  }
  return now
}

const isHeated = (stage: Stage) => stage.do === 'roast' || stage.do === 'sear'
const hasCoreTarget = (stage: Stage) => isHeated(stage) && 'until' in stage && 'core' in stage.until

/** The plan at another heat: `move` shifts core targets, K, or stretches times by e^move where there are none. */
function planAt(cook: CookPlan, at: Celsius, move: number, timed: boolean): CookPlan {
  const moved = (until: Until): Until => {
    if ('core' in until) return { core: celsius(until.core + move) }
    return timed && 'after' in until ? { after: seconds(until.after * Math.exp(move)) } : until
  }
  const stages = cook.stages.map((stage): Stage => {
    if (stage.do === 'preheat') return { ...stage, at }
    // the limit of a roast was set for the plan's own heat
    if (stage.do === 'roast') return { ...without(stage), at, until: moved(stage.until) }
    if (stage.do === 'sear' && 'core' in stage.until) return { ...stage, until: moved(stage.until) }
    return stage
  })
  return { ...cook, stages }
}
function without(stage: Extract<Stage, { do: 'roast' }>): Extract<Stage, { do: 'roast' }> {
  const { max: _, ...rest } = stage
  return rest
}
