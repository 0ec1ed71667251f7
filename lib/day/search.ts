import { chanceOf } from '../model/random'
import { assignMoments, DROPPED } from './assign-moments'
import { type Board, newBoard } from './board'
import type { Mode } from './crew'
import { copyGenes, type Draft, type Genes } from './draft'
import type { DayProblem } from './problem'
import { layDraft } from './scheduler'

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
    move(tried, random)
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
  if (cook > 0 || meatOn.inLight.length === 0) return 0
  return meatOn.inLight.indexOf(Math.max(...meatOn.inLight))
}
/** A first guess at what has to be shot before the meat goes on. */
function needBefore({ floats }: DayProblem): number {
  const raw = floats.filter((f) => f.raw)
  return Math.ceil(raw.reduce((sum, f) => sum + f.setup + f.roll, 0) / 5) * 5
}

type Move = (genes: Genes, random: () => number) => void
const pick = (random: () => number, count: number) => Math.floor(random() * count)

function movesFor(problem: DayProblem): Move[] {
  const moves: Move[] = [mealMove]
  if (problem.floats.length > 0)
    moves.push(earlierMove, earlierMove, swapMove, offsetMove(problem), offsetMove(problem), modeMove(problem))
  if (problem.moments.length > 0) moves.push(momentModeMove(problem), exchangeMove(problem))
  if (problem.call === null) moves.push(callMove)
  if (problem.meatOn.choices.some((c) => c.length > 1)) moves.push(meatOnMove(problem))
  return moves
}

const mealMove: Move = (genes, random) => {
  const i = pick(random, genes.meals.length)
  genes.meals[i] = 90 + 5 * pick(random, 54)
}
/** A shot chooses its place sooner. */
const earlierMove: Move = (genes, random) => {
  const from = pick(random, genes.order.length)
  const [shot] = genes.order.splice(from, 1) as [number]
  genes.order.splice(pick(random, from + 1), 0, shot)
}
const swapMove: Move = ({ order }, random) => {
  const [i, j] = [pick(random, order.length), pick(random, order.length)]
  const kept = order[i] as number
  order[i] = order[j] as number
  order[j] = kept
}
const offsetMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const i = pick(random, genes.offset.length)
    const now = genes.offset[i] as number
    const roll = problem.floats[i]?.roll ?? 5
    const kind = random()
    if (kind < 0.25) genes.offset[i] = 0
    else if (kind < 0.6) genes.offset[i] = Math.max(0, now + pick(random, 4 * roll) - 2 * roll)
    else genes.offset[i] = pick(random, 480)
  }
const modeMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const i = pick(random, genes.mode.length)
    genes.mode[i] = pick(random, problem.floats[i]?.modes.length ?? 1)
  }
const momentModeMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const i = pick(random, genes.momentMode.length)
    const modes = problem.moments[i]?.modes.length ?? 0
    genes.momentMode[i] = random() < 0.1 ? DROPPED : pick(random, modes)
  }
/** One camera or one operator takes all moment shots of another, and the other way round. */
const exchangeMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const { cameras, people } = problem.crew
    const swapCameras = random() < 0.5
    const count = swapCameras ? cameras.length : people.length
    const [a, b] = [pick(random, count), pick(random, count)]
    const swapped = (x: number) => (x === a ? b : x === b ? a : x)
    const key = (mode: Mode, through: (x: number) => number) =>
      swapCameras
        ? `${mode.operators}/${mode.hands}/${mode.cameras.map(through).sort()}`
        : `${mode.operators.map(through)}/${mode.hands.map(through)}/${mode.cameras}`
    problem.moments.forEach((job, i) => {
      const now = job.modes[genes.momentMode[i] as number]
      const wanted = now && key(now, swapped)
      const other = job.modes.findIndex((mode) => key(mode, (x) => x) === wanted)
      if (other >= 0) genes.momentMode[i] = other
    })
  }
const callMove: Move = (genes, random) => {
  genes.callLead = Math.max(0, Math.min(360, genes.callLead + 5 * (pick(random, 9) - 4)))
}
const meatOnMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const c = pick(random, genes.meatOn.length)
    const count = problem.meatOn.choices[c]?.length ?? 1
    const near = (genes.meatOn[c] as number) + pick(random, 31) - 15
    genes.meatOn[c] = random() < 0.2 ? pick(random, count) : Math.min(count - 1, Math.max(0, near))
  }
