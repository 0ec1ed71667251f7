import { roastOf, type Side } from '../../plan/side-tasks'
import { type Duty, type Facts, type MomentTimes, overlap } from './facts'
import { LIMITS } from './limits'
import { type Violation, violation } from './violation'

/** Every side is in its cooker for its time, with the meat or after it, and done when it is wanted. */
export function checkSides(facts: Facts): Violation[] {
  return (facts.shoot.sides ?? []).flatMap((side) => checkSide(facts, side))
}

function checkSide(facts: Facts, side: Side): Violation[] {
  const [on, off] = [`${side.id}-on`, `${side.id}-off`].map((id) => facts.duties.filter((d) => d.id === id))
  const told = facts.layout.conflicts.some((c) => c.rule === 'side-apart' && c.sentence.includes(`"${side.title}"`))
  if (on?.length !== 1 || off?.length !== 1)
    return told && !on?.length && !off?.length
      ? []
      : [violation('side-missing', `"${side.title}" does not go on once and come off once.`)]
  const pair = { on: on[0] as Duty, off: off[0] as Duty }
  return [...checkTime(facts, side, pair), ...(told ? [] : checkWish(facts, side, pair))]
}

type Pair = { readonly on: Duty; readonly off: Duty }
function checkTime(facts: Facts, side: Side, { on, off }: Pair): Violation[] {
  const cook = roastOf(facts.shoot, side.id) ?? ''
  if (on.start < facts.meatOn(cook) - LIMITS.graceMs)
    return [violation('side-time', `"${side.title}" goes on at ${facts.clock.show(on.start)}, before the meat.`)]
  const isIn = (off.start - on.end) / 60_000
  const asked = Math.ceil(side.takes / 60)
  if (!overlap(on, off) && Math.abs(isIn - asked) * 60_000 <= LIMITS.graceMs) return []
  return [violation('side-time', `"${side.title}" takes ${asked} min and is in for ${Math.round(isIn)}.`)]
}

function checkWish(facts: Facts, side: Side, { on, off }: Pair): Violation[] {
  const cook = roastOf(facts.shoot, side.id) ?? ''
  const times = facts.moment(cook, side.from ?? side.ready ?? 'first-slice')
  if (times?.likely === null || times?.likely === undefined) return []
  const grace = LIMITS.graceMs
  const [from, to] = side.from
    ? [times.likely - grace, times.likely + LIMITS.sideMs + grace]
    : [soonest(times) - grace, times.likely + grace]
  const at = side.from ? on.start : off.end
  if (at >= from && at <= to) return []
  const does = side.from ? 'goes on' : 'is done'
  return [
    violation(
      'side-apart',
      `"${side.title}" ${does} at ${facts.clock.show(at)}, not at its ${side.from ?? side.ready ?? 'first-slice'}.`,
    ),
  ]
}
/** No sooner than its moment may come, for it would get cold. */
const soonest = ({ early, likely }: MomentTimes) =>
  Math.min(likely ?? 0, Math.max(early ?? 0, (likely ?? 0) - LIMITS.sideMs))

/** When a side is raw, in the cooker or hot: its own two tasks say. */
export function sideSpell(facts: Facts, side: Side, state: string): { from: number; to: number } {
  const on = facts.duties.find((d) => d.id === `${side.id}-on`)
  const off = facts.duties.find((d) => d.id === `${side.id}-off`)
  const [never, ever] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  if (state === 'raw') return { from: never, to: on?.start ?? ever }
  if (state === 'cooking') return { from: on?.end ?? ever, to: off?.start ?? never }
  return { from: off?.end ?? ever, to: (off?.end ?? never) + LIMITS.sideHotMs }
}
