import { quantileOf } from '../model/quantiles'
import { type Board, LID_OPEN, LID_SHUT, markLid } from './board'
import { maskOf } from './crew'
import type { DutyPlace } from './draft'
import { whoIsFree } from './place-tasks'
import type { TaskJob } from './problem'
import type { SideJob } from './side-jobs'

/**
 * Every side goes on and comes off so that it is in for just its time: at the minutes that find hands, then that spare
 * an opening of the lid, then that come nearest to its wish.
 */
export function placeSides(board: Board): DutyPlace[] {
  return board.problem.sides.flatMap((job) => {
    const best = bestOf(triesOf(board, job))
    if (!best) return []
    for (const duty of best.duties) bind(board, job, duty)
    return best.duties
  })
}

interface Try {
  readonly duties: readonly DutyPlace[]
  /** Hands missing, lid wanted shut by others, openings of its own, minutes from the wish: compared in this order. */
  readonly price: readonly number[]
}

function triesOf(board: Board, job: SideJob): Try[] {
  const zero = board.meatOn[job.cook] as number
  if (job.isOn) return [tryAt(board, job, job.isOn.minute + job.lasts, 0)]
  if (!job.slot) return []
  const [first, last] = [Math.ceil(zero + job.slot.firstS / 60), Math.floor(zero + job.slot.lastS / 60)]
  const wish = job.side.from ? first : last
  if (first > last) return [tryAt(board, job, last, 0)]
  return Array.from({ length: last - first + 1 }, (_, i) => tryAt(board, job, first + i, Math.abs(first + i - wish)))
}

/** `done`: the minute by which it is off. */
function tryAt(board: Board, job: SideJob, done: number, beside: number): Try {
  const duties = [handled(board, job, job.on, done - job.lasts), handled(board, job, job.off, done - 1)]
  const lids = duties.map(({ start }) => lidAt(board, job.cook, start))
  const count = (all: readonly boolean[]) => all.filter(Boolean).length
  return {
    duties,
    price: [
      count(duties.map((d) => d.short)),
      count(lids.map((lid) => (lid & LID_SHUT) !== 0)),
      count(lids.map((lid) => (lid & LID_OPEN) === 0)),
      beside,
    ],
  }
}

function handled(board: Board, job: SideJob, task: number, start: number): DutyPlace {
  const end = start + 1
  if (job.isOn && task === job.on) return { task, start, end, people: job.isOn.people, short: false }
  return { task, start, end, ...whoIsFree(board, board.problem.tasks[task] as TaskJob, start, end) }
}

/** What the lid does in that minute: what shots and tasks want of it, and the turn and the probe. */
function lidAt(board: Board, cook: number, minute: number): number {
  const wanted = board.lids[cook * board.problem.clock.length + minute] ?? 0
  const comesOff = (['meat-on', 'turn', 'probe-in'] as const).some((moment) => {
    const times = board.problem.cooks[cook]?.sorted(moment)
    return times && Math.floor((board.meatOn[cook] as number) + quantileOf(times, 0.5)) === minute
  })
  return comesOff ? wanted | LID_OPEN : wanted
}

function bestOf(tries: readonly Try[]): Try | undefined {
  return [...tries].sort((a, b) => a.price.map((x, i) => x - (b.price[i] as number)).find((d) => d !== 0) ?? 0)[0]
}

function bind(board: Board, job: SideJob, { people, start, end }: DutyPlace): void {
  board.booking.book(maskOf(board.problem.crew, people, []), start, end)
  markLid(board, job.cook, 'open', start, end)
}
