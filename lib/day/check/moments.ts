import { MOMENT_IDS, type MomentId } from '../../model/moment-ids'
import { type Booked, type Facts, leadMs, overlap, peopleSpan, placeOf } from './facts'
import { LIMITS } from './limits'
import { behindCamera } from './needs'
import { type Violation, violation } from './violation'

/** Every shot at a moment stands around it, and neither another moment nor a shot that must not be cut stands in its way. */
export function checkMoments(facts: Facts): Violation[] {
  const atMoments = facts.booked.filter((b) => b.shot.at)
  return [
    ...atMoments.flatMap((b) => [...checkCover(facts, b), ...checkHold(facts, b), ...checkWindow(facts, b)]),
    ...atMoments.flatMap((a, i) => atMoments.slice(i + 1).flatMap((b) => checkPair(facts, a, b))),
  ]
}

const likelyOf = (facts: Facts, b: Booked) =>
  b.shot.at ? (facts.moment(b.cook, b.shot.at.moment)?.likely ?? null) : null
const reach = (b: Booked) => ({ before: (b.shot.at?.before ?? 0) * 1000, after: (b.shot.at?.after ?? 0) * 1000 })

function checkCover(facts: Facts, b: Booked): Violation[] {
  const likely = likelyOf(facts, b)
  const { before, after } = reach(b)
  if (likely === null || !(b.start > likely - before + LIMITS.graceMs || b.end < likely + after - LIMITS.graceMs))
    return []
  return [
    violation(
      'moment-uncovered',
      `${facts.titleOf(b.id)} rolls ${facts.clock.show(b.start)} to ${facts.clock.show(b.end)} and misses ${b.shot.at?.moment}, likely at ${facts.clock.show(likely)}.`,
      [b.id],
    ),
  ]
}

function checkHold({ titleOf }: Facts, b: Booked): Violation[] {
  if (b.placed.hold === 'hard') return []
  return [violation('hold-wrong', `${titleOf(b.id)} stands at a moment and must be held hard.`, [b.id])]
}

/**
 * While a moment may come, its people and cameras may only be in shots that can be cut short. A shot that by its own
 * asking comes after the moment, or ends before it, moves with it and is not cut.
 */
function checkWindow(facts: Facts, b: Booked): Violation[] {
  const moment = b.shot.at?.moment
  const times = moment ? facts.moment(b.cook, moment) : null
  if (!moment || !times || times.early === null) return []
  const window = { start: times.early - leadMs(b), end: (times.late ?? times.likely ?? times.early) + reach(b).after }
  return facts.booked
    .filter((o) => !o.shot.at && o.shot.priority === 'must' && overlap(window, peopleSpan(o)))
    .filter((o) => !(o.cook === b.cook && movesWith(o, b.id, moment)))
    .flatMap((o) => {
      const people = o.people.filter((p) => b.people.includes(p))
      if (people.length === 0 && !o.cameras.some((c) => b.cameras.includes(c))) return []
      const [from, to] = [facts.clock.show(window.start), facts.clock.show(window.end)]
      return [
        violation(
          'must-in-tentative-window',
          `${facts.titleOf(o.id)} is a must, and ${facts.titleOf(b.id)} may call its people away from ${from} to ${to}.`,
          [o.id, b.id],
          people,
        ),
      ]
    })
}

const BEGINS = {
  raw: null,
  seasoned: null,
  cooking: 'meat-on',
  hot: 'off-heat',
  rested: 'off-heat',
  sliced: 'first-slice',
} as const
const ENDS = {
  raw: 'meat-on',
  seasoned: 'meat-on',
  cooking: 'off-heat',
  hot: null,
  rested: 'first-slice',
  sliced: null,
} as const

function movesWith(o: Booked, momentShot: string, moment: MomentId): boolean {
  if (o.shot.after?.includes(momentShot)) return true
  const order = (id: string | null | undefined) => (MOMENT_IDS as readonly (string | null | undefined)[]).indexOf(id)
  const [begin, end] = o.shot.between ?? []
  const begins = Math.max(order(begin), order(o.shot.state ? BEGINS[o.shot.state] : null))
  const ends = [order(end), order(o.shot.state ? ENDS[o.shot.state] : null)].filter((i) => i >= 0)
  return order(moment) <= begins || ends.some((i) => i <= order(moment))
}

/** Member by member: whether the later of two is still held by the earlier. Told in a conflict, it is no violation. */
function checkPair(facts: Facts, a: Booked, b: Booked): Violation[] {
  const shared = sharedHands(facts, a, b)
  if (!shared || facts.layout.conflicts.some((c) => c.shots.includes(a.id) && c.shots.includes(b.id))) return []
  const [ta, tb] = [instantsOf(facts, a), instantsOf(facts, b)]
  const members = Math.min(ta.length, tb.length)
  let clashes = 0
  for (let m = 0; m < members; m++) if (meet(a, ta[m] as number, b, tb[m] as number)) clashes++
  if (clashes <= members * LIMITS.missShare) return []
  const share = Math.round((100 * clashes) / members)
  return [
    violation(
      'moments-clash',
      `${facts.titleOf(a.id)} and ${facts.titleOf(b.id)} want the same people or camera, and meet in ${share} % of cooks.`,
      [a.id, b.id],
      a.people.filter((p) => b.people.includes(p)),
    ),
  ]
}

/** A camera, its operator, or anybody who would have to be at two places. */
function sharedHands(facts: Facts, a: Booked, b: Booked): boolean {
  const sameStand = a.cook === b.cook && placeOf(a) === placeOf(b)
  const people = a.people.filter((p) => b.people.includes(p))
  const held = people.filter((p) => !sameStand || behindCamera(facts, a, p) || behindCamera(facts, b, p))
  return held.length > 0 || a.cameras.some((c) => b.cameras.includes(c))
}

const instantsOf = (facts: Facts, b: Booked): number[] => {
  const samples = b.shot.at ? facts.forecast(b.cook)?.moments[b.shot.at.moment] : undefined
  return samples ? [...samples].map((s) => facts.meatOn(b.cook) + s * 1000) : []
}

function meet(a: Booked, ta: number, b: Booked, tb: number): boolean {
  if (!Number.isFinite(ta) || !Number.isFinite(tb)) return false
  const [first, t1, next, t2] = ta <= tb ? [a, ta, b, tb] : [b, tb, a, ta]
  const moves = placeOf(a) !== placeOf(b) || a.cook !== b.cook
  const ready = t1 + reach(first).after + (moves ? (next.shot.setup ?? 0) * 1000 : 0)
  return ready > t2 - reach(next).before
}
