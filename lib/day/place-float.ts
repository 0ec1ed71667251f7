import { type Board, LID_OPEN, LID_SHUT, markLid } from './board'
import type { Mask, Mode } from './crew'
import { AS_ANNOUNCED, type Genes, type Place } from './draft'
import type { FloatJob } from './float-job'
import { minuteOf } from './problem'
import { countBelow } from './samples'
import type { Edge, ShotWindow } from './shot-window'

/** Puts a shot at the first place at or after the wanted one where everybody is free, or nowhere. */
export function placeFloat(board: Board, job: FloatJob, i: number, genes: Genes): Place | null {
  const open = job.span ? [] : openWindows(board, job)
  if (!job.span && open.length === 0) return null
  const announced = board.problem.standing?.floats[i]?.place
  if (announced && genes.offset[i] === AS_ANNOUNCED) {
    const kept = placeThere(board, job, announced, open)
    if (kept) return bound(board, job, kept)
  }
  const offset = Math.max(0, genes.offset[i] as number)
  const count = job.modes.length
  for (let tries = offset > 0 ? 2 : 1; tries > 0; tries--) {
    const wanted = tries === 2 ? offset : 0
    // Where those it needs in any case are not free, nobody else need be asked.
    if (!job.span && count > 1 && !fitsSomewhere(board, job, open, wanted)) continue
    for (let k = 0; k < count; k++) {
      const mode = job.modes[((genes.mode[i] as number) + k) % count] as Mode
      const place = job.span ? placeSpan(board, job, mode, job.span) : placeInWindows(board, job, mode, open, wanted)
      if (place) return bound(board, job, place)
    }
  }
  return null
}
function fitsSomewhere(board: Board, job: FloatJob, open: readonly OpenWindow[], offset: number): boolean {
  const { always, setup, roll } = job
  for (const { lo, hi } of open) {
    const latest = hi - roll - setup
    for (let at = lo + offset - setup; at <= latest; ) {
      const next = board.booking.nextStart(always, at, setup, roll)
      if (next === at) return true
      at = next
    }
  }
  return false
}
function bound(board: Board, job: FloatJob, place: Place): Place {
  bindFloat(board, job, place)
  return place
}

/** Exactly where it was announced, with the same people, if all allows it still. */
function placeThere(board: Board, job: FloatJob, announced: Place, open: readonly OpenWindow[]): Place | null {
  const { mode, setupStart, start, end } = announced
  if (job.span) return placeSpan(board, job, mode, job.span)
  const within = open.find(({ lo, hi }) => start >= lo && end <= hi)
  if (!within || nextFree(board, job, mode, setupStart, end - start) !== setupStart) return null
  return placeAt(board, job, mode, setupStart, end - start, within.window)
}

function openWindows(board: Board, job: FloatJob): OpenWindow[] {
  const open: OpenWindow[] = []
  for (const window of job.windows) {
    const found = openWindow(board, job, window)
    if (found.hi - found.lo >= job.roll) open.push(found)
  }
  return open
}

type OpenWindow = { readonly lo: number; readonly hi: number; readonly window: ShotWindow }
function placeInWindows(
  board: Board,
  job: FloatJob,
  mode: Mode,
  open: readonly OpenWindow[],
  offset: number,
): Place | null {
  for (const { lo, hi, window } of open) {
    const place = firstFit(board, job, mode, lo + offset, hi, window)
    if (place) return place
  }
  return null
}

/** Likely bounds of the roll; what comes before has ended. */
function openWindow(board: Board, job: FloatJob, window: ShotWindow): OpenWindow {
  let lo = Math.max(board.crewCall, board.problem.standing?.earliest ?? 0) + job.setup
  let hi = board.lastEnd
  for (const edge of window.lo) lo = Math.max(lo, minuteOf(edge, board.meatOn))
  for (const edge of window.hi) hi = Math.min(hi, minuteOf(edge, board.meatOn))
  for (const i of job.after) lo = Math.max(lo, board.floats[i]?.end ?? lo)
  return { lo: Math.ceil(lo - 1e-6), hi: Math.floor(hi + 1e-6), window }
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

function placeSpan(board: Board, job: FloatJob, mode: Mode, span: readonly [Edge, Edge]): Place | null {
  const [from, to] = span.map((e) => minuteOf(e, board.meatOn)) as [number, number]
  if (!Number.isFinite(from) || !Number.isFinite(to)) return null
  const start = Math.floor(from)
  const roll = Math.ceil(to) - start
  const setupStart = start - job.setup
  const earliest = Math.max(board.crewCall, board.problem.standing?.earliest ?? 0)
  if (roll <= 0 || setupStart < earliest || start + roll > board.lastEnd) return null
  if (nextFree(board, job, mode, setupStart, roll) !== setupStart) return null
  return placeAt(board, job, mode, setupStart, roll, { lo: [], hi: [] })
}

/** The same minute if everything allows it, else the next worth trying. */
function nextFree(board: Board, job: FloatJob, mode: Mode, setupStart: number, roll: number): number {
  const free = board.booking.nextStart(mode, setupStart, job.setup, roll)
  if (free !== setupStart) return free
  const [start, end] = [setupStart + job.setup, setupStart + job.setup + roll]
  const lid = lastLidClash(board, job, start, end)
  if (lid >= 0) return lid + 1 - job.setup
  if (job.away && leavesFire(board, mode, setupStart, start, end)) return setupStart + 1
  const held = job.shot.priority === 'must' ? mustWait(board, job, mode, setupStart, end) : setupStart
  return held
}

function lastLidClash(board: Board, job: FloatJob, from: number, to: number): number {
  if (job.lid === 'any') return -1
  const against = job.lid === 'open' ? LID_SHUT : LID_OPEN
  const row = job.cook * board.problem.clock.length
  for (let t = to - 1; t >= from; t--) if (((board.lids[row + t] as number) & against) !== 0) return t
  return -1
}

/** Whether nobody who can watch would be left in sight of the fire. */
function leavesFire(board: Board, mode: Mode, setupStart: number, start: number, end: number): boolean {
  return board.problem.tasks.some((task) => {
    if (!task.watch) return false
    const [lit, out] = [Math.floor(minuteOf(task.from, board.meatOn)), Math.ceil(minuteOf(task.to, board.meatOn))]
    const nobody = (mask: Mask, leaving: Mask, from: number, to: number) =>
      board.away.exhausts(mask, leaving, Math.max(from, lit), Math.min(to, out))
    return task.masks.some(
      (mask) => nobody(mask, mode.setupMask, setupStart, start) || nobody(mask, mode.rollMask, start, end),
    )
  })
}

/** A must cannot be cut short: it keeps out of every window in which its people may be called, and says from when. */
function mustWait(board: Board, job: FloatJob, mode: Mode, from: number, to: number): number {
  const { moments, tentative } = board.problem
  let start = from
  moments.forEach((moment, k) => {
    const mask = board.momentMasks[k]
    if (!mask || !mode.setupMask.some((word, w) => (word & (mask[w] as number)) !== 0)) return
    if (job.apart[k]) return
    const zero = board.meatOn[moment.cook] as number
    const span = tentative[k] as { from: number; to: number }
    if (from < zero + span.to && to > zero + span.from) start = Math.max(start, Math.ceil(zero + span.to))
  })
  return start
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
  const zero = (edge: Edge) => (edge.base < 0 ? 0 : (board.meatOn[edge.base] as number))
  const early = lo.reduce((sum, e) => sum + 1 - countBelow(e.sample, start - zero(e) + 1e-6) / e.sample.length, 0)
  return early + hi.reduce((sum, e) => sum + countBelow(e.sample, end - zero(e) - 1e-6) / e.sample.length, 0)
}

export function bindFloat(board: Board, job: FloatJob, place: Place): void {
  board.booking.book(place.mode.setupMask, place.setupStart, place.start)
  board.booking.book(place.mode.rollMask, place.start, place.end)
  if (job.away) {
    board.away.book(place.mode.setupMask, place.setupStart, place.start)
    board.away.book(place.mode.rollMask, place.start, place.end)
  }
  if (opensLid(board, job, place)) board.lidOpenings++
  markLid(board, job.cook, job.lid, place.start, place.end)
}

/** An opening of its own, while the fire works: nobody else has the lid off in that time. */
function opensLid(board: Board, job: FloatJob, { start, end }: Place): boolean {
  const cook = board.problem.cooks[job.cook]
  const zero = board.meatOn[job.cook] as number
  const off = cook?.sorted('off-heat')
  const out = off ? zero + (off[(off.length - 1) >> 1] as number) : zero
  if (job.lid !== 'open' || end <= zero || start >= out) return false
  const row = job.cook * board.problem.clock.length
  for (let t = start; t < end; t++) if (((board.lids[row + t] as number) & LID_OPEN) !== 0) return false
  return true
}
