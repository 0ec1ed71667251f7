/** The course as it went: what marks and readings say has happened, in place of what was planned. */
import { type Celsius, seconds } from '../units'
import type { Course, CourseStage } from './course'
import { PROBE_OPEN_S, TURN_OPEN_S } from './course'
import type { MomentId } from './moment-ids'
import type { Mark, Sample } from './readings'
import { whenReached } from './readings'
import { SEAR_NEAR_K } from './simulate'

/** No probe reads this: a stage that waits for it ends by its limit. */
const NEVER_C = 999 as Celsius

export interface Told {
  readonly marks: readonly Mark[]
  readonly core: readonly Sample[]
  readonly cooker: readonly Sample[]
  readonly nowS: number
}
export interface AsItWent {
  readonly course: Course
  /** Instants of moments that have happened. */
  readonly pastS: Partial<Record<MomentId, number>>
  /** The stage that goes on now, and when it began; past the last one, its number is theirs. */
  readonly stage: number
  readonly stageFromS: number
  readonly ventDelayS: number | undefined
}

export function asItWent(planned: Course, told: Told): AsItWent {
  const markS = (id: MomentId) => told.marks.filter(({ moment, t }) => moment === id && t <= told.nowS).at(-1)?.t
  const probeInS = markS('probe-in') ?? laterThan(planned.probeInS, told, 'probe-in')
  const turnS = markS('turn') ?? laterThan(planned.turnS, told, 'turn')
  const course = { ...planned, turnS, probeInS, lid: openings(planned, turnS, probeInS) }
  const pastS: Partial<Record<MomentId, number>> = {}
  for (const { moment, t } of told.marks) if (t <= told.nowS) pastS[moment] = t
  pastS['meat-on'] = 0
  if (turnS !== undefined && turnS <= told.nowS) pastS.turn = turnS
  if (probeInS !== undefined && probeInS <= told.nowS) pastS['probe-in'] = probeInS
  return endsOf(course, told, pastS, markS)
}

/** A planned instant; where marks are kept, one that should have come and was not marked is still to come. */
function laterThan(plannedS: number | undefined, { marks, nowS, core }: Told, id: MomentId): number | undefined {
  if (plannedS === undefined || plannedS > nowS || marks.length === 0) return plannedS
  if (id !== 'probe-in' || core.some(({ timeS }) => timeS >= plannedS)) return plannedS
  return nowS
}

function endsOf(
  course: Course,
  told: Told,
  pastS: AsItWent['pastS'],
  markS: (id: MomentId) => number | undefined,
): AsItWent {
  const stages: CourseStage[] = [...course.stages]
  let stage = 0
  let fromS = 0
  for (; stage < stages.length; stage++) {
    const now = stages[stage] as CourseStage
    const endS = endOf(now, stage, course, fromS, told, markS)
    if (endS === undefined || endS > told.nowS) break
    stages[stage] = endedAt(now, endS - fromS)
    if (stage === course.pullStage) pastS.pull = endS
    if (stage === course.offHeatStage) pastS['off-heat'] = endS
    if (now.do === 'sear') pastS['sear-start'] ??= searStart(now, told, fromS)
    fromS = endS
  }
  if (stage === stages.length) pastS['first-slice'] = fromS
  const burning = stages[stage]
  if (burning?.do === 'sear') {
    const hotS = searStart(burning, told, fromS)
    if (hotS !== undefined) pastS['sear-start'] ??= hotS
  }
  for (const id of Object.keys(pastS) as MomentId[]) if (pastS[id] === undefined) delete pastS[id]
  const opened = pastS['vents-open']
  const ventDelayS = opened !== undefined && pastS.pull !== undefined ? Math.max(0, opened - pastS.pull) : undefined
  return { course: { ...course, stages }, pastS, stage, stageFromS: fromS, ventDelayS }
}

function endOf(
  stage: CourseStage,
  index: number,
  course: Course,
  fromS: number,
  told: Told,
  markS: (id: MomentId) => number | undefined,
): number | undefined {
  const marked =
    (index === course.pullStage ? markS('pull') : undefined) ??
    (index === course.offHeatStage ? markS('off-heat') : undefined) ??
    (index === course.stages.length - 1 ? markS('first-slice') : undefined)
  if (marked !== undefined) return Math.max(fromS, marked)
  const limitS = fromS + (stage.max ?? Infinity)
  if ('after' in stage.until) return stage.do === 'sear' ? undefined : Math.min(limitS, fromS + stage.until.after)
  if ('cooker' in stage.until) {
    const rising = (told.cooker.find(({ timeS }) => timeS >= fromS)?.tempC ?? -Infinity) < stage.until.cooker
    return atMost(whenReached(told.cooker, stage.until.cooker, fromS, rising), limitS, told.nowS)
  }
  if (stage.do === 'sear' && course.searForS !== undefined) return undefined
  const inS = index === course.pullStage ? (course.probeInS ?? fromS) : fromS
  const rising = stage.do === 'roast' || stage.do === 'sear'
  return atMost(whenReached(told.core, stage.until.core, Math.max(fromS, inS), rising), limitS, told.nowS)
}
const atMost = (timeS: number | undefined, limitS: number, nowS: number) =>
  timeS !== undefined ? Math.min(timeS, limitS) : limitS <= nowS ? limitS : undefined

const searStart = (sear: CourseStage & { do: 'sear' }, { cooker }: Told, fromS: number) =>
  sear.over === 'direct' ? undefined : whenReached(cooker, sear.at - SEAR_NEAR_K, fromS)

/** The stage as one that takes so long. */
export function endedAt(stage: CourseStage, forS: number): CourseStage {
  const after = { after: seconds(forS) }
  if (stage.do === 'sear') return { ...stage, until: { core: NEVER_C }, max: seconds(forS) }
  const { max: _, ...rest } = stage
  return { ...rest, until: after } as CourseStage
}

/** The lid's openings, those for turn and probe where they were. */
function openings(planned: Course, turnS: number | undefined, probeInS: number | undefined): Course['lid'] {
  const moved = (plannedS: number | undefined, timeS: number | undefined, openS: number): [number, number, number][] =>
    plannedS === undefined || timeS === undefined || plannedS === timeS ? [] : [[plannedS, timeS, openS]]
  const moves = [
    ...moved(planned.turnS, turnS, TURN_OPEN_S),
    ...moved(planned.probeInS || undefined, probeInS, PROBE_OPEN_S),
  ]
  if (moves.length === 0) return planned.lid
  const kept = planned.lid.filter(([from]) => !moves.some(([plannedS]) => plannedS === from))
  const anew = moves.map(([, timeS, openS]) => [timeS, timeS + openS] as const)
  const all = [...kept, ...anew].sort((a, b) => a[0] - b[0])
  return all.reduce<(readonly [number, number])[]>((joined, [from, to]) => {
    const last = joined.at(-1)
    if (last && from <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], to)]
    else joined.push([from, to])
    return joined
  }, [])
}
