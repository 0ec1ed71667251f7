import { formatClock } from '../plan/clock'
import { SIDE_LEEWAY } from '../plan/side-tasks'
import type { DutyPlace } from './draft'
import type { Conflict } from './layout'
import { type DayProblem, likelyMinute } from './problem'
import type { SideJob } from './side-jobs'
import { capital, minutesText, momentName, quoted } from './words'

const LEEWAY_MIN = SIDE_LEEWAY / 60

/** A side that is not done when it is wanted, with what would help. */
export function sideConflicts(
  problem: DayProblem,
  duties: readonly DutyPlace[],
  meatOn: readonly number[],
): Conflict[] {
  return problem.sides.flatMap((job) => {
    const sentence = beside(problem, job, duties.find((d) => d.task === job.off)?.end, meatOn)
    return sentence === null ? [] : [{ sentence, shots: [], people: [], rule: 'side-apart' }]
  })
}

function beside(problem: DayProblem, job: SideJob, done: number | undefined, meatOn: readonly number[]): string | null {
  const { side, slot } = job
  const title = quoted(side.title)
  const moment = side.from ?? side.ready ?? 'first-slice'
  if (done === undefined)
    return `${title} waits for ${momentName(moment)}, which is not likely to come in this cook. Give it another moment.`
  if (side.from) return null
  const wanted = likelyMinute(problem, job.cook, moment, meatOn)
  const late = Math.round(done - wanted)
  if (!Number.isFinite(wanted) || (late <= 1 && late >= -LEEWAY_MIN - 1)) return null
  const at = formatClock(problem.clock.toInstant(done), problem.shoot.zone)
  const when = `${title} is done at ${at}, ${minutesText(Math.abs(late))} ${late > 0 ? 'after' : 'before'} ${momentName(moment)} is likely.`
  if (job.isOn) return late > 0 ? `${when} It is in already.` : `${when} It is in already: keep it hot.`
  return slot && slot.lateS > 0
    ? `${when} ${capital(minutesText(job.lasts))} from hand to hand is longer than the roast is away from its fire: it goes on with the meat. Start it elsewhere, or have it ready later.`
    : when
}
