import { MOMENT_IDS } from '../../model/moment-ids'
import { type Booked, type Facts, placeOf } from './facts'
import { LIMITS } from './limits'
import { behindCamera } from './needs'

/** Between two shots of a chain: no new setup, another frame; common practice, no source. */
const REFRAME_MS = 60_000

/** A moment shot's instant in a member, ms; Infinity where it does not come or is not known. */
export function instantIn(facts: Facts, b: Booked, member: number): number {
  const samples = b.shot.at ? facts.forecast(b.cook)?.moments[b.shot.at.moment] : undefined
  return facts.meatOn(b.cook) + (samples?.[member] ?? Number.POSITIVE_INFINITY) * 1000
}

/**
 * When everybody and every camera of a shot stands ready in a member that calls at `called`. Whoever is still in an
 * earlier moment shot there only re-frames (behind a camera) or turns round (hands); all others are let go and set up.
 */
export function readyAfterCall(facts: Facts, b: Booked, member: number, called: number, live: boolean): number {
  const fetched = called + (live ? LIMITS.releaseMs : 0) + (b.shot.setup ?? 0) * 1000
  const each = [...b.people, ...b.cameras].map((x) => {
    const until = heldUntil(facts, b, x, member, called)
    if (until === null) return fetched
    return b.cameras.includes(x) || behindCamera(facts, b, x) ? until + REFRAME_MS : called
  })
  return each.length === 0 ? fetched : Math.max(...each)
}

function heldUntil(facts: Facts, b: Booked, x: string, member: number, called: number): number | null {
  const untils = facts.booked
    .filter((o) => o !== b && o.shot.at && o.cook === b.cook && placeOf(o) === placeOf(b))
    .filter((o) => (o.people.includes(x) || o.cameras.includes(x)) && comesFirst(facts, o, b, member))
    .map((o) => instantIn(facts, o, member) + (o.shot.at?.after ?? 0) * 1000)
    .filter((until) => until >= called)
  return untils.length === 0 ? null : Math.max(...untils)
}

/** Whether a member has the moment of `o` before that of `b`; at one instant a cook's moments come in their own order. */
export function comesFirst(facts: Facts, o: Booked, b: Booked, member: number): boolean {
  const apart = instantIn(facts, o, member) - instantIn(facts, b, member)
  if (apart !== 0) return apart < 0
  const ranks = [o, b].map(({ shot }) => MOMENT_IDS.indexOf(shot.at?.moment ?? 'first-slice'))
  const [first, next] = ranks as [number, number]
  return first < next || (first === next && facts.booked.indexOf(o) < facts.booked.indexOf(b))
}
