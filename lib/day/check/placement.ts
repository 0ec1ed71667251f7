import { type Instant, instant } from '../../units'
import { lightBands } from '../sun'
import { type Booked, type Facts, overlap, placeOf, stands } from './facts'
import { LIMITS } from './limits'
import { behindCamera } from './needs'
import { type Violation, violation } from './violation'

/** Every shot stands where and as long as it was asked to. */
export function checkPlacement(facts: Facts): Violation[] {
  return [...facts.booked.flatMap((b) => RULES.flatMap((rule) => rule(facts, b))), ...checkLid(facts)]
}

type ShotRule = (facts: Facts, b: Booked) => Violation[]
const RULES: readonly ShotRule[] = [checkSetup, checkRoll, checkAfter, checkBetween, checkPin, checkLocked, checkLight]

function checkSetup(facts: Facts, b: Booked): Violation[] {
  const asked = (b.shot.setup ?? 0) * 1000
  const has = b.start - b.setup
  if (!(has < asked - LIMITS.graceMs / 2) || standsReady(facts, b, asked) || stands(facts, b)) return []
  const minutes = (ms: number) => Math.round(ms / 60_000)
  return [
    violation(
      'setup-short',
      `${facts.titleOf(b.id)} asks for ${minutes(asked)} min of setup and has ${minutes(has)}.`,
      [b.id],
    ),
  ]
}

/**
 * A chain: its cameras and their operators have stood at this place, set up as long as this shot asks, since another
 * moment of the same cook, and were nowhere else in between.
 */
function standsReady(facts: Facts, b: Booked, asked: number): boolean {
  if (!b.shot.at || b.cameras.length === 0) return false
  const operators = b.people.filter((p) => behindCamera(facts, b, p))
  const isLink = (o: Booked) => o.shot.at !== undefined && o.cook === b.cook && placeOf(o) === placeOf(b)
  return b.cameras.every((camera) => {
    const before = facts.booked.filter((o) => o !== b && o.cameras.includes(camera) && o.start <= b.start)
    const holdsSince = (first: Booked) =>
      isLink(first) &&
      (first.start - first.setup >= asked - LIMITS.graceMs / 2 || stands(facts, first)) &&
      operators.every((p) => first.people.includes(p)) &&
      before.every((o) => o.start < first.start || isLink(o))
    return before.some(holdsSince)
  })
}

function checkRoll({ titleOf }: Facts, b: Booked): Violation[] {
  if (b.shot.at || b.shot.locked || b.shot.roll === undefined) return []
  const asked = b.shot.roll * 1000 + 2 * LIMITS.handleMs
  if (!(b.end - b.start < asked)) return []
  return [
    violation('roll-short', `${titleOf(b.id)} rolls for less than the ${b.shot.roll / 60} min asked and its handles.`, [
      b.id,
    ]),
  ]
}

function checkAfter({ booked, titleOf }: Facts, b: Booked): Violation[] {
  return (b.shot.after ?? [])
    .flatMap((id) => booked.find((o) => o.id === id) ?? [])
    .filter((o) => b.start < o.end)
    .map((o) =>
      violation('after-order', `${titleOf(b.id)} comes after ${titleOf(o.id)}, and starts before that ends.`, [
        b.id,
        o.id,
      ]),
    )
}

/** To the minute: somebody else may have been told it. */
function checkPin(facts: Facts, b: Booked): Violation[] {
  const { pin } = b.shot
  if (pin === undefined || b.start === facts.edge(b.cook, pin)) return []
  return [violation('pin-missed', `${facts.titleOf(b.id)} is pinned at ${pin} and does not begin then.`, [b.id])]
}

function checkBetween(facts: Facts, b: Booked): Violation[] {
  if (!b.shot.between) return []
  const [from, to] = b.shot.between.map((edge) => facts.edge(b.cook, edge))
  const early = typeof from === 'number' && b.start < from - LIMITS.graceMs
  const late = typeof to === 'number' && b.end > to + LIMITS.graceMs
  if (!early && !late) return []
  return [
    violation('between-outside', `${facts.titleOf(b.id)} does not lie between ${b.shot.between.join(' and ')}.`, [
      b.id,
    ]),
  ]
}

function checkLocked(facts: Facts, b: Booked): Violation[] {
  const { from, to } = b.shot
  if (from === undefined || to === undefined) return []
  const [start, end] = [facts.edge(b.cook, from), facts.edge(b.cook, to)]
  const late = start !== null && b.start > start + LIMITS.graceMs
  const early = end !== null && b.end < end - LIMITS.graceMs
  if (!late && !early) return []
  return [violation('locked-gap', `${facts.titleOf(b.id)} does not run from ${from} to ${to}.`, [b.id])]
}

/** Whether a span lies within one spell of a light at the shoot's place. */
export function inLight({ shoot }: Facts, light: string, start: number, end: number): boolean {
  if (Number.isNaN(start + end)) return true // told as no time at all
  const [from, to] = [instant(start - LIMITS.graceMs), instant(end + LIMITS.graceMs)] as [Instant, Instant]
  return lightBands(shoot.place, from, to).some(
    (band) => band.light === light && band.start <= start + LIMITS.graceMs && band.end >= end - LIMITS.graceMs,
  )
}

function checkLight(facts: Facts, b: Booked): Violation[] {
  if (!b.shot.light || inLight(facts, b.shot.light, b.start, b.end)) return []
  return [
    violation('light-missed', `${facts.titleOf(b.id)} at ${facts.clock.show(b.start)} is not in ${b.shot.light}.`, [
      b.id,
    ]),
  ]
}

/** Two shots at moments that meet are the plan's own; told in a conflict they are no violation. */
function checkLid(facts: Facts): Violation[] {
  const { booked, titleOf, layout } = facts
  const open = booked.filter((b) => b.shot.lid === 'open')
  const shut = booked.filter((b) => b.shot.lid === 'shut')
  const told = (a: Booked, b: Booked) =>
    a.shot.at && b.shot.at && layout.conflicts.some((c) => c.shots.includes(a.id) && c.shots.includes(b.id))
  const meetings = open.flatMap((a) =>
    shut
      .filter((b) => a.cook === b.cook && overlap(a, b) && !told(a, b))
      .map((b) =>
        violation('lid-conflict', `${titleOf(a.id)} needs the lid open while ${titleOf(b.id)} needs it shut.`, [
          a.id,
          b.id,
        ]),
      ),
  )
  return [...meetings, ...shut.flatMap((b) => checkLidOff(facts, b))]
}

/** The lid comes off for the turn and the probe, filmed or not. */
function checkLidOff(facts: Facts, b: Booked): Violation[] {
  if (b.shot.at) return []
  return (['turn', 'probe-in'] as const)
    .map((id) => facts.moment(b.cook, id)?.likely ?? null)
    .filter((at) => at !== null && at > facts.meatOn(b.cook) && at > b.start && at < b.end)
    .map(() =>
      violation(
        'lid-conflict',
        `${facts.titleOf(b.id)} needs the lid shut while it is off for the turn or the probe.`,
        [b.id],
      ),
    )
}
