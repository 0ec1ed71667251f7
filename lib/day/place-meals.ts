import type { Board } from './board'
import { maskOf } from './crew'
import type { MealPlace } from './draft'
import { ALL_DAY } from './hours'
import { RULES } from './rules'

export type Meals = { readonly meals: MealPlace[]; readonly mealsMissing: number }
const STEP = 5

/**
 * Meals until the day is short enough: each as near its wanted time as everybody is free and unlikely to be called, all
 * together where that can be, else each person by themselves. `placed` are those that stand already.
 */
export function placeMeals(board: Board, wanted: readonly number[], wrap: number, placed?: Meals): Meals {
  const meals = [...(placed?.meals ?? [])]
  let mealsMissing = 0
  const everybody = board.problem.crew.people.map((_, i) => i)
  for (let round = roundsOf(meals, everybody.length); round < wanted.length; round++) {
    const due = everybody.filter((p) => stillDue(board, meals, p, wrap, round))
    if (due.length === 0) break
    const together = due.length > 1 ? placeMeal(board, due, meals, wanted[round] as number, wrap, round) : null
    if (together) {
      meals.push(together)
      continue
    }
    for (const person of due) {
      const alone = placeMeal(board, [person], meals, wanted[round] as number, wrap, round)
      if (alone) meals.push(alone)
      else mealsMissing++
    }
    if (mealsMissing > 0) break
  }
  return { meals, mealsMissing: mealsMissing + (placed?.mealsMissing ?? 0) }
}

const mealsOf = (meals: readonly MealPlace[], person: number) =>
  meals.filter((m) => m.people.includes(person)).sort((a, b) => a.start - b.start)
const roundsOf = (meals: readonly MealPlace[], people: number) =>
  people === 0 ? 0 : Math.min(...Array.from({ length: people }, (_, p) => mealsOf(meals, p).length))

function stillDue(board: Board, meals: readonly MealPlace[], person: number, wrap: number, round: number): boolean {
  return mealsOf(meals, person).length === round && wrap > deadline(board, meals, [person], round)
}
/** When the next meal of anybody must begin. */
export function mealDeadline(board: Board, { meals, mealsMissing }: Meals): number {
  const everybody = board.problem.crew.people.map((_, i) => i)
  if (mealsMissing > 0 || everybody.length === 0) return Number.POSITIVE_INFINITY
  const round = roundsOf(meals, everybody.length)
  return Math.min(...everybody.map((p) => deadline(board, meals, [p], Math.max(round, mealsOf(meals, p).length))))
}
/** The meal starts by then, or the day has ended. */
function deadline(board: Board, meals: readonly MealPlace[], people: readonly number[], round: number): number {
  return Math.min(...people.map((p) => deadlineOf(board, meals, p, round)))
}
/** Whoever goes home before it is due has it at home. */
function deadlineOf(board: Board, meals: readonly MealPlace[], person: number, round: number): number {
  const by =
    round === 0
      ? comesAt(board, person) + RULES.firstMealWithinMin
      : (mealsOf(meals, person)[round - 1]?.end ?? comesAt(board, person)) + RULES.nextMealWithinMin
  return (board.problem.hours[person] ?? ALL_DAY).to <= by ? Number.POSITIVE_INFINITY : by
}
const comesAt = (board: Board, person: number) =>
  Math.max(board.crewCall, (board.problem.hours[person] ?? ALL_DAY).from)

function placeMeal(
  board: Board,
  people: readonly number[],
  meals: readonly MealPlace[],
  wanted: number,
  wrap: number,
  round: number,
): MealPlace | null {
  const before = Math.max(...people.map((p) => mealsOf(meals, p)[round - 1]?.end ?? comesAt(board, p)))
  const lo = Math.max(before + RULES.mealNotBeforeMin, board.problem.standing?.earliest ?? 0)
  const hi = Math.floor(Math.min(deadline(board, meals, people, round), wrap - board.problem.mealMin - 1))
  const centre = Math.min(Math.max(before + wanted, lo), hi)
  // Somebody alone eats even where a call may come; the whole crew does not.
  for (const limit of people.length > 1 ? [RULES.mealRisk] : [RULES.mealRisk, 1])
    for (let away = 0; away <= hi - lo; away += STEP)
      for (const start of away === 0 ? [centre] : [centre - away, centre + away])
        if (start >= lo && start <= hi && fits(board, people, start, limit)) return book(board, people, start)
  return null
}

function fits(board: Board, people: readonly number[], start: number, riskLimit: number): boolean {
  const { problem, momentMasks, meatOn } = board
  const mask = maskOf(problem.crew, people, [])
  const end = start + problem.mealMin
  if (board.booking.lastClash(mask, start, end) >= 0) return false
  return problem.risk.of(mask, momentMasks, null, start, end, meatOn) <= riskLimit
}

function book(board: Board, people: readonly number[], start: number): MealPlace {
  const end = start + board.problem.mealMin
  board.booking.book(maskOf(board.problem.crew, people, []), start, end)
  return { start, end, people }
}
