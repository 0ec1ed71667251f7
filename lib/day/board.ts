import { Booking } from './booking'
import type { Mask } from './crew'
import type { Base } from './day-base'
import type { Place } from './draft'
import type { DayProblem } from './problem'
import type { ShotWindow } from './shot-window'

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
  /** By float: where its windows lie, with nothing else on the board. */
  windows: readonly (readonly OpenWindow[])[]
  /** By float: those that must come after it. */
  readonly followers: readonly (readonly number[])[]
  /** Floats that want the lid open or shut. */
  readonly lidded: readonly number[]
  /** Moment shots that stand already, then the heavier ones: in this order they have their place. */
  readonly byWeight: readonly number[]
  readonly aside: Aside
  /** The last few moment layers tried. */
  readonly bases: Base[]
}
type Aside = Pick<Board, 'booking' | 'away' | 'lids'>
/** Minutes of the day between which it may roll. */
export type OpenWindow = { readonly lo: number; readonly hi: number; readonly window: ShotWindow }
export const LID_OPEN = 1
export const LID_SHUT = 2

export function newBoard(problem: DayProblem): Board {
  const { floats } = problem
  return {
    problem,
    ...grids(problem),
    meatOn: [],
    crewCall: 0,
    lastEnd: 0,
    momentMasks: problem.moments.map(() => null),
    floats: floats.map(() => null),
    windows: [],
    followers: floats.map((_, i) => floats.flatMap((job, j) => (j !== i && job.after.includes(i) ? [j] : []))),
    lidded: floats.flatMap((job, i) => (job.lid === 'any' ? [] : [i])),
    byWeight: byWeight(problem),
    aside: grids(problem),
    bases: [],
  }
}
const grids = ({ clock, crew, cooks }: DayProblem): Aside => ({
  booking: new Booking(clock.length, crew.words),
  away: new Booking(clock.length, crew.words),
  lids: new Uint8Array(clock.length * Math.max(1, cooks.length)),
})
function byWeight({ moments, standing }: DayProblem): number[] {
  const frozen = (i: number) => (standing?.moments[i]?.frozen ? 1 : 0)
  const weight = (i: number) => moments[i]?.weight ?? 0
  return moments.map((_, i) => i).sort((a, b) => frozen(b) - frozen(a) || weight(b) - weight(a) || a - b)
}

/** Who is bound as it stands, to be taken back. */
export function keepAside({ booking, away, lids, aside }: Board): void {
  aside.booking.restore(booking)
  aside.away.restore(away)
  aside.lids.set(lids)
}
export function takeBack({ booking, away, lids, aside }: Board): void {
  booking.restore(aside.booking)
  away.restore(aside.away)
  lids.set(aside.lids)
}

export function markLid(board: Board, cook: number, lid: 'open' | 'shut' | 'any', from: number, to: number): void {
  if (lid === 'any') return
  const row = cook * board.problem.clock.length
  for (let t = Math.max(0, from); t < to; t++)
    board.lids[row + t] = (board.lids[row + t] as number) | (lid === 'open' ? LID_OPEN : LID_SHUT)
}
