/** What readings came to, for people and machines: what has happened, why the forecast moved, what goes wrong, a check on it. */
import type { UnitSystem } from '../units'
import type { Assimilated, Observed } from './assimilate'
import { COOKERS } from './cooker'
import { needsFire } from './course'
import { exponentialPast } from './extrapolate'
import type { Forecast } from './forecast'
import { MOMENT_IDS, type MomentId } from './moment-ids'
import { quantileOf } from './quantiles'
import { insideMeat, type Watched, type WatchInput, watchReadings } from './reading-watch'
import { samplesOf } from './readings'
import { whyMoved } from './why-moved'

export interface ReadSummary {
  /** s after meat-on. */
  readonly now: number
  readonly past: readonly { readonly id: MomentId; readonly t: number }[]
  /** Of the likely pull against the forecast before any reading; null where there is none. */
  readonly movedByS: number | null
  readonly why: readonly string[]
  readonly watch: readonly Watched[]
  /** When the probe comes to the pull's level if it goes on as in the last 20 and 45 min; null where it does not, or is past. */
  readonly extrapolated: { readonly over20min: number | null; readonly over45min: number | null }
}

/** `before` is the forecast of the same plan, seed and members without the readings. */
export function readSummary(
  before: Forecast,
  given: Assimilated,
  observed: Observed,
  units: UnitSystem = 'metric',
): ReadSummary {
  const moved = whyMoved(before, given, units)
  const past = MOMENT_IDS.flatMap((id) => {
    const t = given.pastS[id]
    return t === undefined ? [] : [{ id, t }]
  })
  return {
    now: given.nowS,
    past,
    movedByS: before.moments.pull ? moved.byS : null,
    why: moved.reasons.map(({ sentence }) => sentence),
    watch: watchReadings(watchInput(before, given, observed), units),
    extrapolated: checkOn(given, observed),
  }
}

type Now = Pick<Assimilated, 'went' | 'nowS' | 'pastS'>
export function watchInput(before: Forecast, { went, nowS, pastS }: Now, { readings }: Observed): WatchInput {
  const { course, stage, stageFromS } = went
  const now = course.stages[stage]
  const inS = course.probeInS ?? 0
  const out = course.searForS !== undefined && pastS.pull !== undefined
  const level = pullLevel(given(course))
  return {
    core: out ? [] : samplesOf(readings, 'core').filter(({ timeS }) => timeS >= inS),
    cooker: samplesOf(readings, 'cooker'),
    nowS,
    aim: now && needsFire(now) && now.at !== undefined ? { tempC: now.at, sinceS: stageFromS } : undefined,
    airC: before.cook.surroundings.air,
    targetC: pastS.pull === undefined ? level : undefined,
    likely: pastS.pull === undefined ? likelyProbe(before, nowS) : undefined,
    lid: course.lid,
    burns: COOKERS[before.cook.cooker.kind].fuel !== undefined,
  }
}
const given = (course: Assimilated['went']['course']) => course.stages[course.pullStage]
const pullLevel = (stage: ReturnType<typeof given>) => (stage && 'core' in stage.until ? stage.until.core : undefined)

const FAR_LOW = 0.01
const FAR_HIGH = 0.99
function likelyProbe({ trace, members }: Forecast, nowS: number): WatchInput['likely'] {
  const i = Math.round((nowS - trace.startS) / trace.stepS)
  if (i < 0 || i >= trace.count) return undefined
  const now = Float64Array.from({ length: members }, (_, m) => trace.probeC[m * trace.count + i] as number).sort()
  return { lowC: quantileOf(now, FAR_LOW), highC: quantileOf(now, FAR_HIGH) }
}

function checkOn({ went, nowS, pastS }: Assimilated, { readings }: Observed): ReadSummary['extrapolated'] {
  const level = pullLevel(given(went.course))
  const inS = went.course.probeInS ?? 0
  if (level === undefined || pastS.pull !== undefined) return { over20min: null, over45min: null }
  const core = insideMeat(samplesOf(readings, 'core')).filter(({ timeS }) => timeS >= inS)
  const over = (spanS: number) => exponentialPast(core, level, nowS, spanS) ?? null
  return { over20min: over(1200), over45min: over(2700) }
}
