import type { Board } from './board'
import { maskOf } from './crew'
import type { DutyPlace } from './draft'
import { type DayProblem, minuteOf, type TaskJob } from './problem'

/** Tasks that bind their people, each with the first who are free. Watches are shared out when the day stands. */
export function placeDuties(board: Board): DutyPlace[] {
  return board.problem.tasks.flatMap((job, i) => (job.watch ? [] : placeDuty(board, job, i)))
}

export function taskSpan(job: TaskJob, meatOn: ArrayLike<number>): { start: number; end: number } | null {
  const [start, end] = [Math.floor(minuteOf(job.from, meatOn)), Math.ceil(minuteOf(job.to, meatOn))]
  return Number.isFinite(start) && Number.isFinite(end) && start < end ? { start, end } : null
}

function placeDuty(board: Board, job: TaskJob, task: number): DutyPlace[] {
  const span = taskSpan(job, board.meatOn)
  if (!span) return []
  const { crew } = board.problem
  const people: number[] = []
  for (const candidates of job.candidates) {
    const open = candidates.filter((p) => !people.includes(p))
    const free = open.find((p) => board.booking.lastClash(maskOf(crew, [p], []), span.start, span.end) < 0)
    if (free !== undefined) people.push(free)
  }
  const short = people.length < job.candidates.length
  board.booking.book(maskOf(crew, people, []), span.start, span.end)
  return [{ task, ...span, people, short }]
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
    const people = watcher === undefined ? [] : [watcher]
    if (last && last.people[0] === people[0] && last.short === short) last.end = t + 1
    else found.push({ start: t, end: t + 1, people, short })
  }
  return found
}
const within = (spans: readonly Stretch[] | undefined, t: number) =>
  (spans ?? []).some((s) => s.start <= t && t < s.end)
