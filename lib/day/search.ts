import { chanceOf } from '../model/random'
import { assignMoments, DROPPED } from './assign-moments'
import { type Board, newBoard } from './board'
import { copyGenes, type Draft, type Genes } from './draft'
import type { DayProblem } from './problem'
import { layDraft } from './scheduler'
import { type Move, movesFor } from './search-moves'

export interface Found {
  readonly genes: Genes
  readonly draft: Draft
}
export type SearchOptions = {
  readonly seed: number
  /** One sweep tries as many changes as the day has shots. */
  readonly sweeps: number
  /** Where to begin; else a plan by priority. */
  readonly from?: Genes
}
/** So many changes in all: measured at about 1 s for 40 shots, 2 s for 80. */
const DEFAULT_TRIALS = 6000
export const defaultSweeps = ({ floats, moments }: DayProblem) =>
  Math.ceil(DEFAULT_TRIALS / Math.max(4, floats.length + moments.length))
const HOT = 60
const COLD = 0.2

/** Simulated annealing over the genes; the best day met, not the last. Same seed and sweeps, same day. */
export function searchDay(problem: DayProblem, { seed, sweeps, from }: SearchOptions): Found {
  const random = chanceOf(seed, 0, 0x6461).uniform
  const board = newBoard(problem)
  let genes = from ? copyGenes(from) : firstGenes(problem)
  let draft = layDraft(board, genes)
  let best: Found = { genes, draft }
  const moves = movesFor(problem)
  const trials = sweeps * Math.max(4, problem.floats.length + problem.moments.length)
  for (let i = 0; i < trials; i++) {
    const temperature = HOT * (COLD / HOT) ** (i / trials)
    const tried = copyGenes(genes)
    const move = moves[Math.floor(random() * moves.length)] as Move
    move(tried, random, draft)
    const next = layDraft(board, tried)
    if (next.cost > draft.cost && random() >= Math.exp((draft.cost - next.cost) / temperature)) continue
    genes = tried
    draft = next
    if (draft.cost < best.draft.cost - 1e-9) best = { genes, draft }
  }
  return trials > 0 ? settled(problem, board, best) : best
}

/** One moment shot after another is staffed anew or dropped while that helps: chance may have left a clash standing. */
function settled(problem: DayProblem, board: Board, found: Found): Found {
  let best = found
  for (let again = true; again; ) {
    again = false
    problem.moments.forEach((job, i) => {
      for (let mode = DROPPED; mode < job.modes.length; mode++) {
        const genes = copyGenes(best.genes)
        genes.momentMode[i] = mode
        const draft = layDraft(board, genes)
        if (draft.cost >= best.draft.cost - 1e-9) continue
        best = { genes, draft }
        again = true
      }
    })
  }
  return best
}

/** Moments staffed at the least loss; the rest by weight, the least free first. */
export function firstGenes(problem: DayProblem): Genes {
  const { floats, moments, cooks } = problem
  const meatOn = cooks.map((_, c) => bestStart(problem, c))
  const minutes = cooks.map((_, c) => problem.meatOn.choices[c]?.[meatOn[c] as number] ?? 0)
  const room = (i: number) => {
    const job = floats[i] as DayProblem['floats'][number]
    const window = job.windows[0]
    return job.span || !window ? 0 : Math.min(...window.hi.map((e) => e.likely), 9999) - job.roll
  }
  return {
    meatOn,
    callLead: problem.call === null ? needBefore(problem) : 0,
    momentMode: assignMoments(moments, problem.clashes, minutes, lockedCosts(problem)),
    order: floats
      .map((_, i) => i)
      .sort((a, b) => (floats[b]?.weight ?? 0) - (floats[a]?.weight ?? 0) || room(a) - room(b)),
    mode: floats.map(() => 0),
    offset: floats.map(() => 0),
    meals: [240, 270, 270],
  }
}

/** A camera that a locked-off shot names is better left to it: what using it costs a moment shot, by job and mode. */
function lockedCosts({ floats, moments }: DayProblem): number[][] {
  const locked = floats.filter((f) => f.span && f.modes.every((m) => m.cameras.join() === f.modes[0]?.cameras.join()))
  return moments.map((job) =>
    job.modes.map((mode) => {
      const taken = locked.filter((f) => mode.cameras.some((c) => f.modes[0]?.cameras.includes(c)))
      return taken.reduce((sum, f) => sum + f.weight * 0.02, 0)
    }),
  )
}

/** Where the wanted light has the highest chance; else the soonest. */
function bestStart({ meatOn }: DayProblem, cook: number): number {
  if (cook > 0 || meatOn.wish.length === 0) return 0
  return meatOn.wish.indexOf(Math.min(...meatOn.wish))
}
/** A first guess at what has to be shot before the meat goes on. */
function needBefore({ floats }: DayProblem): number {
  const raw = floats.filter((f) => f.raw)
  return Math.ceil(raw.reduce((sum, f) => sum + f.setup + f.roll, 0) / 5) * 5
}
