import type { MomentId } from '../model/moment-ids'
import { quantileOf } from '../model/quantiles'
import type { Shoot, Task } from '../plan/shoot'
import { tasksOf } from '../plan/side-tasks'
import { servedCooks } from './chosen-meat-on'
import { ClashTable } from './clash'
import { type CookTimes, cookTimes } from './cook-times'
import { type Crew, candidatesFor, crewOf, type Mask, peopleMask } from './crew'
import { type DayClock, dayClock } from './day-clock'
import type { DayForecast } from './day-forecast'
import { type FloatJob, floatJobs } from './float-job'
import { HoldRisk, tentativeSpan } from './hold-risk'
import { type Hours, hoursOf } from './hours'
import { type MeatOnChoices, meatOnChoices } from './meat-on'
import { type MomentJob, momentJobs, type Unfit } from './moment-job'
import { RULES } from './rules'
import { type Edge, edgeOf } from './shot-window'
import { type SideJob, sideJobs } from './side-jobs'
import type { Standing } from './standing'

export interface TaskJob {
  readonly task: Task
  readonly from: Edge
  readonly to: Edge
  /** One entry a need: who can fill it. */
  readonly candidates: readonly (readonly number[])[]
  readonly masks: readonly Mask[]
  /** In sight of a burning fire: leaves the hands free. */
  readonly watch: boolean
}
/** All that the search reads, worked out once from the shoot and the joint samples. Minutes of the day, or after meat-on. */
export interface DayProblem {
  readonly shoot: Shoot
  readonly clock: DayClock
  readonly crew: Crew
  readonly everybody: Mask
  readonly cooks: readonly CookTimes[]
  readonly moments: readonly MomentJob[]
  readonly tentative: readonly { readonly from: number; readonly to: number }[]
  readonly floats: readonly FloatJob[]
  /** Those of the sides stand last. */
  readonly tasks: readonly TaskJob[]
  readonly sides: readonly SideJob[]
  /** When each person is there. */
  readonly hours: readonly Hours[]
  readonly unfit: readonly Unfit[]
  readonly clashes: ClashTable
  readonly risk: HoldRisk
  readonly meatOn: MeatOnChoices
  /** Null where the day is counted backward and the crew comes when it is needed. */
  readonly call: number | null
  readonly wrapLimit: number | null
  /** How long past the wrap limit the day may run at a price. */
  readonly overtimeMin: number
  readonly mealMin: number
  /** Where a running day is laid out anew: what of it stands. */
  readonly standing: Standing | null
}

/** `on`: where a running day has its first meat on, minute of the day. */
export function dayProblem(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, on?: number): DayProblem {
  const clock = dayClock(shoot)
  const crew = crewOf(shoot)
  const call = callOf(shoot, clock)
  const ready = shoot.cooks.flatMap((c) => {
    const forecast = forecasts.get(c.id)
    return forecast ? [cookTimes(c.id, forecast)] : []
  })
  const { cooks, chosen } = servedCooks({ shoot, clock, crew, cooks: ready, call }, on)
  const { jobs: moments, unfit } = momentJobs(shoot, crew, cooks)
  const floats = floatJobs({ shoot, crew, cooks, clock, moments })
  const wrapLimit = shoot.day?.wrap === undefined ? null : clock.fromClock(shoot.day.wrap)
  const overtimeMin = Math.floor((shoot.day?.overtime ?? 0) / 60)
  const lastEnd = wrapLimit === null ? null : wrapLimit + overtimeMin - RULES.strikeMin
  return {
    shoot,
    clock,
    crew,
    everybody: peopleMask(
      crew,
      crew.people.map((_, i) => i),
    ),
    cooks,
    moments,
    tentative: moments.map(tentativeSpan),
    floats: floats.jobs,
    tasks: tasksOf(shoot).map((task) => taskJob(task, { crew, cooks, clock })),
    sides: sideJobs(shoot, cooks, shoot.tasks?.length ?? 0),
    hours: hoursOf(shoot, clock),
    unfit: [...unfit, ...floats.unfit],
    clashes: new ClashTable(moments),
    risk: new HoldRisk(moments, cooks),
    meatOn: meatOnChoices({ shoot, clock, cooks, moments, call, lastEnd, chosen }),
    call,
    wrapLimit,
    overtimeMin,
    mealMin: Math.ceil((shoot.day?.meal ?? RULES.mealMin * 60) / 60),
    standing: null,
  }
}

function callOf(shoot: Shoot, clock: DayClock): number | null {
  if (shoot.day?.call !== undefined) return clock.fromClock(shoot.day.call)
  return shoot.day?.slice === undefined ? clock.fromClock(RULES.call) : null
}

/** From the match on, or by name; what takes a while and is done is no watch. */
export const isWatch = (task: Task) =>
  task.takes === undefined && (task.from === 'fire-lit' || task.id.includes('watch'))

function taskJob(task: Task, context: Pick<DayProblem, 'crew' | 'cooks' | 'clock'>): TaskJob {
  const cook = Math.max(
    0,
    context.cooks.findIndex((c) => c.id === task.cook),
  )
  const candidates = task.needs.map((need) => candidatesFor(context.crew, need))
  return {
    task,
    from: edgeOf(context, cook, null, task.from),
    to: edgeOf(context, cook, null, task.to),
    candidates,
    masks: candidates.map((c) => peopleMask(context.crew, c)),
    watch: isWatch(task),
  }
}

/** A bound's likely minute of the day. */
export const minuteOf = (edge: Edge, meatOn: ArrayLike<number>) =>
  edge.base < 0 ? edge.likely : (meatOn[edge.base] as number) + edge.likely

/** The likely minute of a cook's moment, for sentences; +Infinity where it never comes. */
export function likelyMinute(problem: DayProblem, cook: number, moment: MomentId, meatOn: ArrayLike<number>): number {
  const times = problem.cooks[cook]?.sorted(moment)
  return times ? (meatOn[cook] as number) + quantileOf(times, 0.5) : Number.POSITIVE_INFINITY
}
