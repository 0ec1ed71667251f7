import { type Booked, cameraSpan, type Duty, type Facts, isWatch, overlap, peopleSpan, placeOf } from './facts'
import { behindCamera, unmetNeed } from './needs'
import { type Violation, violation } from './violation'

/** Nobody and no camera is in two places, and every shot has whom and what it needs. */
export function checkBookings(facts: Facts): Violation[] {
  return [
    ...pairs(facts.booked).flatMap(([a, b]) => [...sharedPeople(facts, a, b), ...sharedCameras(facts, a, b)]),
    ...facts.booked.flatMap((b) => [...checkNeeds(facts, b), ...checkCameras(facts, b)]),
    ...boundTwice(facts),
  ]
}

const pairs = <T>(all: readonly T[]) => all.flatMap((a, i) => all.slice(i + 1).map((b) => [a, b] as const))
const both = (a: readonly string[], b: readonly string[]) => a.filter((x) => b.includes(x))
/** The presenter who turns the roast and puts the probe in serves two moment shots there at once; an operator does not. */
const handsServeBoth = (facts: Facts, a: Booked, b: Booked, person: string) =>
  a.shot.at !== undefined &&
  b.shot.at !== undefined &&
  a.cook === b.cook &&
  placeOf(a) === placeOf(b) &&
  !behindCamera(facts, a, person) &&
  !behindCamera(facts, b, person)

function sharedPeople(facts: Facts, a: Booked, b: Booked): Violation[] {
  if (!overlap(peopleSpan(a), peopleSpan(b))) return []
  const busy = both(a.people, b.people).filter((p) => !handsServeBoth(facts, a, b, p))
  return busy.map((person) =>
    violation(
      'person-in-two-places',
      `${person} is in ${facts.titleOf(a.id)} and ${facts.titleOf(b.id)} at ${facts.clock.show(Math.max(a.setup, b.setup))}.`,
      [a.id, b.id],
      [person],
    ),
  )
}

function sharedCameras(facts: Facts, a: Booked, b: Booked): Violation[] {
  if (!overlap(cameraSpan(a), cameraSpan(b))) return []
  const locked = a.shot.locked || b.shot.locked
  return both(a.cameras, b.cameras).map((camera) => {
    const where = `${facts.titleOf(a.id)} and ${facts.titleOf(b.id)} at ${facts.clock.show(Math.max(a.setup, b.setup))}`
    return locked
      ? violation('locked-camera-lent', `Camera ${camera} is locked off and lent: it is on ${where}.`, [a.id, b.id])
      : violation('camera-on-two-shots', `Camera ${camera} is on ${where}.`, [a.id, b.id])
  })
}

/** Tasks other than a watch bind their people as a shot does. */
function boundTwice(facts: Facts): Violation[] {
  const bound = facts.duties.filter((d) => !isWatch(d.task))
  const clash = (d: Duty, id: string, people: readonly string[], shots: readonly string[]) =>
    both(d.people, people).map((person) =>
      violation('person-in-two-places', `${person} is at task "${d.id}" and in ${id} at once.`, shots, [person]),
    )
  return bound.flatMap((d, i) => [
    ...facts.booked
      .filter((b) => overlap(d, peopleSpan(b)))
      .flatMap((b) => clash(d, facts.titleOf(b.id), b.people, [b.id])),
    ...bound.slice(i + 1).flatMap((e) => (overlap(d, e) ? clash(d, `task "${e.id}"`, e.people, []) : [])),
  ])
}

function checkNeeds(facts: Facts, b: Booked): Violation[] {
  const needs = b.shot.needs ?? []
  const unmet = unmetNeed(facts.shoot, needs, [...new Set(b.people)])
  if (unmet === null) return []
  const who = b.people.length > 0 ? b.people.join(', ') : 'nobody'
  return [
    violation(
      'need-unmet',
      `${facts.titleOf(b.id)} needs ${needs.join(', ')}; ${who} cannot be its ${unmet}.`,
      [b.id],
      b.people,
    ),
  ]
}

function checkCameras({ titleOf }: Facts, b: Booked): Violation[] {
  const asked = (b.shot.needs ?? []).filter((n) => n === 'camera').length
  const needed = Math.max(asked, b.shot.camera || b.shot.locked ? 1 : 0)
  const found: Violation[] = []
  const has = new Set(b.cameras).size
  if (has < needed)
    found.push(violation('too-few-cameras', `${titleOf(b.id)} needs ${needed} cameras and has ${has}.`, [b.id]))
  if (b.shot.camera && !b.cameras.includes(b.shot.camera))
    found.push(
      violation('named-camera-unused', `${titleOf(b.id)} asks for camera ${b.shot.camera} and is shot without it.`, [
        b.id,
      ]),
    )
  return found
}
