import type { Board } from './board'
import { layBase } from './day-base'
import type { Draft, Genes } from './draft'
import { costOf } from './draft-cost'
import { placeFloat } from './place-float'
import { placeMeals } from './place-meals'
import { RULES } from './rules'

/** Serial schedule generation: moments where they fall, then tasks and meals, then every other shot in the genes' order. */
export function layDraft(board: Board, genes: Genes): Draft {
  const base = layBase(board, genes)
  for (const i of genes.order) placeInTurn(board, genes, i)
  const floats = [...board.floats]
  const wrap = wrapAfter(base.lastNeed, floats)
  const fed = wrap <= base.mealBy ? base.meals : placeMeals(board, genes.meals, wrap, base.meals)
  const { moments, duties, meatOn, crewCall } = base
  const draft = { meatOn, crewCall, wrap, moments, floats, duties, ...fed }
  return { ...draft, ...costOf(board, genes, draft, base.momentCost) }
}

/** Whatever has to come before it first. */
function placeInTurn(board: Board, genes: Genes, i: number, depth = 0): void {
  if (board.floats[i]) return
  const job = board.problem.floats[i]
  if (!job) return
  if (depth < 20) for (const before of job.after) if (before !== i) placeInTurn(board, genes, before, depth + 1)
  board.floats[i] = placeFloat(board, job, i, genes)
}

function wrapAfter(lastNeed: number, floats: Draft['floats']): number {
  let last = lastNeed
  for (const p of floats) if (p && p.end > last) last = p.end
  return Math.ceil(last + RULES.strikeMin)
}
