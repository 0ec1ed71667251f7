import { DROPPED } from './assign-moments'
import { anyMode, type Mode } from './crew'
import type { DayState } from './day-state'
import { copyGenes, type Genes } from './draft'
import { force, meet, oneLost } from './float-moves'
import type { MomentJob } from './moment-job'
import { openWindows, spanTimes } from './place-float'
import { pairLoss } from './staff-moments'

const pick = (random: () => number, count: number) => Math.floor(random() * count)
/** Points of chance between staffings that are alike. */
const NOISE = 20
const WITH_MEAT = 0.3

/** A shot that found no place is given one, whatever moments stand there: they are staffed otherwise, or dropped. */
export function makeRoom(state: DayState, genes: Genes, random: () => number): boolean {
  const i = oneLost(state, random)
  if (i === undefined) return false
  const job = state.job(i)
  if (random() < WITH_MEAT && moveMeat(state, genes, job.cook, random)) state.rebase(copyGenes(genes), random)
  const mode = job.modes[anyMode(job.modes, random)] as Mode
  const at = anywhere(state, i, random)
  if (!at) return false
  restaffBeside(state, genes, mode, at, random)
  state.rebase(copyGenes(genes), random)
  state.begin()
  if (force(state, i, mode, at.setupStart, random)) state.tally()
  else state.undo()
  return true
}

/** Its meat goes on sooner or later as well. */
function moveMeat({ board }: DayState, genes: Genes, cook: number, random: () => number): boolean {
  const count = board.problem.meatOn.choices[cook]?.length ?? 1
  const now = genes.meatOn[cook] as number
  genes.meatOn[cook] = Math.min(count - 1, Math.max(0, now + pick(random, 61) - 30))
  return genes.meatOn[cook] !== now
}

function anywhere(state: DayState, i: number, random: () => number): { setupStart: number; end: number } | null {
  const job = state.job(i)
  if (job.span) {
    const times = spanTimes(state.board, job)
    return times && { setupStart: times.setupStart, end: times.setupStart + job.setup + times.roll }
  }
  const open = openWindows(state.board, job, i)
  const window = open[pick(random, open.length)]
  if (!window) return null
  const setupStart = window.lo - job.setup + pick(random, window.hi - window.lo - job.roll + 1)
  return { setupStart, end: setupStart + job.setup + job.roll }
}

function restaffBeside(
  { board, base }: DayState,
  genes: Genes,
  mode: Mode,
  at: { setupStart: number; end: number },
  random: () => number,
): void {
  const { problem } = board
  for (const [k, place] of base.moments.entries()) {
    if (
      !place ||
      place.setupStart >= at.end ||
      place.end <= at.setupStart ||
      !meet(place.mode.rollMask, mode.setupMask)
    )
      continue
    const { modes, weight } = problem.moments[k] as MomentJob
    let [best, least] = [DROPPED, weight + random() * NOISE]
    for (const [m, other] of modes.entries()) {
      if (other.crossed || meet(other.rollMask, mode.setupMask)) continue
      let loss = random() * NOISE
      for (const [j, theirs] of genes.momentMode.entries())
        if (j !== k && theirs !== DROPPED) loss += pairLoss(problem, base.meatOn, k, m, j, theirs)
      if (loss < least) [best, least] = [m, loss]
    }
    genes.momentMode[k] = best
  }
}
