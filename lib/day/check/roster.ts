import { tasksOf } from '../../plan/side-tasks'
import type { Layout } from '../layout'
import type { Facts } from './facts'
import { type Violation, violation } from './violation'

/** Everything named exists, every shot is accounted for once, and every drop says why. */
export function checkRoster(facts: Facts): Violation[] {
  return [...checkNames(facts), ...checkAccount(facts), ...checkDrops(facts)]
}

function checkNames({ shoot, layout }: Facts): Violation[] {
  const shots = new Set((shoot.shots ?? []).map((s) => s.id))
  const people = new Set((shoot.people ?? []).map((p) => p.id))
  const cameras = new Set((shoot.cameras ?? []).map((c) => c.id))
  const tasks = new Set(tasksOf(shoot).map((t) => t.id))
  const named = [
    ...layout.shots.map((s) => s.id),
    ...layout.dropped.map((d) => d.id),
    ...layout.calls.map((c) => c.for),
  ]
  const missing = (names: Iterable<string>, known: ReadonlySet<string>) =>
    [...new Set(names)].filter((n) => !known.has(n))
  return [
    ...missing(named, shots).map((id) => violation('unknown-shot', `The shoot has no shot "${id}".`, [id])),
    ...missing(everybodyNamed(layout), people).map((id) =>
      violation('unknown-person', `Nobody on this shoot is called "${id}".`, [], [id]),
    ),
    ...missing(
      layout.shots.flatMap((s) => s.camera),
      cameras,
    ).map((id) => violation('unknown-camera', `The shoot has no camera "${id}".`)),
    ...missing(
      layout.tasks.map((t) => t.id),
      tasks,
    ).map((id) => violation('unknown-task', `The shoot has no task "${id}".`)),
  ]
}

const everybodyNamed = (layout: Layout) =>
  [...layout.shots, ...layout.calls, ...layout.tasks, ...layout.meals].flatMap((x) => x.people)

function checkAccount({ shoot, layout, titleOf }: Facts): Violation[] {
  return (shoot.shots ?? []).flatMap(({ id }) => {
    const placed = layout.shots.filter((s) => s.id === id).length
    const dropped = layout.dropped.some((d) => d.id === id)
    const found: Violation[] = []
    if (placed === 0 && !dropped)
      found.push(violation('shot-unaccounted', `${titleOf(id)} is neither placed nor dropped.`, [id]))
    if (placed > 0 && dropped)
      found.push(violation('shot-placed-and-dropped', `${titleOf(id)} is both placed and dropped.`, [id]))
    if (placed > 1) found.push(violation('shot-placed-twice', `${titleOf(id)} is placed ${placed} times.`, [id]))
    return found
  })
}

function checkDrops({ shoot, layout, titleOf }: Facts): Violation[] {
  const musts = new Set((shoot.shots ?? []).filter((s) => s.priority === 'must').map((s) => s.id))
  return layout.dropped.flatMap(({ id, why, wouldSave }) => {
    const found: Violation[] = []
    if (why.trim() === '' || wouldSave.trim() === '')
      found.push(
        violation('drop-unexplained', `${titleOf(id)} is dropped without a reason or what would save it.`, [id]),
      )
    if (musts.has(id) && !layout.conflicts.some((c) => c.shots.includes(id)))
      found.push(
        violation('must-dropped-silently', `${titleOf(id)} is a must and dropped, and no conflict says so.`, [id]),
      )
    return found
  })
}
