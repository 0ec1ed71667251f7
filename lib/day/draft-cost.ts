import type { Board } from './board'
import type { Base } from './day-base'
import type { Draft, Genes, MealPlace, Place } from './draft'
import type { FloatJob } from './float-job'
import { lidOpeningsOf } from './lid-count'
import type { DayProblem } from './problem'
import { PRICES, RULES, STABILITY } from './rules'
import type { Announced } from './standing'

type Uncosted = Omit<Draft, 'cost' | 'moved'>
type Costs = Pick<Draft, 'cost' | 'moved'>

/** What a day costs in points; `moved` is the part that what was announced and changed adds to it. */
export function costOf(board: Board, base: Base, genes: Genes, draft: Uncosted): Costs {
  const { problem } = board
  let [cost, moved] = [fixedCost(board, base, genes), momentsMoved(problem, draft.moments)]
  for (let i = 0; i < draft.floats.length; i++) {
    cost += floatCost(board, i, draft.floats[i] ?? null)
    moved += floatMoved(problem, i, draft.floats[i] ?? null)
  }
  cost += mealCost(board, draft.meals, draft.mealsMissing) + wrapCost(problem, base.crewCall, draft.wrap)
  return { cost: cost + lidOpeningsOf(board, base.lids) * PRICES.lidOpening + moved, moved }
}

/** One shot in its place, or dropped. Soon rather than late, but what is shot of the raw roast just before it goes on. */
export function floatCost({ problem, crewCall, meatOn }: Board, i: number, place: Place | null): number {
  const job = problem.floats[i] as FloatJob
  if (!place) return job.weight
  const wait = job.raw
    ? Math.max(0, (meatOn[job.cook] as number) - place.end) * PRICES.rawWaitPerMin
    : (place.start - crewCall) * PRICES.laterPerMin
  return Math.min(1, place.risk) * job.weight * PRICES.interrupted + wait
}

export function mealCost(board: Board, meals: readonly MealPlace[], missing: number): number {
  const { problem, momentMasks, meatOn, crewCall } = board
  let cost = missing * PRICES.mealMissing
  for (const { start, end, people } of meals) {
    let before = crewCall
    for (const m of meals) if (m.end <= start) before = Math.max(before, m.end)
    cost += Math.abs(start - before - RULES.mealWantedMin) * PRICES.mealShiftPerMin
    if (people.length < problem.crew.people.length) cost += PRICES.mealApart
    else cost += problem.risk.of(problem.everybody, momentMasks, null, start, end, meatOn) * PRICES.mealRisk
  }
  return cost
}

/** What hangs on the moments and the meat alone. */
export function fixedCost({ problem }: Board, { momentCost, meatOn }: Base, genes: Genes): number {
  const { choices, wish } = problem.meatOn
  // A cook that is wished for at a time does not wait: it goes on for its wish.
  const waited = meatOn.reduce((sum, at, c) => sum + (c === 0 && wish.length > 0 ? 0 : at - (choices[c]?.[0] ?? at)), 0)
  const wished = wish.length > 0 ? (wish[Math.min(genes.meatOn[0] as number, wish.length - 1)] as number) : 0
  return momentCost + waited * PRICES.laterMeatOnPerMin + wished
}

export function wrapCost(problem: DayProblem, crewCall: number, wrap: number): number {
  const over = problem.wrapLimit === null ? 0 : Math.max(0, wrap - problem.wrapLimit)
  return (wrap - crewCall) * PRICES.dayPerMin + overtimeCost(problem, over)
}
function overtimeCost({ overtimeMin, crew }: DayProblem, over: number): number {
  const paid = Math.min(over, overtimeMin)
  return paid * PRICES.overtimePerPersonMin * crew.people.length + (over - paid) * 10
}

/** What was announced and comes otherwise. */
export function momentsMoved({ standing }: DayProblem, moments: readonly (Place | null)[]): number {
  if (!standing?.stable) return 0
  let cost = 0
  for (let i = 0; i < moments.length; i++) cost += changeCost(standing.moments[i] ?? null, moments[i] ?? null)
  return cost
}
export const floatMoved = ({ standing }: DayProblem, i: number, place: Place | null): number =>
  standing?.stable ? changeCost(standing.floats[i] ?? null, place) : 0
function changeCost(announced: Announced | null, now: Place | null): number {
  const before = announced?.place
  if (!before || announced.frozen) return 0
  if (!now) return STABILITY.announcedDropped
  let cost = 0
  // What hangs on the cook moves with it: only who comes is ours to change.
  const apart = announced.byClock ? Math.abs(now.setupStart - before.setupStart) : 0
  if (apart > 0) cost += apart * STABILITY.movedPerMin + (apart > RULES.movedMin ? STABILITY.callMoved : 0)
  if (now.mode === before.mode) return cost
  const changed = [...now.mode.operators, ...now.mode.hands].filter(
    (p) => !before.mode.operators.includes(p) && !before.mode.hands.includes(p),
  )
  return cost + changed.length * STABILITY.personChanged
}
