import { DROPPED } from './assign-moments'
import type { Mode } from './crew'
import { AS_ANNOUNCED, type Draft, type Genes } from './draft'
import type { DayProblem } from './problem'

/** Changes the genes of a day a little; `draft` is the day as they lay it out now. */
export type Move = (genes: Genes, random: () => number, draft: Draft) => void
const pick = (random: () => number, count: number) => Math.floor(random() * count)

/** A wheel of moves: most change the other shots, which is cheap to try, the fewest what all of them hang on. */
export function movesFor(problem: DayProblem): Move[] {
  const moves: Move[] = [mealMove]
  const often = (times: number, move: Move) => moves.push(...new Array<Move>(times).fill(move))
  if (problem.floats.length > 0) {
    often(4, earlierMove)
    often(3, swapMove)
    often(5, offsetMove(problem))
    often(3, modeMove(problem))
    often(4, rescueMove(problem))
    often(2, elsewhereMove(problem))
  }
  if (problem.moments.length > 0) {
    often(2, momentModeMove(problem))
    often(1, exchangeMove(problem))
  }
  if (problem.call === null) often(2, callMove)
  if (problem.meatOn.choices.some((c) => c.length > 1)) often(2, meatOnMove(problem))
  return moves
}

/** A shot that found no place chooses among the first, with other people and at another time. */
const rescueMove =
  (problem: DayProblem): Move =>
  (genes, random, draft) => {
    const lost = draft.floats.flatMap((place, i) => (place ? [] : [i]))
    const shot = lost[pick(random, lost.length)]
    if (shot === undefined) return offsetMove(problem)(genes, random, draft)
    genes.order.splice(genes.order.indexOf(shot), 1)
    genes.order.splice(pick(random, 1 + (genes.order.length >> 2)), 0, shot)
    genes.mode[shot] = pick(random, problem.floats[shot]?.modes.length ?? 1)
    if (random() < 0.5) offsetOf(problem, genes, shot, random)
  }
/** Two or three shots that stand near each other make room and choose anew. */
const elsewhereMove =
  (problem: DayProblem): Move =>
  (genes, random, draft) => {
    const i = pick(random, genes.order.length)
    const at = draft.floats[i]?.start
    if (at === undefined) return swapMove(genes, random, draft)
    const near = draft.floats.flatMap((place, j) => (place && Math.abs(place.start - at) < 40 ? [j] : []))
    for (let n = 0; n < 3; n++) {
      const shot = near[pick(random, near.length)] as number
      if (random() < 0.5) genes.mode[shot] = pick(random, problem.floats[shot]?.modes.length ?? 1)
      if (random() < 0.5) offsetOf(problem, genes, shot, random)
      genes.order.splice(genes.order.indexOf(shot), 1)
      genes.order.splice(pick(random, genes.order.length + 1), 0, shot)
    }
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
  (genes, random) =>
    offsetOf(problem, genes, pick(random, genes.offset.length), random)
function offsetOf(problem: DayProblem, genes: Genes, i: number, random: () => number): void {
  const now = genes.offset[i] as number
  const roll = problem.floats[i]?.roll ?? 5
  const kind = random()
  if (problem.standing?.floats[i]?.place && random() < 0.4) genes.offset[i] = AS_ANNOUNCED
  else if (kind < 0.25) genes.offset[i] = 0
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
