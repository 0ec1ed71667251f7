import { type Board, LID_OPEN } from './board'
import type { Place } from './draft'
import type { FloatJob } from './float-job'

/**
 * How often the lid comes off for shots that float, while the fire works: shots that overlap share one opening, and what
 * overlaps an opening of the cook's own (`fixed`) costs none.
 */
export function lidOpeningsOf(board: Board, fixed: Uint8Array): number {
  let count = 0
  for (let cook = 0; cook < board.problem.cooks.length; cook++) {
    const open = openingsOf(board, cook)
    let [until, shared] = [Number.NEGATIVE_INFINITY, false]
    for (const { start, end } of open) {
      const own = !opensAnyway(board, cook, fixed, start, end)
      if (start >= until) {
        if (own) count++
        shared = !own
      } else if (!own && !shared) {
        count--
        shared = true
      }
      until = Math.max(until, end)
    }
  }
  return count
}

function openingsOf(board: Board, cook: number): Place[] {
  const zero = board.meatOn[cook] as number
  const off = board.problem.cooks[cook]?.sorted('off-heat')
  const out = off ? zero + (off[(off.length - 1) >> 1] as number) : zero
  const open: Place[] = []
  for (const i of board.lidded) {
    const job = board.problem.floats[i] as FloatJob
    const place = board.floats[i]
    if (place && job.cook === cook && job.lid === 'open' && place.end > zero && place.start < out) open.push(place)
  }
  return open.sort((a, b) => a.start - b.start)
}

function opensAnyway(board: Board, cook: number, fixed: Uint8Array, from: number, to: number): boolean {
  const row = cook * board.problem.clock.length
  for (let t = row + from; t < row + to; t++) if (((fixed[t] as number) & LID_OPEN) !== 0) return true
  return false
}
