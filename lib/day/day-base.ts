import { DROPPED, lossOf } from './assign-moments'
import type { Board, OpenWindow } from './board'
import type { Booking } from './booking'
import { type Mask, type Mode, maskOf } from './crew'
import type { DutyPlace, Genes, Place } from './draft'
import { bindFloat, windowsOf } from './place-float'
import { type Meals, mealDeadline, placeMeals } from './place-meals'
import { leavesTheFire, placeMoments } from './place-moments'
import { placeSides } from './place-sides'
import { placeDuties } from './place-tasks'
import { type DayProblem, likelyMinute } from './problem'
import { sameStand } from './refine-calls'
import { PRICES, RULES } from './rules'
import { safeLow } from './samples'

/** What of a day hangs on meat-on, call, staffing of moments and meals alone; most of what the search tries leaves it. */
export interface Base {
  readonly key: readonly number[]
  readonly meatOn: readonly number[]
  readonly crewCall: number
  readonly moments: readonly (Place | null)[]
  readonly momentMasks: readonly (Mask | null)[]
  readonly momentCost: number
  readonly duties: readonly DutyPlace[]
  readonly meals: Meals
  /** The day is over by then, or somebody wants another meal. */
  readonly mealBy: number
  /** The last of the moments, tasks and slices. */
  readonly lastNeed: number
  readonly booked: Booking
  readonly away: Booking
  readonly lids: Uint8Array
  readonly lastEnd: number
  readonly windows: readonly (readonly OpenWindow[])[]
}
const KEPT = 4

/** Sets the board to the genes' moments, tasks and meals, from memory where they were tried just before. */
export function layBase(board: Board, genes: Genes): Base {
  const key = keyOf(genes)
  const known = board.bases.find((base) => base.key.every((x, i) => x === key[i]))
  return known ? openBase(board, known) : remember(board, freshBase(board, genes, key))
}
/** The board with nothing else on it. */
export function openBase(board: Board, known: Base): Base {
  board.booking.restore(known.booked)
  board.away.restore(known.away)
  board.lids.set(known.lids)
  board.meatOn = known.meatOn
  board.crewCall = known.crewCall
  board.lastEnd = known.lastEnd
  board.windows = known.windows
  for (let i = 0; i < known.momentMasks.length; i++) board.momentMasks[i] = known.momentMasks[i] as Mask | null
  standFloats(board)
  return known
}
const keyOf = (genes: Genes) => [...genes.meatOn, genes.callLead, ...genes.momentMode, ...genes.meals]

function remember(board: Board, base: Base): Base {
  if (board.bases.length >= KEPT) board.bases.shift()
  board.bases.push(base)
  return base
}

function freshBase(board: Board, genes: Genes, key: number[]): Base {
  const { problem } = board
  clearBoard(board, genes)
  board.windows = windowsOf(board)
  standFloats(board)
  // Who is in a shot as the day is laid out anew is lent to no moment before it ends.
  bindStanding(board)
  const moments = placeMoments(board, genes)
  const duties = [...placeSides(board), ...placeDuties(board)]
  const lastNeed = lastNeedOf(board, moments, duties)
  const stand: Meals = { meals: mealsThatStand(board), mealsMissing: 0 }
  const meals = placeMeals(board, genes.meals, Math.ceil(lastNeed + RULES.strikeMin), stand)
  return {
    key,
    meatOn: board.meatOn,
    crewCall: board.crewCall,
    moments,
    momentMasks: [...board.momentMasks],
    momentCost: momentCost(problem, board.meatOn, moments) + firesLeftFor(board, moments) * PRICES.fireLeft,
    duties,
    meals,
    mealBy: mealDeadline(board, meals),
    lastNeed,
    booked: board.booking.copy(),
    away: board.away.copy(),
    lids: board.lids.slice(),
    lastEnd: board.lastEnd,
    windows: board.windows,
  }
}

function bindStanding(board: Board): void {
  board.floats.forEach((place, i) => {
    if (place) bindFloat(board, i, place)
  })
}
/** Shots that are past or about to begin keep their place. */
function standFloats(board: Board): void {
  const { standing } = board.problem
  if (!standing) board.floats.fill(null)
  else
    standing.floats.forEach((a, i) => {
      board.floats[i] = a?.frozen ? a.place : null
    })
}
/** Whoever a moment calls away from a meal eats anew. */
function mealsThatStand({ problem, booking }: Board) {
  return (problem.standing?.meals ?? []).flatMap((meal) => {
    const people = meal.people.filter((p) => booking.lastClash(maskOf(problem.crew, [p], []), meal.start, meal.end) < 0)
    booking.book(maskOf(problem.crew, people, []), meal.start, meal.end)
    return people.length > 0 ? [{ ...meal, people }] : []
  })
}

function clearBoard(board: Board, genes: Genes): void {
  const { problem } = board
  board.booking.clear()
  board.away.clear()
  board.lids.fill(0)
  bookAbsence(board)
  board.meatOn = problem.cooks.map((_, c) => {
    const choices = problem.meatOn.choices[c] as readonly number[]
    return choices[Math.min(genes.meatOn[c] as number, choices.length - 1)] as number
  })
  board.crewCall = problem.call ?? neededFrom(board) - genes.callLead
  board.lastEnd =
    problem.wrapLimit === null ? problem.clock.length - 60 : problem.wrapLimit + problem.overtimeMin - RULES.strikeMin
}

const firesLeftFor = (board: Board, moments: readonly (Place | null)[]) =>
  moments.filter((place, i) => place && leavesTheFire(board, i, place)).length

/** Nobody is booked, or in sight of the fire, outside their own hours. */
function bookAbsence({ problem, booking, away }: Board): void {
  problem.hours.forEach(({ from, to }, person) => {
    const mask = maskOf(problem.crew, [person], [])
    for (const grid of [booking, away]) {
      grid.book(mask, 0, Math.min(problem.clock.length, Math.ceil(from)))
      grid.book(mask, Math.max(0, Math.floor(to)), problem.clock.length)
    }
  })
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

function lastNeedOf(board: Board, moments: readonly (Place | null)[], duties: readonly DutyPlace[]): number {
  // Somebody cooks to the end, filmed or not.
  const served = board.problem.cooks.map((_, c) => likelyMinute(board.problem, c, 'first-slice', board.meatOn))
  let last = Math.max(board.crewCall, ...served.filter((t) => t <= board.lastEnd))
  for (const stretch of [moments, duties]) for (const p of stretch) if (p) last = Math.max(last, p.end)
  return last
}

function momentCost(problem: DayProblem, meatOn: readonly number[], moments: readonly (Place | null)[]): number {
  const { moments: jobs, clashes } = problem
  const modes = moments.map((p, i) => (p ? (jobs[i] as (typeof jobs)[number]).modes.indexOf(p.mode) : DROPPED))
  const startOf = (i: number) => {
    const job = jobs[i] as (typeof jobs)[number]
    return (meatOn[job.cook] as number) + job.likely
  }
  const order = jobs.map((_, i) => i).sort((a, b) => startOf(a) - startOf(b))
  let cost = 0
  order.forEach((i, depth) => {
    const job = jobs[i] as (typeof jobs)[number]
    const mode = modes[i] as number
    if (mode === DROPPED) cost += job.weight
    else
      cost +=
        lossOf(jobs, clashes, meatOn, modes, order, depth, mode) +
        (standsReady(jobs, modes, order, depth) ? 0 : PRICES.newStand)
  })
  return cost
}

/** Whether cameras and operators of the one at `depth` stood at an earlier moment of the same cook and place. */
function standsReady(
  jobs: DayProblem['moments'],
  modes: readonly number[],
  order: readonly number[],
  depth: number,
): boolean {
  const i = order[depth] as number
  const job = jobs[i] as DayProblem['moments'][number]
  const mode = job.modes[modes[i] as number] as Mode
  for (let k = 0; k < depth; k++) {
    const j = order[k] as number
    const other = jobs[j] as DayProblem['moments'][number]
    const theirs = other.modes[modes[j] as number]
    if (theirs && other.cook === job.cook && other.place === job.place && sameStand(theirs, mode)) return true
  }
  return false
}
