import { chanceOf } from '../model/random'
import { assignMoments, DROPPED } from './assign-moments'
import { newBoard } from './board'
import { DayState } from './day-state'
import { copyGenes, type Draft, type Genes, type Place } from './draft'
import { FLOAT_MOVES, type FloatMove } from './float-moves'
import { makeRoom } from './make-room'
import type { DayProblem } from './problem'
import { PRICES } from './rules'
import { layDraft } from './scheduler'
import { type Move, movesFor } from './search-moves'
import { restaffAround, staffingLoss } from './staff-moments'

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
/** Points, at the beginning and at the end. */
const HOT = 40
const COLD = 0.3
const NEARBY = 2
const ROUNDS = 3
/** Of these, so many make room for one shot. */
const ROOM_SHARE = 0.4
/** Small changes after each change of what all hangs on. */
const SETTLING = 6

/** Simulated annealing; the best day met, not the last. Same seed and sweeps, same day. */
export function searchDay(problem: DayProblem, { seed, sweeps, from, near, spent }: SearchOptions): Found {
  const random = chanceOf(seed, 0, 0x6461).uniform
  const board = newBoard(problem)
  const state = new DayState(board, from ? copyGenes(from) : firstGenes(problem))
  const best = new Best(state)
  const trials = sweeps * Math.max(4, problem.floats.length + problem.moments.length)
  const moves = movesFor(problem)
  let round = 0
  let done = 0
  for (let i = 0; ; i++) {
    if (!spent) done = i / trials
    else if (i % 16 === 0) done = spent()
    if (done >= 1 || trials === 0) break
    if (Math.floor(done * ROUNDS) > round) {
      round = Math.floor(done * ROUNDS)
      best.bringBack(state)
    }
    const hot = (near ? NEARBY : HOT) / 2 ** round
    const temperature = hot * (COLD / hot) ** (done * ROUNDS - round)
    if (random() < BASE_SHARE) changeBase(state, moves, temperature, random)
    else for (let k = 0; k < SMALL_CHANGES; k++) changeFloats(state, temperature, random, best)
    best.see(state)
  }
  best.bringBack(state)
  if (trials > 0) settle(problem, state, random)
  const genes = state.asGenes()
  return { genes, draft: layDraft(board, genes) }
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

/** The best day met. */
class Best {
  private kept!: Pick<DayState, 'genes' | 'base' | 'cost'> & { readonly floats: readonly (Place | null)[] }
  constructor(state: DayState) {
    this.keep(state)
  }
  see(state: DayState): void {
    if (state.cost < this.kept.cost - 1e-9) this.keep(state)
  }
  bringBack(state: DayState): void {
    state.reset(this.kept.genes, this.kept.base, this.kept.floats)
  }
  private keep({ genes, base, cost, board }: DayState): void {
    this.kept = { genes, base, cost, floats: [...board.floats] }
  }
}

/** One moment shot after another is staffed anew or dropped while that helps: chance may have left a clash standing. */
function settle(problem: DayProblem, state: DayState, random: () => number): void {
  for (let again = true; again; ) {
    again = false
    for (const [i, job] of problem.moments.entries())
      for (let mode = DROPPED; mode < job.modes.length; mode++) {
        const { genes, base, cost } = state
        if (mode === genes.momentMode[i]) continue
        const floats = [...state.board.floats]
        state.rebase({ ...genes, momentMode: genes.momentMode.with(i, mode) }, random)
        if (state.cost >= cost - 1e-9) state.reset(genes, base, floats)
        else again = true
      }
  }
}

/** Moments staffed at the least loss; the rest by weight, the least free first. */
export function firstGenes(problem: DayProblem): Genes {
  const { floats, moments, cooks } = problem
  const meatOn = bestStarts(problem)
  const minutes = cooks.map((_, c) => problem.meatOn.choices[c]?.[meatOn[c] as number] ?? 0)
  const room = (i: number) => {
    const job = floats[i] as DayProblem['floats'][number]
    const window = job.windows[0]
    return job.span || !window ? 0 : Math.min(...window.hi.map((e) => e.likely), 9999) - job.roll
  }
  return {
    meatOn,
    callLead: problem.call === null ? needBefore(problem) : 0,
    momentMode: assignMoments(moments, problem.clashes, minutes, lockedCosts(problem)),
    order: floats
      .map((_, i) => i)
      .sort((a, b) => (floats[b]?.weight ?? 0) - (floats[a]?.weight ?? 0) || room(a) - room(b)),
    mode: floats.map(() => 0),
    offset: floats.map(() => 0),
    meals: [240, 270, 270],
  }
}

/** A camera that a locked-off shot names is better left to it: what using it costs a moment shot, by job and mode. */
function lockedCosts({ floats, moments }: DayProblem): number[][] {
  const locked = floats.filter((f) => f.span && f.modes.every((m) => m.cameras.join() === f.modes[0]?.cameras.join()))
  return moments.map((job) =>
    job.modes.map((mode) => {
      const taken = locked.filter((f) => mode.cameras.some((c) => f.modes[0]?.cameras.includes(c)))
      return taken.reduce((sum, f) => sum + f.weight * 0.02, 0)
    }),
  )
}

const SCAN_MIN = 5
/** Every cook when it suits it best; further ones where their moments keep most clear of those before. */
function bestStarts(problem: DayProblem): number[] {
  const indices = problem.cooks.map((_, c) => bestStart(problem, c))
  const minutes = problem.meatOn.choices.map((all, c) => all[indices[c] as number] ?? 0)
  for (let c = 1; c < indices.length; c++) {
    const choices = problem.meatOn.choices[c] as readonly number[]
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < choices.length; i += SCAN_MIN) {
      const on = minutes.with(c, choices[i] as number)
      const loss = looseStaffing(problem, on) + i * PRICES.laterMeatOnPerMin
      if (loss < least) [least, indices[c]] = [loss, i]
    }
    minutes[c] = choices[indices[c] as number] as number
  }
  return indices
}
/** What the moments lose, staffed one after another. */
function looseStaffing(problem: DayProblem, on: readonly number[]): number {
  const modes = problem.moments.map(() => DROPPED)
  const { uniform } = chanceOf(1, 0, 0x6c6f)
  for (let round = 0; round < 2; round++) restaffAround(problem, on, modes, -1, uniform)
  return staffingLoss(problem, on, modes)
}

/** Where the wanted light has the highest chance; else the soonest. */
function bestStart({ meatOn }: DayProblem, cook: number): number {
  if (cook > 0 || meatOn.wish.length === 0) return 0
  return meatOn.wish.indexOf(Math.min(...meatOn.wish))
}
/** A first guess at what has to be shot before the meat goes on. */
function needBefore({ floats }: DayProblem): number {
  const raw = floats.filter((f) => f.raw)
  return Math.ceil(raw.reduce((sum, f) => sum + f.setup + f.roll, 0) / 5) * 5
}
