import { DROPPED } from './assign-moments'
import { type Board, keepAside, markLid, takeBack } from './board'
import { tieOf } from './clash'
import type { Mode } from './crew'
import type { Genes, Place } from './draft'
import { inSightOfFire } from './float-job'
import { ALL_DAY, within } from './hours'
import { handleMin, type MomentJob } from './moment-job'
import { leavesFire } from './place-float'
import { RULES } from './rules'

/** Moment shots stand at their likely times; binds their people, cameras and lids. */
export function placeMoments(board: Board, genes: Genes): (Place | null)[] {
  const { moments: jobs } = board.problem
  let wanted = jobs.map((job, i) => placeOne(board, job, i, modeFor(board, job, i, genes)))
  keepAside(board)
  let stood = standTogether(board, wanted)
  // Who counted on the setup of a shot that fell out sets up for itself, and may now be in another's way.
  while (!asTied(board, wanted, stood)) {
    wanted = wanted.map((place, i) => (stood[i] ? place : null))
    takeBack(board)
    stood = standTogether(board, wanted)
  }
  openLids(board)
  return stood
}
const asTied = (board: Board, wanted: readonly (Place | null)[], stood: readonly (Place | null)[]) =>
  wanted.every((place, i) => !place || stood[i]) ||
  wanted.every((place, i) => !place || !stood[i] || stood[i].setupStart === tied(board, stood, i, place).setupStart)

/** Binds those of `wanted` that can be had together. */
function standTogether(board: Board, wanted: readonly (Place | null)[]): (Place | null)[] {
  const { moments: jobs } = board.problem
  wanted.forEach((place, i) => {
    board.momentMasks[i] = place ? place.mode.rollMask : null
  })
  const places = wanted.map((place, i) => place && tied(board, wanted, i, place))
  const stood: number[] = []
  for (const i of board.byWeight) {
    const place = places[i]
    if (!place) continue
    if (!frozen(board, i) && (cutShort(board, places, stood, i, place) || fireOutranks(board, i, place))) {
      places[i] = null
      board.momentMasks[i] = null
      continue
    }
    stood.push(i)
    bind(board, jobs[i] as MomentJob, place)
  }
  return places
}
/** With its setup as the others leave it; what is past or about to come stands as it was told. */
const tied = (board: Board, places: readonly (Place | null)[], i: number, place: Place) =>
  frozen(board, i) ? place : afterChain(board, places, i, place)

const frozen = ({ problem }: Board, i: number) => (problem.standing?.moments[i]?.frozen ? 1 : 0)

/** On the sheet somebody would be in two of them at once. */
function cutShort(
  { problem }: Board,
  places: readonly (Place | null)[],
  stood: readonly number[],
  i: number,
  place: Place,
) {
  for (const j of stood) {
    const other = places[j]
    if (!other || other.setupStart >= place.end || other.end <= place.setupStart) continue
    if (tieOf(problem.moments[j] as MomentJob, other.mode, problem.moments[i] as MomentJob, place.mode) !== 'apart')
      return true
  }
  return false
}
/** Only for a must does the last one leave a burning fire, and it is told. */
const fireOutranks = (board: Board, i: number, place: Place) =>
  (board.problem.moments[i] as MomentJob).shot.priority !== 'must' && leavesTheFire(board, i, place)
/** Whether a burning fire is left to nobody for what comes at the table. */
export function leavesTheFire(board: Board, i: number, { mode, setupStart, start, end }: Place): boolean {
  if (inSightOfFire((board.problem.moments[i] as MomentJob).shot.place)) return false
  return leavesFire(board, mode, Math.floor(setupStart), Math.floor(start), Math.ceil(end))
}

/** Who stands at it: as the genes have it, or as it was if it is past or about to come. */
function modeFor(board: Board, job: MomentJob, i: number, genes: Genes): Mode | undefined {
  const announced = board.problem.standing?.moments[i]
  if (announced?.frozen) return announced.place?.mode
  const index = genes.momentMode[i] as number
  return index === DROPPED ? undefined : job.modes[index]
}

function placeOne(board: Board, job: MomentJob, i: number, mode: Mode | undefined): Place | null {
  if (!mode) return null
  const zero = board.meatOn[job.cook] as number
  const at = zero + job.likely
  const start = at - job.before - handleMin
  const end = at + job.after + handleMin
  if (end > board.lastEnd || lentElsewhere(board, i, mode, start - job.standbySetup, end)) return null
  const planned = start - job.standbySetup
  const announced = board.problem.standing?.moments[i]
  // They came when they were told to.
  if (announced?.frozen && announced.place)
    return { mode, setupStart: Math.min(start, announced.place.setupStart), start, end, risk: 0 }
  const setupStart = job.rule.by === 'clock' ? Math.min(planned, Math.floor(zero + job.rule.standby)) : planned
  if (!areThere(board, mode, planned, end)) return null
  return {
    mode,
    setupStart: Math.min(planned, Math.max(setupStart, freeFrom(board, mode, setupStart, planned))),
    start,
    end,
    risk: 0,
  }
}

/** In a running day who is in a shot that has begun, or a camera that is locked off until later, cannot be had. */
function lentElsewhere({ problem, booking }: Board, i: number, mode: Mode, start: number, end: number): boolean {
  if (!problem.standing || problem.standing.moments[i]?.frozen) return false
  return booking.lastClash(mode.rollMask, Math.floor(start), Math.ceil(end)) >= 0
}

const areThere = ({ problem }: Board, { operators, hands }: Mode, start: number, end: number) =>
  [...operators, ...hands].every((p) => within(problem.hours[p] ?? ALL_DAY, start, end))

/** By the clock they stand by early; in a running day not before what they are in ends. */
function freeFrom({ problem, booking }: Board, mode: Mode, from: number, planned: number): number {
  if (!problem.standing) return from
  const busy = booking.lastClash(mode.rollMask, Math.floor(from), Math.ceil(planned))
  return busy < 0 ? from : busy + 1
}

/** In a chain only the first shot sets up; the next ones re-frame where they stand. */
function afterChain(board: Board, places: readonly (Place | null)[], i: number, place: Place): Place {
  const jobs = board.problem.moments
  const job = jobs[i] as MomentJob
  let chained = Number.NEGATIVE_INFINITY
  for (const [j, other] of jobs.entries()) {
    const before = places[j]
    if (!before || j === i || before.start > place.start || (before.start === place.start && j > i)) continue
    if (before.end + job.standbySetup <= place.start) continue
    if (tieOf(other, before.mode as Mode, job, place.mode) === 'chain') chained = Math.max(chained, before.end)
  }
  // Their likely times may lie nearer together than the two do in any cook.
  if (Number.isFinite(chained))
    return { ...place, setupStart: Math.min(place.start, Math.max(chained, place.start - RULES.reframeMin)) }
  return { ...place, setupStart: notBefore(board, places, i, place) }
}

/** By the clock a crew may stand by long before; it comes from the moment it shot before that. */
function notBefore(board: Board, places: readonly (Place | null)[], i: number, place: Place): number {
  const job = board.problem.moments[i] as MomentJob
  const planned = place.start - job.standbySetup
  let from = place.setupStart
  places.forEach((other, j) => {
    if (!other || j === i || other.start > place.start || other.end <= from) return
    const tie = tieOf(board.problem.moments[j] as MomentJob, other.mode, job, place.mode)
    if (tie !== 'apart') from = Math.max(from, other.end)
  })
  return Math.min(planned, from)
}

function bind(board: Board, job: MomentJob, place: Place): void {
  const [from, to] = [Math.floor(place.setupStart), Math.ceil(place.end)]
  board.booking.book(place.mode.rollMask, from, to)
  if (!inSightOfFire(job.shot.place)) board.away.book(place.mode.rollMask, from, to)
  markLid(board, job.cook, job.shot.lid ?? 'any', Math.floor(place.start), to)
}

/** The lid is off for these, filmed or not. */
export const OPENINGS = ['meat-on', 'turn', 'probe-in', 'off-heat'] as const
function openLids(board: Board): void {
  const { problem, meatOn } = board
  problem.cooks.forEach((cook, c) => {
    for (const moment of OPENINGS) {
      const times = cook.sorted(moment)
      const at = times ? (meatOn[c] as number) + (times[(times.length - 1) >> 1] as number) : Number.POSITIVE_INFINITY
      if (Number.isFinite(at)) markLid(board, c, 'open', Math.floor(at), Math.ceil(at) + RULES.lidOpenMin)
    }
  })
}
