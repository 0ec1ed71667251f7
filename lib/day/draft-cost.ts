import type { Board } from './board'
import type { Draft, Genes, Place } from './draft'
import type { FloatJob } from './float-job'
import type { DayProblem } from './problem'
import { PRICES, RULES, STABILITY } from './rules'
import type { Announced } from './standing'

type Uncosted = Omit<Draft, 'cost' | 'moved'>
type Costs = Pick<Draft, 'cost' | 'moved'>

/** What a day costs in points; `moved` is the part that what was announced and changed adds to it. */
export function costOf(board: Board, genes: Genes, draft: Uncosted, momentCost: number): Costs {
  const moved = board.problem.standing?.stable ? movedCost(board.problem, draft) : 0
  const cost = momentCost + floatCost(board.problem, draft) + mealCost(board, draft) + dayCost(board, genes, draft)
  return { cost: cost + moved, moved }
}

function floatCost(problem: DayProblem, { floats, crewCall, meatOn }: Uncosted): number {
  let cost = 0
  for (let i = 0; i < floats.length; i++) {
    const job = problem.floats[i] as FloatJob
    const place = floats[i]
    if (!place) cost += job.weight
    else cost += Math.min(1, place.risk) * job.weight * PRICES.interrupted + waitCost(job, place, crewCall, meatOn)
  }
  return cost
}
/** Soon rather than late, but what is shot of the raw roast just before it goes on. */
function waitCost(job: FloatJob, place: Place, crewCall: number, meatOn: readonly number[]): number {
  if (!job.raw) return (place.start - crewCall) * PRICES.laterPerMin
  return Math.max(0, (meatOn[job.cook] as number) - place.end) * PRICES.rawWaitPerMin
}

function mealCost(board: Board, { meals, mealsMissing, meatOn, crewCall }: Uncosted): number {
  const { problem, momentMasks } = board
  let cost = mealsMissing * PRICES.mealMissing
  for (const { start, end, people } of meals) {
    let before = crewCall
    for (const m of meals) if (m.end <= start) before = Math.max(before, m.end)
    cost += Math.abs(start - before - RULES.mealWantedMin) * PRICES.mealShiftPerMin
    if (people.length < problem.crew.people.length) cost += PRICES.mealApart
    else cost += problem.risk.of(problem.everybody, momentMasks, null, start, end, meatOn) * PRICES.mealRisk
  }
  return cost
}

function dayCost({ problem, lidOpenings }: Board, genes: Genes, { wrap, crewCall, meatOn }: Uncosted): number {
  const { choices, wish } = problem.meatOn
  const over = problem.wrapLimit === null ? 0 : Math.max(0, wrap - problem.wrapLimit)
  // A cook that is wished for at a time does not wait: it goes on for its wish.
  const waited = meatOn.reduce((sum, at, c) => sum + (c === 0 && wish.length > 0 ? 0 : at - (choices[c]?.[0] ?? at)), 0)
  const wished = wish.length > 0 ? (wish[Math.min(genes.meatOn[0] as number, wish.length - 1)] as number) : 0
  return (
    (wrap - crewCall) * PRICES.dayPerMin +
    overtimeCost(problem, over) +
    waited * PRICES.laterMeatOnPerMin +
    wished +
    lidOpenings * PRICES.lidOpening
  )
}
function overtimeCost({ overtimeMin, crew }: DayProblem, over: number): number {
  const paid = Math.min(over, overtimeMin)
  return paid * PRICES.overtimePerPersonMin * crew.people.length + (over - paid) * 10
}

/** What was announced and comes otherwise. */
function movedCost(problem: DayProblem, { moments, floats }: Uncosted): number {
  const { standing } = problem
  if (!standing) return 0
  let cost = 0
  for (let i = 0; i < moments.length; i++) cost += changeCost(standing.moments[i] ?? null, moments[i] ?? null, false)
  for (let i = 0; i < floats.length; i++) cost += changeCost(standing.floats[i] ?? null, floats[i] ?? null, true)
  return cost
}
function changeCost(announced: Announced | null, now: Place | null, bySheet: boolean): number {
  const before = announced?.place
  if (!before || announced.frozen) return 0
  if (!now) return STABILITY.announcedDropped
  let cost = 0
  // A moment's shot moves with its moment: only who comes is ours to change.
  const apart = bySheet ? Math.abs(now.setupStart - before.setupStart) : 0
  if (apart > 0) cost += apart * STABILITY.movedPerMin + (apart > RULES.movedMin ? STABILITY.callMoved : 0)
  if (now.mode === before.mode) return cost
  const changed = [...now.mode.operators, ...now.mode.hands].filter(
    (p) => !before.mode.operators.includes(p) && !before.mode.hands.includes(p),
  )
  return cost + changed.length * STABILITY.personChanged
}
