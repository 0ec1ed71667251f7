import { DROPPED } from './assign-moments'
import { anyMode, type Mode } from './crew'
import type { Genes } from './draft'
import type { DayProblem } from './problem'
import { restaffAround } from './staff-moments'

/** Changes what all other shots hang on: meat-on, call, meals, who stands at the moments. */
export type Move = (genes: Genes, random: () => number) => void
const pick = (random: () => number, count: number) => Math.floor(random() * count)

/** A wheel of moves. */
export function movesFor(problem: DayProblem): Move[] {
  const moves: Move[] = [mealMove]
  const often = (times: number, move: Move) => moves.push(...new Array<Move>(times).fill(move))
  if (problem.moments.length > 0) {
    often(2, momentModeMove(problem))
    often(4, restaffMove(problem))
    often(1, exchangeMove(problem))
  }
  if (problem.call === null) often(2, callMove)
  if (problem.meatOn.choices.some((c) => c.length > 1)) often(2, meatOnMove(problem))
  return moves
}

const mealMove: Move = (genes, random) => {
  const i = pick(random, genes.meals.length)
  genes.meals[i] = 90 + 5 * pick(random, 54)
}
const momentModeMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const i = pick(random, genes.momentMode.length)
    genes.momentMode[i] = random() < 0.1 ? DROPPED : anyMode(problem.moments[i]?.modes ?? [], random)
  }
/** One moment's shot is staffed otherwise, and those around it make room. */
const restaffMove =
  (problem: DayProblem): Move =>
  (genes, random) => {
    const i = pick(random, genes.momentMode.length)
    genes.momentMode[i] = anyMode(problem.moments[i]?.modes ?? [], random)
    restaffAround(problem, minutesOf(problem, genes), genes.momentMode, i, random)
  }
const minutesOf = ({ meatOn }: DayProblem, genes: Genes) =>
  meatOn.choices.map((minutes, c) => minutes[Math.min(genes.meatOn[c] as number, minutes.length - 1)] as number)
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
    // Two cooks meet elsewhere now.
    if (genes.meatOn.length > 1 && random() < 0.7)
      restaffAround(problem, minutesOf(problem, genes), genes.momentMode, -1, random)
  }
