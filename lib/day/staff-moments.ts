import { DROPPED, MOSTLY, NOT_TO_BE_HAD } from './assign-moments'
import type { MomentJob } from './moment-job'
import type { DayProblem } from './problem'

/** So many shots nearest in time to the one that changed are looked at. */
const AROUND = 5
/** Points of chance between staffings that are alike. */
const NOISE = 6

/** What two staffed moment shots cost each other. */
export function pairLoss(
  problem: DayProblem,
  on: readonly number[],
  i: number,
  mode: number,
  j: number,
  other: number,
) {
  const { moments, clashes } = problem
  const [a, b] = [moments[i] as MomentJob, moments[j] as MomentJob]
  const share = clashes.share(i, mode, j, other, on)
  if (share === 0) return 0
  const apart = (on[a.cook] as number) + a.likely - (on[b.cook] as number) - b.likely
  const later = apart > 0 || (apart === 0 && i > j) ? a : b
  return Math.min(1.5, 2 * share) * later.weight + (share > MOSTLY ? NOT_TO_BE_HAD : 0)
}

/** Staffs moment shots at the least loss one after another: those around shot `fixed`, or all of them (-1). */
export function restaffAround(
  problem: DayProblem,
  on: readonly number[],
  modes: number[],
  fixed: number,
  random: () => number,
): void {
  for (const i of fixed < 0 ? shuffled(problem.moments.length, random) : neighbours(problem, on, fixed)) {
    const job = problem.moments[i] as MomentJob
    let [best, least] = [DROPPED, job.weight + random() * NOISE]
    for (let mode = 0; mode < job.modes.length; mode++) {
      if (job.modes[mode]?.crossed && mode !== modes[i]) continue
      let loss = mode === modes[i] ? 0 : random() * NOISE
      for (let j = 0; j < modes.length && loss < least; j++) {
        const other = modes[j] as number
        if (j !== i && other !== DROPPED) loss += pairLoss(problem, on, i, mode, j, other)
      }
      if (loss < least) [best, least] = [mode, loss]
    }
    modes[i] = best
  }
}

function neighbours({ moments }: DayProblem, on: readonly number[], fixed: number): number[] {
  const at = (i: number) => (on[(moments[i] as MomentJob).cook] as number) + (moments[i] as MomentJob).likely
  const zero = at(fixed)
  const apart = (i: number) => Math.abs(at(i) - zero)
  return moments
    .map((_, i) => i)
    .filter((i) => i !== fixed)
    .sort((a, b) => apart(a) - apart(b))
    .slice(0, AROUND)
}
function shuffled(count: number, random: () => number): number[] {
  const all = Array.from({ length: count }, (_, i) => i)
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    ;[all[i], all[j]] = [all[j] as number, all[i] as number]
  }
  return all
}
