import type { Board } from './board'
import { maskOf } from './crew'
import { type Base, layBase, openBase } from './day-base'
import { AS_ANNOUNCED, type Genes, LEFT_OUT, type Place } from './draft'
import { fixedCost, floatCost, floatMoved, mealCost, momentsMoved, wrapCost } from './draft-cost'
import type { FloatJob } from './float-job'
import { lidOpeningsOf } from './lid-count'
import { bindFloat, findFloat, fitsAt, freeFloat, openWindows } from './place-float'
import type { Meals } from './place-meals'
import { PRICES } from './rules'
import { layDraft, mealsUntil, wrapAfter } from './scheduler'

/**
 * A day on the board that is changed in place: shots are taken off and put on again, and what does not help is undone.
 * Far cheaper than laying the day anew for each change.
 */
export class DayState {
  cost = 0
  base: Base
  /** Those that are not past. */
  readonly movable: readonly number[]
  private readonly costs: Float64Array
  private fed: Meals
  private fixed = 0
  private mealsCost = 0
  private before: { readonly cost: number; readonly fed: Meals }
  private readonly touched: number[] = []
  private readonly was: (Place | null)[]

  constructor(
    readonly board: Board,
    public genes: Genes,
  ) {
    const { floats, standing } = board.problem
    this.movable = floats.flatMap((_, i) => (standing?.floats[i]?.frozen && standing.floats[i]?.place ? [] : [i]))
    this.costs = new Float64Array(floats.length)
    this.was = floats.map(() => null)
    const { floats: placed } = layDraft(board, genes)
    this.base = layBase(board, genes)
    this.fed = this.base.meals
    this.before = { cost: 0, fed: this.fed }
    this.standOn(placed)
  }

  place(i: number): Place | null {
    return this.board.floats[i] ?? null
  }
  job(i: number): FloatJob {
    return this.board.problem.floats[i] as FloatJob
  }

  /** From here on changes can be undone. */
  begin(): void {
    this.touched.length = 0
    this.before = { cost: this.cost, fed: this.fed }
    this.liftMeals()
  }
  take(i: number): void {
    this.note(i)
    freeFloat(this.board, i, this.base.lids)
    this.costs[i] = this.costOf(i, null)
  }
  put(i: number, place: Place): void {
    this.note(i)
    bindFloat(this.board, i, place)
    this.costs[i] = this.costOf(i, place)
  }
  /** What the day costs with what was changed. */
  tally(): number {
    const { board, base } = this
    const wrap = wrapAfter(base.lastNeed, board.floats)
    this.fed = mealsUntil(board, base, this.genes, wrap)
    const meals = this.fed === base.meals ? this.mealsCost : mealCost(board, this.fed.meals, this.fed.mealsMissing)
    let cost = this.fixed + meals + wrapCost(board.problem, base.crewCall, wrap)
    for (let i = 0; i < this.costs.length; i++) cost += this.costs[i] as number
    this.cost = cost + lidOpeningsOf(board, base.lids) * PRICES.lidOpening
    return this.cost
  }
  undo(): void {
    this.liftMeals()
    for (const i of this.touched) freeFloat(this.board, i, this.base.lids)
    for (const i of this.touched) {
      const place = this.was[i]
      if (place) bindFloat(this.board, i, place)
      this.costs[i] = this.costOf(i, place ?? null)
    }
    this.touched.length = 0
    this.cost = this.before.cost
    this.fed = this.before.fed
    for (const meal of this.lateMeals())
      this.board.booking.book(maskOf(this.board.problem.crew, meal.people, []), meal.start, meal.end)
  }

  /** Other moments, meat-on or meals: every float keeps its place if it can, the others find one around them. */
  rebase(genes: Genes, random: () => number): void {
    const { board } = this
    const old = this.movable.map((i) => ({ i, place: this.place(i), after: this.offsetOf(i) }))
    old.sort((a, b) => (a.place?.start ?? 1e6) - (b.place?.start ?? 1e6))
    this.genes = genes
    this.base = layBase(board, genes)
    const pending: typeof old = []
    for (const was of old) {
      const kept = was.place && this.keptPlace(was.i, was.place, was.after)
      if (kept) bindFloat(board, was.i, kept)
      else pending.push(was)
    }
    pending.sort((a, b) => this.job(b.i).weight - this.job(a.i).weight)
    for (const { i, place, after } of pending) {
      const { modes } = this.job(i)
      const mode = place ? Math.max(0, modes.indexOf(place.mode)) : Math.floor(random() * modes.length)
      const found = findFloat(board, i, mode, place ? after : 0)
      if (found) bindFloat(board, i, found)
    }
    this.reckon()
  }
  private keptPlace(i: number, place: Place, after: number): Place | null {
    if (this.job(i).span) return fitsAt(this.board, i, place.mode, place.setupStart)
    const open = openWindows(this.board, this.job(i), i)[0]
    return open === undefined ? null : fitsAt(this.board, i, place.mode, open.lo + after - this.job(i).setup)
  }

  /** A day met before. */
  reset(genes: Genes, base: Base, floats: readonly (Place | null)[]): void {
    this.genes = genes
    this.base = base
    openBase(this.board, base)
    this.standOn(floats)
  }
  private standOn(floats: readonly (Place | null)[]): void {
    for (const i of this.movable) {
      const place = floats[i]
      if (place) bindFloat(this.board, i, place)
    }
    this.reckon()
  }

  /** After its first window opens. */
  offsetOf(i: number): number {
    const place = this.place(i)
    const open = openWindows(this.board, this.job(i), i)[0]
    return place && open ? Math.max(0, place.start - open.lo) : 0
  }
  /** Genes that lay out this very day. */
  asGenes(): Genes {
    const { floats, standing } = this.board.problem
    const startOf = (i: number) => this.place(i)?.start ?? Number.POSITIVE_INFINITY
    return {
      ...this.genes,
      order: floats.map((_, i) => i).sort((a, b) => (startOf(a) === startOf(b) ? a - b : startOf(a) - startOf(b))),
      mode: floats.map(({ modes }, i) => Math.max(0, modes.indexOf(this.place(i)?.mode as FloatJob['modes'][number]))),
      offset: floats.map((_, i) => {
        const place = this.place(i)
        const told = standing?.floats[i]?.place
        if (!place) return LEFT_OUT
        return told && told.mode === place.mode && told.setupStart === place.setupStart
          ? AS_ANNOUNCED
          : this.offsetOf(i)
      }),
    }
  }

  private reckon(): void {
    const { board, base } = this
    const { problem } = board
    this.fixed = fixedCost(board, base, this.genes) + momentsMoved(problem, base.moments)
    this.mealsCost = mealCost(board, base.meals.meals, base.meals.mealsMissing)
    for (let i = 0; i < this.costs.length; i++) this.costs[i] = this.costOf(i, this.place(i))
    this.fed = base.meals
    this.tally()
  }
  private costOf(i: number, place: Place | null): number {
    return floatCost(this.board, i, place) + floatMoved(this.board.problem, i, place)
  }
  private note(i: number): void {
    if (this.touched.includes(i)) return
    this.touched.push(i)
    this.was[i] = this.place(i)
  }
  private lateMeals() {
    return this.fed === this.base.meals ? [] : this.fed.meals.slice(this.base.meals.meals.length)
  }
  private liftMeals(): void {
    for (const meal of this.lateMeals())
      this.board.booking.release(maskOf(this.board.problem.crew, meal.people, []), meal.start, meal.end)
    this.fed = this.base.meals
  }
}
