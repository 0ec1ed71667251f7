import { chanceOf } from '../model/random'
import { DROPPED } from './assign-moments'
import { newBoard } from './board'
import { DayState } from './day-state'
import { copyGenes, type Draft, type Genes, type Place } from './draft'
import { firstDays } from './first-days'
import { FLOAT_MOVES, type FloatMove } from './float-moves'
import { makeRoom } from './make-room'
import type { DayProblem } from './problem'
import { layDraft } from './scheduler'
import { type Move, movesFor } from './search-moves'

export interface Found {
  readonly genes: Genes
  readonly draft: Draft
}
export type SearchOptions = {
  readonly seed: number
  /** One sweep tries as many changes as the day has shots. */
  readonly sweeps: number
  /** Where to begin; else a plan by priority. */
  readonly from?: Genes
  /** `from` is nearly right: it is changed no more than it must. */
  readonly near?: boolean
  /** The share of the caller's time that is spent, in place of sweeps: ends at 1. */
  readonly spent?: () => number
}
/** So many changes in all: measured at about 1 s for 40 shots, 2 s for 80. */
const DEFAULT_TRIALS = 3000
export const defaultSweeps = ({ floats, moments }: DayProblem) =>
  Math.ceil(DEFAULT_TRIALS / Math.max(4, floats.length + moments.length))
/** A trial changes what all hangs on in so many cases, and else so often a few shots. */
const BASE_SHARE = 0.25
const SMALL_CHANGES = 8
/** Several days are begun, and ever fewer carried on, ever cooler; `until` is a share of the time. */
const HEATS = [
  { days: 4, until: 0.5, hot: 40 },
  { days: 2, until: 0.75, hot: 20 },
  { days: 1, until: 1, hot: 10 },
] as const
/** Points: how cool each ends, and how hot one begins that is nearly right. */
const COLD = 0.3
const NEARBY = 4
/** Of these, so many make room for one shot. */
const ROOM_SHARE = 0.4
/** Small changes after each change of what all hangs on. */
const SETTLING = 6
/** A clock is read once in so many trials. */
const READ_EVERY = 16

/** Simulated annealing; the best day met, not the last. Same seed and sweeps, same day. */
export function searchDay(problem: DayProblem, { seed, sweeps, from, near, spent }: SearchOptions): Found {
  const random = chanceOf(seed, 0, 0x6461).uniform
  const board = newBoard(problem)
  const begun = from ? [copyGenes(from)] : firstDays(board, HEATS[0].days)
  const state = new DayState(board, begun[0] as Genes)
  let days = [metAt(state), ...begun.slice(1).map((genes) => metAt(new DayState(board, genes)))]
  const trials = sweeps * Math.max(4, problem.floats.length + problem.moments.length)
  if (trials > 0) {
    const clock = clockOf(trials, spent)
    let began = 0
    for (const { days: count, until, hot } of HEATS) {
      const each = (until - began) / count
      days = bestOf(days, count).map((day, k) => {
        const leg = { from: began + k * each, to: began + (k + 1) * each, hot: near ? Math.min(hot, NEARBY) : hot }
        return anneal(state, day, leg, clock, random)
      })
      began = until
    }
  }
  goTo(state, bestOf(days, 1)[0] as Met)
  if (trials > 0) settle(problem, state, random)
  const genes = state.asGenes()
  return { genes, draft: layDraft(board, genes) }
}
/** The share that is done, a trial further each time it is asked. */
function clockOf(trials: number, spent: (() => number) | undefined): () => number {
  let i = 0
  let done = 0
  return () => {
    if (!spent) done = i / trials
    else if (i % READ_EVERY === 0) done = spent()
    i++
    return done
  }
}
/** Where there are not so many, the same are begun again. */
function bestOf(days: readonly Met[], count: number): Met[] {
  const sorted = [...days].sort((a, b) => a.cost - b.cost)
  return Array.from({ length: count }, (_, k) => sorted[k % sorted.length] as Met)
}
type Leg = { readonly from: number; readonly to: number; readonly hot: number }

/** The best day met from here on. */
function anneal(state: DayState, day: Met, { from, to, hot }: Leg, clock: () => number, random: () => number): Met {
  const moves = movesFor(state.board.problem)
  const best = new Best(day)
  goTo(state, day)
  for (let done = clock(); done < to; done = clock()) {
    const temperature = hot * (COLD / hot) ** Math.max(0, (done - from) / (to - from))
    if (random() < BASE_SHARE) changeBase(state, moves, temperature, random)
    else for (let k = 0; k < SMALL_CHANGES; k++) changeFloats(state, temperature, random, best)
    best.see(state)
  }
  return best.met
}
const accepted = (before: number, after: number, temperature: number, random: () => number) =>
  after <= before || random() < Math.exp((before - after) / temperature)

function changeFloats(state: DayState, temperature: number, random: () => number, best: Best | null): void {
  if (state.movable.length === 0) return
  const before = state.cost
  state.begin()
  const move = FLOAT_MOVES[Math.floor(random() * FLOAT_MOVES.length)] as FloatMove
  if (move(state, random) && accepted(before, state.tally(), temperature, random)) best?.see(state)
  else state.undo()
}

function changeBase(state: DayState, moves: readonly Move[], temperature: number, random: () => number): void {
  const { genes, base, cost } = state
  const floats = [...state.board.floats]
  const tried = { ...genes, meatOn: [...genes.meatOn], momentMode: [...genes.momentMode], meals: [...genes.meals] }
  if (random() >= ROOM_SHARE || !makeRoom(state, tried, random)) {
    const move = moves[Math.floor(random() * moves.length)] as Move
    move(tried, random)
    state.rebase(tried, random)
  }
  // The other shots settle a little before the two days are compared.
  for (let k = 0; k < SETTLING; k++) changeFloats(state, COLD, random, null)
  if (!accepted(cost, state.cost, temperature, random)) state.reset(genes, base, floats)
}

/** A day met, to come back to. */
type Met = Pick<DayState, 'genes' | 'base' | 'cost'> & { readonly floats: readonly (Place | null)[] }
const metAt = ({ genes, base, cost, board }: DayState): Met => ({ genes, base, cost, floats: [...board.floats] })
const goTo = (state: DayState, { genes, base, floats }: Met) => state.reset(genes, base, floats)
class Best {
  constructor(public met: Met) {}
  see(state: DayState): void {
    if (state.cost < this.met.cost - 1e-9) this.met = metAt(state)
  }
}

/** One moment shot after another is staffed anew or dropped while that helps: chance may have left a clash standing. */
function settle(problem: DayProblem, state: DayState, random: () => number): void {
  for (let again = true; again; ) {
    again = false
    for (const [i, job] of problem.moments.entries())
      for (let mode = DROPPED; mode < job.modes.length; mode++) {
        const { genes, base, cost } = state
        if (mode === genes.momentMode[i] || job.modes[mode]?.crossed) continue
        const floats = [...state.board.floats]
        state.rebase({ ...genes, momentMode: genes.momentMode.with(i, mode) }, random)
        if (state.cost >= cost - 1e-9) state.reset(genes, base, floats)
        else again = true
      }
  }
}
