import { Booking } from './booking'
import type { Mask } from './crew'
import type { Base } from './day-base'
import type { Place } from './draft'
import type { DayProblem } from './problem'

/** The day while it is being filled: who is bound when, whose lid is open, who has left the fire. */
export interface Board {
  readonly problem: DayProblem
  readonly booking: Booking
  readonly away: Booking
  /** Bit 1: somebody wants the lid open; bit 2: shut. A row of minutes for each cook. */
  readonly lids: Uint8Array
  meatOn: readonly number[]
  crewCall: number
  /** The latest a shot may end. */
  lastEnd: number
  readonly momentMasks: (Mask | null)[]
  readonly floats: (Place | null)[]
  lidOpenings: number
  /** The last few moment layers tried. */
  readonly bases: Base[]
}
export const LID_OPEN = 1
export const LID_SHUT = 2

export function newBoard(problem: DayProblem): Board {
  const { clock, crew } = problem
  return {
    problem,
    booking: new Booking(clock.length, crew.words),
    away: new Booking(clock.length, crew.words),
    lids: new Uint8Array(clock.length * Math.max(1, problem.cooks.length)),
    meatOn: [],
    crewCall: 0,
    lastEnd: 0,
    momentMasks: problem.moments.map(() => null),
    floats: problem.floats.map(() => null),
    lidOpenings: 0,
    bases: [],
  }
}

export function markLid(board: Board, cook: number, lid: 'open' | 'shut' | 'any', from: number, to: number): void {
  if (lid === 'any') return
  const row = cook * board.problem.clock.length
  for (let t = Math.max(0, from); t < to; t++)
    board.lids[row + t] = (board.lids[row + t] as number) | (lid === 'open' ? LID_OPEN : LID_SHUT)
}
