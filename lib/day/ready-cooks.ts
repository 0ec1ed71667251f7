import { formatClock } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { CookTimes } from './cook-times'
import type { DayClock } from './day-clock'
import type { Draft } from './draft'
import type { Conflict } from './layout'
import type { DayProblem } from './problem'
import { safeHigh, sorted } from './samples'
import { cooksOf, momentName } from './words'

/** A cook made ready for another: in this share of cooks it is done in time. */
export const READY_SHARE = 0.95
type Context = { readonly shoot: Shoot; readonly clock: DayClock; readonly cooks: readonly CookTimes[] }
type Ready = NonNullable<Shoot['cooks'][number]['ready']>

const readyOf = ({ shoot, cooks }: Context, cook: number): Ready | undefined =>
  shoot.cooks.find(({ id }) => id === cooks[cook]?.id)?.ready
const doneAt = (times: CookTimes | undefined, ready: Ready) => times?.at(ready.moment ?? 'first-slice') ?? null

/**
 * How much sooner than the first cook's meat this one's must be on, minutes, so that it is done before the moment it is
 * made for. Each of its members meets each of the other's: two roasts do not run early or late together.
 */
export function leadForReady(context: Context, cook: number): number | null {
  const ready = readyOf(context, cook)
  const done = ready && doneAt(context.cooks[cook], ready)
  const wanted = ready && 'moment' in ready.by ? context.cooks[0]?.at(ready.by.moment) : null
  return done && wanted ? safeHigh(sorted(gapsOf(done, wanted)), READY_SHARE) : null
}
function gapsOf(done: Float64Array, wanted: Float64Array): Float64Array {
  const gaps = new Float64Array(done.length * wanted.length)
  done.forEach((d, i) => {
    wanted.forEach((w, j) => {
      // A hero that never comes there waits for nothing; a roast that is never done is never ready.
      gaps[i * wanted.length + j] = Number.isFinite(d) ? d - w : Number.POSITIVE_INFINITY
    })
  })
  return gaps
}

/** The latest minute of the day at which its meat may go on; null where it is made ready for nothing, or never is. */
export function readyMeatOn(context: Context, cook: number, heroOn: number): number | null {
  const ready = readyOf(context, cook)
  if (!ready) return null
  const lead = leadForReady(context, cook)
  if (lead !== null) return Number.isFinite(lead) ? Math.floor(heroOn - lead) : null
  const done = doneAt(context.cooks[cook], ready)
  if (!done || !('clock' in ready.by)) return null
  const needed = safeHigh(sorted(done), READY_SHARE)
  return Number.isFinite(needed) ? Math.floor(context.clock.fromClock(ready.by.clock) - needed) : null
}

/** Cooks that are not done in time in enough cooks, and what would help. */
export function readyConflicts(problem: DayProblem, draft: Draft): Conflict[] {
  return problem.cooks.flatMap(({ id }, cook) => {
    const ready = readyOf(problem, cook)
    const on = draft.meatOn[cook]
    const hero = draft.meatOn[0]
    if (!ready || on === undefined || hero === undefined) return []
    const share = shareReady(problem, cook, on, hero)
    if (share >= READY_SHARE - 1e-9) return []
    const latest = readyMeatOn(problem, cook, hero)
    const at = (minute: number) => formatClock(problem.clock.toInstant(minute), problem.shoot.zone)
    const what = 'clock' in ready.by ? ready.by.clock : `${momentName(ready.by.moment)} of "${ready.by.cook}"`
    const help =
      latest === null
        ? 'It is never done in too many cooks: a hotter cooker, or a lower temperature at the probe.'
        : `Its meat would have to be on at ${at(latest)}: call the crew ${Math.max(5, Math.ceil((on - latest) / 5) * 5)} min sooner.`
    const sentence = `"${id}" is not ready by ${what} in ${cooksOf(1 - share)}. ${help}`
    return [{ sentence, shots: [], people: [], rule: 'ready-late' }]
  })
}

function shareReady(problem: DayProblem, cook: number, on: number, hero: number): number {
  const ready = readyOf(problem, cook)
  const done = ready && doneAt(problem.cooks[cook], ready)
  if (!done) return 0
  if ('clock' in ready.by) {
    const by = problem.clock.fromClock(ready.by.clock)
    return done.filter((d) => on + d <= by).length / done.length
  }
  const wanted = problem.cooks[0]?.at(ready.by.moment)
  if (!wanted) return 0
  const gaps = gapsOf(done, wanted)
  return gaps.filter((gap) => on + gap <= hero).length / gaps.length
}
