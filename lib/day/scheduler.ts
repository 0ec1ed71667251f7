import { DROPPED, lossOf } from './assign-moments'
import type { Board } from './board'
import type { Mode } from './crew'
import type { Draft, DutyPlace, Genes, Place } from './draft'
import type { FloatJob } from './float-job'
import { placeFloat } from './place-float'
import { placeMeals } from './place-meals'
import { placeMoments } from './place-moments'
import { placeDuties } from './place-tasks'
import { type DayProblem, likelyMinute } from './problem'
import { PRICES, RULES } from './rules'
import { safeLow } from './samples'

/** Serial schedule generation: moments where they fall, then tasks and meals, then every other shot in the genes' order. */
export function layDraft(board: Board, genes: Genes): Draft {
  clearBoard(board, genes)
  const moments = placeMoments(board, genes)
  const booked = placeDuties(board)
  const firstWrap = wrapAfter(board, moments, [], booked)
  const meals = placeMeals(board, genes.meals, firstWrap)
  for (const i of genes.order) placeInTurn(board, genes, i)
  const floats = [...board.floats]
  const wrap = wrapAfter(board, moments, floats, booked)
  const all = placeMeals(board, genes.meals, wrap, meals)
  const draft = { meatOn: board.meatOn, crewCall: board.crewCall, wrap, moments, floats, duties: booked, ...all }
  return { ...draft, cost: costOf(board, genes, draft) }
}

function clearBoard(board: Board, genes: Genes): void {
  const { problem } = board
  board.booking.clear()
  board.away.clear()
  board.lids.fill(0)
  board.floats.fill(null)
  board.lidOpenings = 0
  board.meatOn = problem.cooks.map((_, c) => {
    const choices = problem.meatOn.choices[c] as readonly number[]
    return choices[Math.min(genes.meatOn[c] as number, choices.length - 1)] as number
  })
  board.crewCall = problem.call ?? neededFrom(board) - genes.callLead
  const strike = RULES.strikeMin
  board.lastEnd = problem.wrapLimit === null ? board.problem.clock.length - 60 : problem.wrapLimit - strike
}

/** When the first fire is lit or the first moment shot set up, rounded down to five minutes. */
function neededFrom({ problem, meatOn }: Board): number {
  const fires = problem.cooks.flatMap((c, i) => {
    const lit = c.sorted('fire-lit')
    return lit ? [(meatOn[i] as number) + safeLow(lit, RULES.missShare)] : []
  })
  const setups = problem.moments.map(
    (job) =>
      (meatOn[job.cook] as number) +
      safeLow(job.sorted, RULES.missShare) -
      job.before -
      job.standbySetup -
      RULES.clockMarginMin -
      1,
  )
  return Math.floor(Math.min(...fires, ...setups) / 5) * 5
}

/** Whatever has to come before it first. */
function placeInTurn(board: Board, genes: Genes, i: number, depth = 0): void {
  if (board.floats[i]) return
  const job = board.problem.floats[i]
  if (!job) return
  if (depth < 20) for (const before of job.after) if (before !== i) placeInTurn(board, genes, before, depth + 1)
  board.floats[i] = placeFloat(board, job, genes.mode[i] as number, genes.offset[i] as number)
}

function wrapAfter(
  board: Board,
  moments: readonly (Place | null)[],
  floats: readonly (Place | null)[],
  duties: readonly DutyPlace[],
): number {
  // Somebody cooks to the end, filmed or not.
  const served = board.problem.cooks.map((_, c) => likelyMinute(board.problem, c, 'first-slice', board.meatOn))
  let last = Math.max(board.crewCall, ...served.filter((t) => t <= board.lastEnd))
  for (const stretch of [moments, floats, duties]) for (const p of stretch) if (p) last = Math.max(last, p.end)
  return Math.ceil(last + RULES.strikeMin)
}

type Uncosted = Omit<Draft, 'cost'>
function costOf(board: Board, genes: Genes, draft: Uncosted): number {
  return (
    momentCost(board.problem, draft) +
    floatCost(board.problem, draft) +
    mealCost(board, draft) +
    dayCost(board, genes, draft)
  )
}

function momentCost(problem: DayProblem, { moments, meatOn }: Uncosted): number {
  const { moments: jobs, clashes } = problem
  const modes = moments.map((p, i) => (p ? (jobs[i] as (typeof jobs)[number]).modes.indexOf(p.mode as Mode) : DROPPED))
  const order = jobs.map((_, i) => i).sort((a, b) => momentStart(problem, meatOn, a) - momentStart(problem, meatOn, b))
  let cost = 0
  order.forEach((i, depth) => {
    const job = jobs[i] as (typeof jobs)[number]
    const mode = modes[i] as number
    cost += mode === DROPPED ? job.weight : lossOf(jobs, clashes, meatOn, modes, order.slice(0, depth), i, mode)
  })
  return cost
}
const momentStart = (problem: DayProblem, meatOn: readonly number[], i: number) => {
  const job = problem.moments[i] as DayProblem['moments'][number]
  return (meatOn[job.cook] as number) + job.likely
}

function floatCost(problem: DayProblem, { floats, crewCall, meatOn }: Uncosted): number {
  let cost = 0
  floats.forEach((place, i) => {
    const job = problem.floats[i] as DayProblem['floats'][number]
    if (!place) cost += job.weight
    else cost += Math.min(1, place.risk) * job.weight * PRICES.interrupted + waitCost(job, place, crewCall, meatOn)
  })
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
    const before = Math.max(crewCall, ...meals.filter((m) => m.end <= start).map((m) => m.end))
    cost += Math.abs(start - before - RULES.mealWantedMin) * PRICES.mealShiftPerMin
    if (people.length < problem.crew.people.length) cost += PRICES.mealApart
    else cost += problem.risk.of(problem.everybody, momentMasks, null, start, end, meatOn) * PRICES.mealRisk
  }
  return cost
}

function dayCost(board: Board, genes: Genes, { wrap, crewCall, meatOn }: Uncosted): number {
  const { choices, inLight } = board.problem.meatOn
  const tooLong = board.problem.wrapLimit === null ? 0 : Math.max(0, wrap - board.problem.wrapLimit)
  const waited = meatOn.reduce((sum, at, c) => sum + at - ((choices[c] as readonly number[])[0] as number), 0)
  const best = Math.max(0, ...inLight)
  const lost =
    inLight.length > 0 ? best - (inLight[Math.min(genes.meatOn[0] as number, inLight.length - 1)] as number) : 0
  return (
    (wrap - crewCall) * PRICES.dayPerMin +
    tooLong * 10 +
    (inLight.length > 0 ? 0 : waited * PRICES.laterMeatOnPerMin) +
    lost * PRICES.sliceOutOfLight +
    board.lidOpenings * PRICES.lidOpening
  )
}
