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
  const instant = instantIn(facts, b, member)
  const untils = facts.booked
    .filter((o) => o !== b && o.shot.at && o.cook === b.cook && placeOf(o) === placeOf(b))
    .filter((o) => o.people.includes(x) || o.cameras.includes(x))
    .map((o) => ({ at: instantIn(facts, o, member), after: (o.shot.at?.after ?? 0) * 1000 }))
    .filter(({ at, after }) => at <= instant && at + after >= called)
    .map(({ at, after }) => at + after)
  return untils.length === 0 ? null : Math.max(...untils)
}
