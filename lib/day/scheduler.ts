import type { Board } from './board'
import { type Base, layBase } from './day-base'
import { type Draft, type Genes, LEFT_OUT } from './draft'
import { costOf } from './draft-cost'
import { placeFloat } from './place-float'
import { type Meals, placeMeals } from './place-meals'
import { RULES } from './rules'

/** Serial schedule generation: moments where they fall, then tasks and meals, then every other shot in the genes' order. */
export function layDraft(board: Board, genes: Genes): Draft {
  const base = layBase(board, genes)
  for (const i of genes.order) placeInTurn(board, genes, i)
  for (const i of genes.order) board.floats[i] ??= placeFloat(board, i, genes)
  return draftOf(board, base, genes)
}

/** The day as it stands on the board, with its later meals. */
export function draftOf(board: Board, base: Base, genes: Genes): Draft {
  const floats = [...board.floats]
  const wrap = wrapAfter(base.lastNeed, floats)
  const { moments, duties, meatOn, crewCall } = base
  const draft = { meatOn, crewCall, wrap, moments, floats, duties, ...mealsUntil(board, base, genes, wrap) }
  return { ...draft, ...costOf(board, base, genes, draft) }
}

export const mealsUntil = (board: Board, base: Base, genes: Genes, wrap: number): Meals =>
  wrap <= base.mealBy ? base.meals : placeMeals(board, genes.meals, wrap, base.meals)

/** Whatever has to come before it first. */
function placeInTurn(board: Board, genes: Genes, i: number, depth = 0): void {
  const job = board.problem.floats[i]
  if (board.floats[i] || genes.offset[i] === LEFT_OUT || !job) return
  if (depth < 20) for (const before of job.after) if (before !== i) placeInTurn(board, genes, before, depth + 1)
  board.floats[i] = placeFloat(board, i, genes)
}

export function wrapAfter(lastNeed: number, floats: Draft['floats']): number {
  let last = lastNeed
  for (const p of floats) if (p && p.end > last) last = p.end
  return Math.ceil(last + RULES.strikeMin)
}
