import { type Instant, instant } from '../../units'
import { lightBands } from '../sun'
import { type Booked, type Facts, overlap, placeOf } from './facts'
import { LIMITS } from './limits'
import { type Violation, violation } from './violation'

/** Every shot stands where and as long as it was asked to. */
export function checkPlacement(facts: Facts): Violation[] {
  return [...facts.booked.flatMap((b) => RULES.flatMap((rule) => rule(facts, b))), ...checkLid(facts)]
}

type ShotRule = (facts: Facts, b: Booked) => Violation[]
const RULES: readonly ShotRule[] = [checkSetup, checkRoll, checkAfter, checkBetween, checkLocked, checkLight]

function checkSetup(facts: Facts, b: Booked): Violation[] {
  const asked = (b.shot.setup ?? 0) * 1000
  const has = b.start - b.setup
  if (!(has < asked - LIMITS.graceMs / 2) || standsReady(facts, b, asked)) return []
  const minutes = (ms: number) => Math.round(ms / 60_000)
  return [
    violation(
      'setup-short',
      `${facts.titleOf(b.id)} asks for ${minutes(asked)} min of setup and has ${minutes(has)}.`,
      [b.id],
    ),
  ]
}

/** A chain: its cameras have stood at this place, set up as long as this shot asks, since another moment of the same cook. */
function standsReady(facts: Facts, b: Booked, asked: number): boolean {
  if (!b.shot.at || b.cameras.length === 0) return false
  return b.cameras.every((camera) => {
    const before = facts.booked.filter((o) => o !== b && o.cameras.includes(camera) && o.start <= b.start)
    const chain = before.filter((o) => o.shot.at && o.cook === b.cook && placeOf(o) === placeOf(b))
    const first = chain.find((o) => o.start - o.setup >= asked - LIMITS.graceMs / 2)
    return first !== undefined && before.every((o) => o.start < first.start || chain.includes(o))
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

function checkLid({ booked, titleOf }: Facts): Violation[] {
  const open = booked.filter((b) => b.shot.lid === 'open')
  const shut = booked.filter((b) => b.shot.lid === 'shut')
  return open.flatMap((a) =>
    shut
      .filter((b) => a.cook === b.cook && overlap(a, b))
      .map((b) =>
        violation('lid-conflict', `${titleOf(a.id)} needs the lid open while ${titleOf(b.id)} needs it shut.`, [
          a.id,
          b.id,
        ]),
      ),
  )
}
