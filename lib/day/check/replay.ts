import type { Call } from '../layout'
import { firstReading } from './calls'
import { type Booked, type Facts, placeOf } from './facts'
import { LIMITS } from './limits'
import { behindCamera } from './needs'
import { comesFirst, readyAfterCall } from './standing'
import { type Violation, violation } from './violation'

/** Allowed between a promised share and the one replayed here: rounding of times to the minute moves a few members. */
const PROMISE_SLACK = 0.03

/** Replays the day in every member, called by that member's own probe, and finds what is promised too often. */
export function checkPromises(facts: Facts): Violation[] {
  const stands = facts.booked.flatMap((b) => standOf(facts, b) ?? [])
  const members = Math.min(...stands.map((s) => s.instants.length))
  if (stands.length === 0 || members === 0) return []
  const live = shares(stands, members, (m) => caughtLive(facts, stands, m))
  const clock = shares(stands, members, (m) => stands.map((s) => caughtByClock(s, m)))
  return [
    ...broken('Called live', facts.layout.capture, live),
    ...broken('By the clock alone', facts.layout.capture.openLoop, clock),
  ]
}

interface Stand {
  readonly b: Booked
  readonly key: string
  readonly call: Call
  /** By member: the moment, and when the crew is called to it, ms. */
  readonly instants: readonly number[]
  readonly called: readonly number[]
  readonly before: number
  readonly after: number
  readonly bound: readonly string[]
}

function standOf(facts: Facts, b: Booked): Stand | null {
  const at = b.shot.at
  const call = facts.layout.calls.find((c) => c.for === b.id)
  const forecast = facts.forecast(b.cook)
  const samples = at && forecast?.moments[at.moment]
  if (!at || !call || !forecast || !samples) return null
  const zero = facts.meatOn(b.cook)
  const spoken = (m: number) => {
    if (call.trigger) return zero + firstReading(forecast, m, call.trigger.probe) * 1000
    const from = call.follows && forecast.moments[call.follows.moment]
    if (call.follows && from) return zero + ((from[m] as number) + call.follows.after) * 1000
    return call.standby === null ? Number.POSITIVE_INFINITY : Date.parse(call.standby)
  }
  return {
    b,
    key: `${b.cook}/${at.moment}`,
    call,
    instants: [...samples].map((s) => zero + s * 1000),
    called: [...samples].map((_, m) => spoken(m)),
    before: (at.before ?? 0) * 1000,
    after: (at.after ?? 0) * 1000,
    bound: [...b.cameras, ...b.people.filter((p) => behindCamera(facts, b, p))],
  }
}

function caughtLive(facts: Facts, stands: readonly Stand[], m: number): boolean[] {
  return stands.map((s) => {
    const instant = s.instants[m] as number
    const live = s.call.trigger !== null || s.call.follows !== null
    const readyCalled = readyAfterCall(facts, s.b, m, s.called[m] as number, live)
    const held = stands.filter((o) => o !== s && comesFirst(facts, o.b, s.b, m) && holds(o, s))
    const readyAfterOthers = held.map((o) => (o.instants[m] as number) + o.after + moveMs(o, s))
    const readyAt = Math.max(readyCalled, ...readyAfterOthers)
    return Number.isFinite(instant) && readyAt <= instant - s.before + LIMITS.graceMs
  })
}

/** An operator or camera of one that the other needs, or anybody who would have to walk. */
const holds = (o: Stand, s: Stand): boolean =>
  o.bound.some((x) => s.bound.includes(x)) ||
  (away(o, s) && o.b.people.some((p) => s.b.people.includes(p))) ||
  o.bound.some((x) => s.b.people.includes(x)) ||
  s.bound.some((x) => o.b.people.includes(x))
const away = (o: Stand, s: Stand) => o.b.cook !== s.b.cook || placeOf(o.b) !== placeOf(s.b)
const moveMs = (o: Stand, s: Stand): number => (away(o, s) ? (s.b.shot.setup ?? 0) * 1000 : 0)

const caughtByClock = (s: Stand, m: number): boolean => {
  const instant = s.instants[m] as number
  return s.b.start <= instant - s.before + LIMITS.graceMs && s.b.end >= instant + s.after - LIMITS.graceMs
}

interface Shares {
  readonly each: ReadonlyMap<string, number>
  readonly joint: number
}
function shares(stands: readonly Stand[], members: number, caught: (m: number) => boolean[]): Shares {
  const each = new Map(stands.map((s) => [s.key, 0]))
  let joint = 0
  for (let m = 0; m < members; m++) {
    const now = caught(m)
    const missed = new Set(stands.flatMap((s, i) => (now[i] ? [] : [s.key])))
    for (const [key, n] of each) if (!missed.has(key)) each.set(key, n + 1)
    if (missed.size === 0) joint++
  }
  return { each: new Map([...each].map(([key, n]) => [key, n / members])), joint: joint / members }
}

type Promised = { readonly each: Readonly<Record<string, number>>; readonly joint: number }
function broken(name: string, promised: Promised, replayed: Shares): Violation[] {
  const pairs = [...Object.entries(promised.each), ['all together', promised.joint] as const]
  return pairs.flatMap(([what, share]) => {
    const found = what === 'all together' ? replayed.joint : (replayed.each.get(what) ?? 1)
    if (share <= found + PROMISE_SLACK) return []
    const percent = (n: number) => Math.round(n * 100)
    return [
      violation(
        'capture-untrue',
        `${name}, "${what}" is promised in ${percent(share)} % of cooks; replayed it is ${percent(found)} %.`,
      ),
    ]
  })
}
