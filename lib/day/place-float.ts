import { type Board, LID_OPEN, LID_SHUT, markLid, type OpenWindow } from './board'
import type { Mask, Mode } from './crew'
import { AS_ANNOUNCED, type Genes, type Place } from './draft'
import type { FloatJob } from './float-job'
import { minuteOf, type TaskJob } from './problem'
import { countBelow } from './samples'
import type { Edge, ShotWindow } from './shot-window'

/** Puts a shot at the first place at or after the wanted one where everybody is free, or nowhere. */
export function placeFloat(board: Board, i: number, genes: Genes): Place | null {
  const place = findFloat(board, i, genes.mode[i] as number, genes.offset[i] as number)
  if (place) bindFloat(board, i, place)
  return place
}

/** Where it could stand: `first` is the mode tried first, `offset` how long after its first window opens. */
export function findFloat(board: Board, i: number, first: number, offset: number): Place | null {
  const job = board.problem.floats[i] as FloatJob
  const open = job.span ? [] : openWindows(board, job, i)
  if (!job.span && open.length === 0) return null
  const announced = board.problem.standing?.floats[i]?.place
  if (announced && offset === AS_ANNOUNCED) {
    const kept = placeThere(board, job, announced, open)
    if (kept) return kept
  }
  for (let wanted = Math.max(0, offset); ; wanted = 0) {
    const found = inSomeMode(board, job, open, first, wanted)
    if (found || wanted === 0) return found
  }
}
function inSomeMode(board: Board, job: FloatJob, open: readonly OpenWindow[], first: number, offset: number) {
  const count = job.modes.length
  // Where those it needs in any case are not free, nobody else need be asked.
  if (!job.span && count > 1 && !fitsSomewhere(board, job, open, offset)) return null
  for (let k = 0; k < count; k++) {
    const mode = job.modes[(first + k) % count] as Mode
    if (mode.crossed && k > 0) continue
    const place = job.span ? placeSpan(board, job, mode) : placeInWindows(board, job, mode, open, offset)
    if (place) return place
  }
  return null
}
function fitsSomewhere(board: Board, job: FloatJob, open: readonly OpenWindow[], offset: number): boolean {
  const { always, setup, roll } = job
  const wanted = (open[0] as OpenWindow).lo + offset
  for (const { lo, hi } of open) {
    const latest = hi - roll - setup
    for (let at = Math.max(lo, wanted) - setup; at <= latest; ) {
      const next = board.booking.nextStart(always, at, setup, roll)
      if (next === at) return true
      at = next
    }
  }
  return false
}

/** Exactly there, with these people, or not at all. */
export function fitsAt(board: Board, i: number, mode: Mode, setupStart: number): Place | null {
  const job = board.problem.floats[i] as FloatJob
  if (job.span) return placeSpan(board, job, mode)
  const [start, end] = [setupStart + job.setup, setupStart + job.setup + job.roll]
  for (const { lo, hi, window } of openWindows(board, job, i))
    if (start >= lo && end <= hi && nextFree(board, job, mode, setupStart, job.roll) === setupStart)
      return placeAt(board, job, mode, setupStart, job.roll, window)
  return null
}

/** Exactly where it was announced, with the same people, if all allows it still. */
function placeThere(board: Board, job: FloatJob, announced: Place, open: readonly OpenWindow[]): Place | null {
  const { mode, setupStart, start, end } = announced
  if (job.span) return placeSpan(board, job, mode)
  const within = open.find(({ lo, hi }) => start >= lo && end <= hi)
  if (!within || nextFree(board, job, mode, setupStart, end - start) !== setupStart) return null
  return placeAt(board, job, mode, setupStart, end - start, within.window)
}

/** What comes before has ended, and what comes after has not begun. */
export function openWindows(board: Board, job: FloatJob, i: number): readonly OpenWindow[] {
  const all = board.windows[i] as readonly OpenWindow[]
  let [after, before] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const j of job.after) after = Math.max(after, board.floats[j]?.end ?? after)
  for (const j of board.followers[i] as readonly number[]) before = Math.min(before, board.floats[j]?.start ?? before)
  if (after === Number.NEGATIVE_INFINITY && before === Number.POSITIVE_INFINITY) return all
  const open: OpenWindow[] = []
  for (const { lo, hi, window } of all) {
    const [from, to] = [Math.max(lo, Math.ceil(after - 1e-6)), Math.min(hi, Math.floor(before + 1e-6))]
    if (to - from >= job.roll) open.push({ lo: from, hi: to, window })
  }
  return open
}

/** Likely bounds of every float's roll, whatever else stands. */
export function windowsOf(board: Board): OpenWindow[][] {
  return board.problem.floats.map((job) =>
    job.windows.map((window) => openWindow(board, job, window)).filter(({ lo, hi }) => hi - lo >= job.roll),
  )
}
function openWindow(board: Board, job: FloatJob, window: ShotWindow): OpenWindow {
  let lo = Math.max(board.crewCall, board.problem.standing?.earliest ?? 0) + job.setup
  let hi = board.lastEnd
  for (const edge of window.lo) lo = Math.max(lo, minuteOf(edge, board.meatOn))
  for (const edge of window.hi) hi = Math.min(hi, minuteOf(edge, board.meatOn))
  return { lo: Math.ceil(lo - 1e-6), hi: Math.floor(hi + 1e-6), window }
}

/** The wish counts from the first window's opening, whichever window it falls into. */
function placeInWindows(board: Board, job: FloatJob, mode: Mode, open: readonly OpenWindow[], offset: number) {
  const wanted = (open[0] as OpenWindow).lo + offset
  for (const { lo, hi, window } of open) {
    const place = firstFit(board, job, mode, Math.max(lo, wanted), hi, window)
    if (place) return place
  }
  return null
}

function firstFit(board: Board, job: FloatJob, mode: Mode, lo: number, hi: number, window: ShotWindow): Place | null {
  let setupStart = lo - job.setup
  const latest = hi - job.roll - job.setup
  while (setupStart <= latest) {
    const next = nextFree(board, job, mode, setupStart, job.roll)
    if (next === setupStart) return placeAt(board, job, mode, setupStart, job.roll, window)
    setupStart = next
  }
  return null
}

/** From one edge to the other, as the day is now; null where that cannot be. */
export function spanTimes(board: Board, job: FloatJob): { setupStart: number; roll: number } | null {
  if (!job.span) return null
  const [from, to] = [minuteOf(job.span[0], board.meatOn), minuteOf(job.span[1], board.meatOn)]
  if (!Number.isFinite(from) || !Number.isFinite(to)) return null
  const start = Math.floor(from)
  const roll = Math.ceil(to) - start
  const setupStart = start - job.setup
  const earliest = Math.max(board.crewCall, board.problem.standing?.earliest ?? 0)
  return roll <= 0 || setupStart < earliest || start + roll > board.lastEnd ? null : { setupStart, roll }
}
function placeSpan(board: Board, job: FloatJob, mode: Mode): Place | null {
  const times = spanTimes(board, job)
  if (!times || nextFree(board, job, mode, times.setupStart, times.roll) !== times.setupStart) return null
  return placeAt(board, job, mode, times.setupStart, times.roll, { lo: [], hi: [] })
}

/** The same minute if everything allows it, else the next worth trying. */
function nextFree(board: Board, job: FloatJob, mode: Mode, setupStart: number, roll: number): number {
  const free = board.booking.nextStart(mode, setupStart, job.setup, roll)
  if (free !== setupStart) return free
  const start = setupStart + job.setup
  const lid = lastLidClash(board, job, start, start + roll)
  if (lid >= 0) return lid + 1 - job.setup
  if (job.away && leavesFire(board, mode, setupStart, start, start + roll)) return setupStart + 1
  return job.shot.priority === 'must' ? mustWait(board, job, mode, setupStart, start + roll) : setupStart
}

function lastLidClash(board: Board, job: FloatJob, from: number, to: number): number {
  if (job.lid === 'any') return -1
  const against = job.lid === 'open' ? LID_SHUT : LID_OPEN
  const row = job.cook * board.problem.clock.length
  for (let t = to - 1; t >= from; t--) if (((board.lids[row + t] as number) & against) !== 0) return t
  return -1
}

/** Whether nobody who can watch would be left in sight of the fire. Whole minutes. */
export function leavesFire(board: Board, mode: Mode, setupStart: number, start: number, end: number): boolean {
  for (const task of board.problem.tasks)
    if (task.watch && emptiesWatch(board, task, mode, [setupStart, start, end])) return true
  return false
}
function emptiesWatch(board: Board, task: TaskJob, mode: Mode, times: readonly [number, number, number]): boolean {
  const lit = Math.floor(minuteOf(task.from, board.meatOn))
  const out = Math.ceil(minuteOf(task.to, board.meatOn))
  const [setupStart, start, end] = times
  for (const mask of task.masks)
    if (
      board.away.exhausts(mask, mode.setupMask, Math.max(setupStart, lit), Math.min(start, out)) ||
      board.away.exhausts(mask, mode.rollMask, Math.max(start, lit), Math.min(end, out))
    )
      return true
  return false
}

/** A must cannot be cut short: it keeps out of every window in which its people may be called, and says from when. */
export function mustWait(board: Board, job: FloatJob, mode: Mode, from: number, to: number): number {
  const { moments, tentative } = board.problem
  let start = from
  for (let k = 0; k < moments.length; k++) {
    const mask = board.momentMasks[k]
    if (!mask || job.apart[k] || !meets(mode.setupMask, mask)) continue
    const zero = board.meatOn[(moments[k] as (typeof moments)[number]).cook] as number
    const span = tentative[k] as { from: number; to: number }
    if (from < zero + span.to && to > zero + span.from) start = Math.max(start, Math.ceil(zero + span.to))
  }
  return start
}
function meets(a: Mask, b: Mask): boolean {
  for (let w = 0; w < a.length; w++) if (((a[w] as number) & (b[w] as number)) !== 0) return true
  return false
}

function placeAt(board: Board, job: FloatJob, mode: Mode, setupStart: number, roll: number, window: ShotWindow): Place {
  const start = setupStart + job.setup
  const end = start + roll
  const { problem, meatOn, momentMasks } = board
  const calls = problem.risk.of(mode.rollMask, momentMasks, job.anchor, setupStart, end, meatOn)
  return { mode, setupStart, start, end, risk: calls + outside(board, window, start, end) }
}

/** Expected number of bounds that lie on the wrong side, over the members. */
function outside(board: Board, { lo, hi }: ShotWindow, start: number, end: number): number {
  let risk = 0
  for (const e of lo) risk += 1 - countBelow(e.sample, start - zeroOf(board, e) + 1e-6) / e.sample.length
  for (const e of hi) risk += countBelow(e.sample, end - zeroOf(board, e) - 1e-6) / e.sample.length
  return risk
}
const zeroOf = (board: Board, edge: Edge) => (edge.base < 0 ? 0 : (board.meatOn[edge.base] as number))

export function bindFloat(board: Board, i: number, place: Place): void {
  const job = board.problem.floats[i] as FloatJob
  board.floats[i] = place
  board.booking.book(place.mode.setupMask, place.setupStart, place.start)
  board.booking.book(place.mode.rollMask, place.start, place.end)
  if (job.away) {
    board.away.book(place.mode.setupMask, place.setupStart, place.start)
    board.away.book(place.mode.rollMask, place.start, place.end)
  }
  markLid(board, job.cook, job.lid, place.start, place.end)
}

/** Takes it off the board again; `fixed` is how the lids are without any float. */
export function freeFloat(board: Board, i: number, fixed: Uint8Array): void {
  const job = board.problem.floats[i] as FloatJob
  const place = board.floats[i]
  if (!place) return
  board.floats[i] = null
  board.booking.release(place.mode.setupMask, place.setupStart, place.start)
  board.booking.release(place.mode.rollMask, place.start, place.end)
  if (job.away) {
    board.away.release(place.mode.setupMask, place.setupStart, place.start)
    board.away.release(place.mode.rollMask, place.start, place.end)
  }
  if (job.lid === 'any') return
  const row = job.cook * board.problem.clock.length
  for (let t = row + place.start; t < row + place.end; t++) board.lids[t] = fixed[t] as number
  // Others may have had it off, or on, in the same minutes.
  for (const j of board.lidded) {
    const other = board.floats[j]
    const theirs = board.problem.floats[j] as FloatJob
    if (other && theirs.cook === job.cook) markLid(board, theirs.cook, theirs.lid, other.start, other.end)
  }
}
