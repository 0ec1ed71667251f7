import { type Duty, type Facts, isWatch, overlap, peopleSpan, type Span } from './facts'
import { LIMITS } from './limits'
import { unmetNeed } from './needs'
import { type Violation, violation } from './violation'

/** Somebody named is in sight of every burning fire, and every task is staffed from its beginning to its end. */
export function checkFire(facts: Facts): Violation[] {
  return [
    ...(facts.shoot.tasks ?? []).flatMap((t) => checkCover(facts, t.id)),
    ...facts.duties.flatMap((d) => [...checkNeeds(facts, d), ...checkLeft(facts, d)]),
    ...facts.shoot.cooks.flatMap((c) => checkWatched(facts, c.id)),
  ]
}

/** The parts of a span that no other covers, but for gaps of the clock's own grain. */
function gapsIn(span: Span, covers: readonly Span[]): Span[] {
  const gaps: Span[] = []
  let at = span.start
  for (const c of [...covers].sort((a, b) => a.start - b.start)) {
    if (c.start > at + LIMITS.graceMs) gaps.push({ start: at, end: Math.min(c.start, span.end) })
    at = Math.max(at, c.end)
  }
  if (at < span.end - LIMITS.graceMs) gaps.push({ start: at, end: span.end })
  return gaps.filter((g) => g.end - g.start > LIMITS.graceMs)
}

function checkCover(facts: Facts, id: string): Violation[] {
  const task = facts.shoot.tasks?.find((t) => t.id === id)
  const cook = task?.cook ?? facts.shoot.cooks[0]?.id ?? ''
  const [start, end] = [facts.edge(cook, task?.from ?? ''), facts.edge(cook, task?.to ?? '')]
  if (start === null || end === null) return []
  const [gap] = gapsIn(
    { start, end },
    facts.duties.filter((d) => d.id === id),
  )
  if (!gap) return []
  return [
    violation(
      'task-uncovered',
      `Nobody is named for "${id}" from ${facts.clock.show(gap.start)} to ${facts.clock.show(gap.end)}.`,
    ),
  ]
}

function checkNeeds(facts: Facts, d: Duty): Violation[] {
  const unmet = unmetNeed(facts.shoot, d.task.needs, [...new Set(d.people)])
  if (unmet === null) return []
  return [
    violation(
      'task-need-unmet',
      `Task "${d.id}" needs ${d.task.needs.join(', ')}; nobody named can be its ${unmet}.`,
      [],
      d.people,
    ),
  ]
}

/** A watcher's hands are free for what is shot at the cooker or anywhere unnamed; a shot elsewhere takes their eyes off. */
function checkLeft(facts: Facts, d: Duty): Violation[] {
  if (!isWatch(d.task)) return []
  return facts.booked
    .filter((b) => b.shot.place !== undefined && b.shot.place !== 'cooker' && overlap(d, peopleSpan(b)))
    .flatMap((b) => {
      const gone = b.people.filter((p) => d.people.includes(p))
      if (gone.length === 0) return []
      return [violation('task-left', `${gone.join(', ')} leaves "${d.id}" for ${facts.titleOf(b.id)}.`, [b.id], gone)]
    })
}

const BURNING: readonly string[] = ['ceramic-charcoal', 'kettle-charcoal']

function checkWatched(facts: Facts, cook: string): Violation[] {
  const kind = facts.shoot.cooks.find((c) => c.id === cook)?.cooker.kind ?? ''
  const [lit, off] = [facts.edge(cook, 'fire-lit'), facts.edge(cook, 'off-heat')]
  if (!BURNING.includes(kind) || lit === null || off === null || (facts.shoot.people ?? []).length === 0) return []
  // No task asks for a watch, and a conflict says so: the plan is at fault, not the layout.
  const told = facts.layout.conflicts.some((c) => c.rule === 'fire-unwatched')
  if (told && !(facts.shoot.tasks ?? []).some(isWatch)) return []
  // The fires of a shoot stand together: who watches one has the other in sight.
  const watches = facts.duties.filter((d) => isWatch(d.task) && d.people.length > 0)
  const atFire = facts.booked.filter((b) => b.shot.place === 'cooker' && b.people.length > 0).map(peopleSpan)
  const [gap] = gapsIn({ start: lit, end: off }, [...watches, ...atFire])
  if (!gap) return []
  return [
    violation(
      'fire-unwatched',
      `The fire of "${cook}" burns unwatched from ${facts.clock.show(gap.start)} to ${facts.clock.show(gap.end)}.`,
    ),
  ]
}
