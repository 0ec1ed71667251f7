import { sideOf } from '../../plan/side-tasks'
import { type Booked, begun, type Facts } from './facts'
import { LIMITS } from './limits'
import { sideSpell } from './sides'
import { type Violation, violation } from './violation'

/** What is filmed is what is on the board: raw, seasoned, cooking, hot, rested, sliced, each in its own time. */
export function checkFood(facts: Facts): Violation[] {
  return facts.booked.flatMap((b) => {
    const state = b.shot.state
    if (!state || begun(facts, b)) return []
    const side = sideOf(facts.shoot, b.shot.cook)
    const { from, to } = side ? sideSpell(facts, side, state) : spellOf(facts, b, state)
    // A shot at a moment goes where the moment goes; only the moment itself can be wrong for the food.
    const at = b.shot.at ? facts.moment(b.cook, b.shot.at.moment)?.likely : undefined
    const [start, end] = b.shot.at ? [at ?? from, at ?? to] : [b.start, b.end]
    if (!(start < from - LIMITS.graceMs) && !(end > to + LIMITS.graceMs)) return []
    const spell = `${facts.clock.show(from)} to ${facts.clock.show(to)}`
    return [
      violation(
        'food-state',
        `${facts.titleOf(b.id)} wants ${side ? `"${side.title}"` : 'the roast'} ${state}; it is so from ${spell}.`,
        [b.id],
      ),
    ]
  })
}

const ALWAYS = Number.NEGATIVE_INFINITY
const EVER = Number.POSITIVE_INFINITY

function spellOf(facts: Facts, b: Booked, state: NonNullable<Booked['shot']['state']>): { from: number; to: number } {
  const likely = (moment: 'pull' | 'off-heat' | 'first-slice') => facts.moment(b.cook, moment)?.likely ?? null
  const meatOn = facts.meatOn(b.cook)
  const [pull, offHeat, slice] = [likely('pull'), likely('off-heat'), likely('first-slice')]
  switch (state) {
    case 'raw':
      return { from: ALWAYS, to: meatOn }
    case 'seasoned':
      return { from: seasonedFrom(facts, b), to: meatOn }
    case 'cooking':
      return { from: meatOn, to: offHeat ?? EVER }
    case 'hot':
      // A shot at pull sees it steaming too; without a moment of its own it waits until the fire is done with it.
      return { from: (b.shot.at ? pull : offHeat) ?? ALWAYS, to: (offHeat ?? EVER) + LIMITS.hotMs }
    case 'rested':
      return { from: restedFrom(facts, b, slice), to: slice ?? EVER }
    case 'sliced':
      return { from: slice ?? ALWAYS, to: (slice ?? EVER) + LIMITS.slicedMs }
  }
}

/** The end of the seasoning shot: one whose id begins so, or that this shot comes after. */
function seasonedFrom({ booked }: Facts, b: Booked): number {
  const before = booked.filter(
    (o) => o.id !== b.id && o.cook === b.cook && (o.id.startsWith('season') || b.shot.after?.includes(o.id)),
  )
  return Math.max(ALWAYS, ...before.map((o) => o.end))
}

/** From the end of the rest: what is held after it, and half an hour at most, lies before the first slice. */
function restedFrom({ shoot }: Facts, b: Booked, slice: number | null): number {
  if (slice === null) return ALWAYS
  const stages = shoot.cooks.find((c) => c.id === b.cook)?.stages ?? []
  const hold = stages.slice(stages.findLastIndex((s) => s.do === 'rest') + 1).find((s) => s.do === 'hold')
  if (hold && !('after' in hold.until)) return slice - LIMITS.restedMs
  const held = hold && 'after' in hold.until ? hold.until.after * 1000 : 0
  return slice - Math.min(held, LIMITS.restedMs)
}
