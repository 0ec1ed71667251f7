import { type Board, markLid } from './board'
import { maskOf } from './crew'
import type { DutyPlace } from './draft'
import { type DayProblem, minuteOf, type TaskJob } from './problem'

/** Tasks that bind their people, each with the first who are free; those of sides are placed in pairs. Watches are shared out when the day stands. */
export function placeDuties(board: Board): DutyPlace[] {
  const { tasks, sides } = board.problem
  const own = tasks.slice(0, tasks.length - 2 * sides.length)
  return own.flatMap((job, i) => (job.watch ? [] : placeDuty(board, job, i)))
}

export function taskSpan(job: TaskJob, meatOn: ArrayLike<number>): { start: number; end: number } | null {
  const from = minuteOf(job.from, meatOn) + (job.task.delay ?? 0) / 60
  const [start, end] = [Math.floor(from), Math.ceil(minuteOf(job.to, meatOn))]
  return Number.isFinite(start) && Number.isFinite(end) && start < end ? { start, end } : null
}

function placeDuty(board: Board, job: TaskJob, task: number): DutyPlace[] {
  return visitsOf(job, board.meatOn).map((visit) => {
    const duty = firstStaffed(board, job, visit)
    board.booking.book(maskOf(board.problem.crew, duty.people, []), duty.start, duty.end)
    if (job.task.lid) markLid(board, cookOf(board.problem, job), job.task.lid, duty.start, duty.end)
    return { task, ...duty }
  })
}

const cookOf = ({ cooks }: DayProblem, { task }: TaskJob) =>
  Math.max(
    0,
    cooks.findIndex(({ id }) => id === task.cook),
  )

/** Whoever is busy now may be free a little later. */
function firstStaffed(board: Board, job: TaskJob, { start, end, length }: Visit): Omit<DutyPlace, 'task'> {
  const at = (from: number) => ({ ...whoIsFree(board, job, from, from + length), start: from, end: from + length })
  for (let from = start; from + length <= end; from++) {
    const duty = at(from)
    if (!duty.short) return duty
  }
  return at(start)
}

/** One time that a task is done: `length` of it between `start` and `end`. */
interface Visit {
  readonly start: number
  readonly end: number
  readonly length: number
}
function visitsOf(job: TaskJob, meatOn: ArrayLike<number>): Visit[] {
  const span = taskSpan(job, meatOn)
  if (!span) return []
  const { takes, every } = job.task
  if (takes === undefined) return [{ ...span, length: span.end - span.start }]
  const length = Math.ceil(takes / 60)
  const apart = every === undefined ? Number.POSITIVE_INFINITY : Math.max(length, Math.round(every / 60))
  const visits: Visit[] = []
  for (let start = span.start; start + length <= span.end; start += apart)
    visits.push({ start, end: Math.min(span.end, start + apart), length })
  return visits
}

export function whoIsFree(board: Board, job: TaskJob, start: number, end: number) {
  const { crew } = board.problem
  const people: number[] = []
  for (const candidates of job.candidates) {
    const open = candidates.filter((p) => !people.includes(p))
    const free = open.find((p) => board.booking.lastClash(maskOf(crew, [p], []), start, end) < 0)
    if (free !== undefined) people.push(free)
  }
  return { people, short: people.length < job.candidates.length }
}

type Stretch = { readonly start: number; readonly end: number }
/** When a person is out of sight of the fire, or at a meal. */
export interface Absences {
  readonly away: readonly (readonly Stretch[])[]
  readonly meals: readonly (readonly Stretch[])[]
}

/**
 * Shifts that leave the fire to nobody: the present watcher stays until a shot takes them out of sight, or a meal does
 * and somebody else with the role is there; with nobody to relieve them they eat in sight of it.
 */
export function shareWatches(problem: DayProblem, meatOn: ArrayLike<number>, absent: Absences): DutyPlace[] {
  return problem.tasks.flatMap((job, task) => {
    const span = job.watch ? taskSpan(job, meatOn) : null
    if (!span) return []
    return job.candidates.flatMap((candidates) => shifts(candidates, span, absent).map((s) => ({ task, ...s })))
  })
}

type Shift = Omit<DutyPlace, 'task'>
function shifts(candidates: readonly number[], span: Stretch, absent: Absences): Shift[] {
  const found: { start: number; end: number; people: number[]; short: boolean }[] = []
  let watcher = candidates[0]
  for (let t = span.start; t < span.end; t++) {
    const here = candidates.filter((p) => !within(absent.away[p], t))
    const rested = here.filter((p) => !within(absent.meals[p], t))
    const fit = rested.length > 0 ? rested : here
    const short = fit.length === 0
    if (!short && (watcher === undefined || !fit.includes(watcher))) watcher = fit[0]
    const last = found.at(-1)
    const people = watcher === undefined || short ? [] : [watcher]
    if (last && last.people[0] === people[0] && last.short === short) last.end = t + 1
    else found.push({ start: t, end: t + 1, people, short })
  }
  return found
}
const within = (spans: readonly Stretch[] | undefined, t: number) =>
  (spans ?? []).some((s) => s.start <= t && t < s.end)
