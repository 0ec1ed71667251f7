import { anyMode, type Mode } from './crew'
import type { DayState } from './day-state'
import { AS_ANNOUNCED, type Place } from './draft'
import { findFloat, fitsAt, mustWait, openWindows, spanTimes } from './place-float'

/** Changes a few shots of a day; false where there was nothing to change. */
export type FloatMove = (state: DayState, random: () => number) => boolean
const pick = (random: () => number, count: number) => Math.floor(random() * count)

/** Most of them small. */
export const FLOAT_MOVES: readonly FloatMove[] = [
  relocate,
  relocate,
  relocate,
  rescue,
  rescue,
  rescue,
  swap,
  band,
  band,
]

/** One shot elsewhere, or with others; the cheapest of a few places. */
function relocate(state: DayState, random: () => number): boolean {
  const i = state.movable[pick(random, state.movable.length)]
  if (i === undefined) return false
  const was = state.place(i)
  const offset = state.offsetOf(i)
  if (was) state.take(i)
  const place = settle(state, i, was, offset, random)
  if (place) state.put(i, place)
  if (was && random() < 0.4) fill(state, random)
  return was !== null || place !== null
}

/** A place for a shot: near where it was, as soon as it can, or anywhere. */
function settle(state: DayState, i: number, was: Place | null, offset: number, random: () => number): Place | null {
  const { modes, roll } = state.job(i)
  const kind = random()
  const same = was ? Math.max(0, modes.indexOf(was.mode)) : 0
  const mode = was && random() < 0.4 ? same : anyMode(modes, random)
  if (state.board.problem.standing?.floats[i]?.place && random() < 0.3)
    return findFloat(state.board, i, mode, AS_ANNOUNCED)
  if (was && kind < 0.45)
    return findFloat(state.board, i, mode, Math.max(0, offset + pick(random, 6 * roll) - 3 * roll))
  if (kind < 0.6) return findFloat(state.board, i, mode, 0)
  return findFloat(state.board, i, mode, anyOffset(state, i, random))
}
function anyOffset(state: DayState, i: number, random: () => number): number {
  const open = openWindows(state.board, state.job(i), i)
  const [first, last] = [open[0], open.at(-1)]
  return first && last ? pick(random, Math.max(1, last.hi - first.lo - state.job(i).roll + 1)) : 0
}

/** A shot that found no place is tried once more. */
function fill(state: DayState, random: () => number): void {
  const lost = lostOf(state)
  const i = lost[pick(random, lost.length)]
  if (i === undefined) return
  const place = findFloat(state.board, i, anyMode(state.job(i).modes, random), 0)
  if (place) state.put(i, place)
}
const lostOf = (state: DayState): number[] => {
  const lost: number[] = []
  for (const i of state.movable) if (!state.place(i)) lost.push(i)
  return lost
}

/** Mostly the heavier of two. */
export function oneLost(state: DayState, random: () => number): number | undefined {
  const lost = lostOf(state)
  const [i, j] = [lost[pick(random, lost.length)], lost[pick(random, lost.length)]]
  if (i === undefined || j === undefined) return i
  return state.job(j).weight > state.job(i).weight ? j : i
}

/** A shot that found no place takes one from others, and they look for another. */
function rescue(state: DayState, random: () => number): boolean {
  const i = oneLost(state, random)
  if (i === undefined) return band(state, random)
  const { modes } = state.job(i)
  const mode = modes[anyMode(modes, random)] as Mode
  const at = whereMomentsLeave(state, i, mode, random)
  return at !== null && force(state, i, mode, at, random)
}

/** It stands there, whoever stood there goes. */
export function force(state: DayState, i: number, mode: Mode, setupStart: number, random: () => number): boolean {
  const { setup, roll, lid, cook, span } = state.job(i)
  const length = span ? (spanTimes(state.board, state.job(i))?.roll ?? roll) : roll
  const start = setupStart + setup
  const wanted: Place = { mode, setupStart, start, end: start + length, risk: 0 }
  const gone: Gone[] = []
  for (const j of state.movable) {
    const place = state.place(j)
    if (!place || j === i) continue
    const other = state.job(j)
    const lids = lid !== 'any' && other.lid !== 'any' && other.lid !== lid && other.cook === cook
    const meet = place.setupStart < wanted.end && place.end > wanted.setupStart
    if (meet && (collide(place, wanted) || (lids && place.start < wanted.end && place.end > wanted.start)))
      gone.push(goneFrom(state, j, place))
  }
  const place = fitsAt(state.board, i, mode, setupStart)
  if (!place) return gone.length > 0
  state.put(i, place)
  comeBack(state, gone, random)
  return true
}
const overlap = (fromA: number, toA: number, fromB: number, toB: number) => fromA < toB && fromB < toA
function collide(a: Place, b: Place): boolean {
  return (
    (overlap(a.setupStart, a.start, b.setupStart, b.start) && meet(a.mode.setupMask, b.mode.setupMask)) ||
    (overlap(a.setupStart, a.start, b.start, b.end) && meet(a.mode.setupMask, b.mode.rollMask)) ||
    (overlap(a.start, a.end, b.setupStart, b.start) && meet(a.mode.rollMask, b.mode.setupMask)) ||
    (overlap(a.start, a.end, b.start, b.end) && meet(a.mode.rollMask, b.mode.rollMask))
  )
}
export function meet(a: readonly number[], b: readonly number[]): boolean {
  for (let w = 0; w < a.length; w++) if (((a[w] as number) & (b[w] as number)) !== 0) return true
  return false
}

/** Somewhere in its windows where moments, tasks and meals leave its people free; null where they nowhere do. */
function whereMomentsLeave(state: DayState, i: number, mode: Mode, random: () => number): number | null {
  const job = state.job(i)
  const { booked } = state.base
  const span = job.span && spanTimes(state.board, job)
  if (job.span)
    return span && booked.nextStart(mode, span.setupStart, job.setup, span.roll) === span.setupStart
      ? span.setupStart
      : null
  const open = openWindows(state.board, job, i)
  const window = open[pick(random, open.length)]
  if (!window) return null
  const [first, last] = [window.lo - job.setup, window.hi - job.roll - job.setup]
  let at = first + pick(random, last - first + 1)
  for (let wrapped = false; ; ) {
    let next = booked.nextStart(mode, at, job.setup, job.roll)
    if (next === at && job.shot.priority === 'must')
      next = mustWait(state.board, job, mode, at, at + job.setup + job.roll)
    if (next === at) return at
    if (next <= last) at = next
    else if (wrapped) return null
    else [at, wrapped] = [first, true]
  }
}

type Gone = { readonly i: number; readonly place: Place; readonly offset: number }
function goneFrom(state: DayState, i: number, place: Place): Gone {
  const offset = state.offsetOf(i)
  state.take(i)
  return { i, place, offset }
}
/** Those that were taken off choose again: the heavier sooner, mostly. */
function comeBack(state: DayState, gone: Gone[], random: () => number): void {
  const rank = gone.map(({ i }) => ({ i, by: random() * (1 + state.job(i).weight / 50) }))
  const by = (i: number) => rank.find((r) => r.i === i)?.by ?? 0
  gone.sort((a, b) => by(b.i) - by(a.i))
  for (const { i, place, offset } of gone) {
    const found = settle(state, i, place, offset, random)
    if (found) state.put(i, found)
  }
  if (random() < 0.3) fill(state, random)
}

/** All that stands in a stretch of the day chooses anew. */
function band(state: DayState, random: () => number): boolean {
  const centre = state.place(state.movable[pick(random, state.movable.length)] ?? -1)
  if (!centre) return false
  const half = 5 + pick(random, 40)
  const gone: Gone[] = []
  for (const i of state.movable) {
    const place = state.place(i)
    if (place && place.setupStart < centre.end + half && place.end > centre.setupStart - half && random() < 0.7)
      gone.push(goneFrom(state, i, place))
    if (gone.length >= 6) break
  }
  comeBack(state, gone, random)
  return gone.length > 0
}

/** Two shots change places. */
function swap(state: DayState, random: () => number): boolean {
  const [i, j] = [state.movable[pick(random, state.movable.length)], state.movable[pick(random, state.movable.length)]]
  if (i === undefined || j === undefined || i === j) return false
  const [a, b] = [state.place(i), state.place(j)]
  if (!a || !b || state.job(i).span || state.job(j).span) return false
  state.take(i)
  state.take(j)
  for (const [k, start] of [
    [i, b.start],
    [j, a.start],
  ] as const) {
    const open = openWindows(state.board, state.job(k), k)[0]
    const { modes } = state.job(k)
    const own = modes.indexOf((k === i ? a : b).mode)
    const mode = random() < 0.5 && own >= 0 ? own : anyMode(modes, random)
    const place = open && findFloat(state.board, k, mode, Math.max(0, start - open.lo))
    if (place) state.put(k, place)
  }
  return true
}
