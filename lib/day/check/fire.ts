import type { Task } from '../../plan/shoot'
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
  const own = facts.duties.filter((d) => d.id === id)
  if (task?.takes !== undefined) return checkVisits(facts, task, own, { start: start + (task.delay ?? 0) * 1000, end })
  const [gap] = gapsIn({ start: start + (task?.delay ?? 0) * 1000, end }, own)
  if (!gap) return []
  return [
    violation(
      'task-uncovered',
      `Nobody is named for "${id}" from ${facts.clock.show(gap.start)} to ${facts.clock.show(gap.end)}.`,
    ),
  ]
}

/** Done once between its edges, or once in every stretch of them, and never in less time than it takes. */
function checkVisits(facts: Facts, task: Task, own: readonly Duty[], { start, end }: Span): Violation[] {
  const takes = (task.takes ?? 0) * 1000
  const apart = Math.max(takes, (task.every ?? Number.POSITIVE_INFINITY) * 1000)
  const say = (sentence: string) => [violation('task-uncovered', sentence)]
  const brief = own.find((d) => d.end - d.start < takes - LIMITS.graceMs)
  if (brief) return say(`"${task.id}" at ${facts.clock.show(brief.start)} is shorter than it takes.`)
  const outside = own.find((d) => d.start < start - LIMITS.graceMs || d.end > end + LIMITS.graceMs)
  if (outside) return say(`"${task.id}" at ${facts.clock.show(outside.start)} is outside its time.`)
  for (let from = start; from + takes <= end - 2 * LIMITS.graceMs; from += apart) {
    const to = Math.min(end, from + apart)
    if (own.some((d) => d.start >= from - LIMITS.graceMs && d.end <= to + LIMITS.graceMs)) continue
    return say(`"${task.id}" is not done between ${facts.clock.show(from)} and ${facts.clock.show(to)}.`)
  }
  return []
}

function checkNeeds(facts: Facts, d: Duty): Violation[] {
  const unmet = unmetNeed(facts.shoot, d.task.needs, [...new Set(d.people)])
  const told = facts.layout.conflicts.some((c) => c.rule === 'task-unstaffed')
  if (unmet === null || (told && d.people.length < d.task.needs.length)) return []
  return [
    violation(
      'task-need-unmet',
      `Task "${d.id}" needs ${d.task.needs.join(', ')}; nobody named can be its ${unmet}.`,
      [],
      d.people,
    ),
  ]
}

/** With the meat off it, a fire burns on until it is out or handed over. */
function checkLeftBurning(facts: Facts, cook: string, off: number, watches: readonly Duty[]): Violation[] {
  if (facts.layout.conflicts.some((c) => ['fire-left', 'fire-unwatched', 'task-unstaffed'].includes(c.rule))) return []
  const [gap] = gapsIn({ start: off, end: off + LIMITS.burnsOnMs }, watches)
  if (!gap) return []
  const at = facts.clock.show(gap.start)
  return [violation('fire-left', `The fire of "${cook}" is left burning at ${at}, before it is out or handed over.`)]
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

/** Where it is told, a must at a moment may take the last one from a fire. */
function leftForMusts({ layout, duties, booked }: Facts): Span[] {
  if (!layout.conflicts.some((c) => c.rule === 'task-unstaffed')) return []
  const musts = booked.filter((b) => b.shot.at && b.shot.priority === 'must').map(peopleSpan)
  return duties.filter((d) => isWatch(d.task) && d.people.length === 0 && musts.some((m) => overlap(d, m)))
}

const BURNING: readonly string[] = ['ceramic-charcoal', 'kettle-charcoal']

function checkWatched(facts: Facts, cook: string): Violation[] {
  const kind = facts.shoot.cooks.find((c) => c.id === cook)?.cooker.kind ?? ''
  const [lit, off] = [facts.edge(cook, 'fire-lit'), facts.edge(cook, 'off-heat')]
  if (!BURNING.includes(kind) || lit === null || off === null || (facts.shoot.people ?? []).length === 0) return []
  // No task asks for a watch, and a conflict says so: the plan is at fault, not the layout.
  const anyWatch = (facts.shoot.tasks ?? []).some(isWatch)
  const ofThis = (sentence: string) => !anyWatch || sentence.includes(`"${cook}"`)
  if (facts.layout.conflicts.some((c) => c.rule === 'fire-unwatched' && ofThis(c.sentence))) return []
  // The fires of a shoot stand together: who watches one has the other in sight.
  const watches = facts.duties.filter((d) => isWatch(d.task) && d.people.length > 0)
  const atFire = facts.booked.filter((b) => b.shot.place === 'cooker' && b.people.length > 0).map(peopleSpan)
  const [gap] = gapsIn({ start: lit, end: off }, [...watches, ...atFire, ...leftForMusts(facts)])
  if (!gap) return checkLeftBurning(facts, cook, off, watches)
  return [
    violation(
      'fire-unwatched',
      `The fire of "${cook}" burns unwatched from ${facts.clock.show(gap.start)} to ${facts.clock.show(gap.end)}.`,
    ),
  ]
}
