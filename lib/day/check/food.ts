import type { Booked, Facts } from './facts'
import { LIMITS } from './limits'
import { type Violation, violation } from './violation'

/** What is filmed is what is on the board: raw, seasoned, cooking, hot, rested, sliced, each in its own time. */
export function checkFood(facts: Facts): Violation[] {
  return facts.booked.flatMap((b) => {
    const state = b.shot.state
    if (!state) return []
    const { from, to } = spellOf(facts, b, state)
    // A shot at a moment goes where the moment goes; only the moment itself can be wrong for the food.
    const at = b.shot.at ? facts.moment(b.cook, b.shot.at.moment)?.likely : undefined
    const [start, end] = b.shot.at ? [at ?? from, at ?? to] : [b.start, b.end]
    if (!(start < from - LIMITS.graceMs) && !(end > to + LIMITS.graceMs)) return []
    const spell = `${facts.clock.show(from)} to ${facts.clock.show(to)}`
    return [violation('food-state', `${facts.titleOf(b.id)} wants the roast ${state}; it is so from ${spell}.`, [b.id])]
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
      return { from: pull ?? ALWAYS, to: (offHeat ?? EVER) + LIMITS.hotMs }
    case 'rested':
      return { from: restedFrom(facts, b, offHeat, slice), to: slice ?? EVER }
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

function restedFrom({ shoot }: Facts, b: Booked, offHeat: number | null, slice: number | null): number {
  const rest = shoot.cooks.find((c) => c.id === b.cook)?.stages.find((s) => s.do === 'rest')
  const after = rest && 'after' in rest.until ? rest.until.after * 1000 : 0
  return Math.max(offHeat === null ? ALWAYS : offHeat + after, slice === null ? ALWAYS : slice - LIMITS.restedMs)
}
