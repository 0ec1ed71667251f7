import type { Problem } from '../refusals'
import type { Shoot } from './shoot'
import { tasksOf } from './side-tasks'

/** What a layout needs beyond a forecast: shots want cameras and people to stand at them. */
export function problemsForLayout(shoot: Shoot): Problem[] {
  const shots = shoot.shots ?? []
  const problems: Problem[] = []
  if (shots.length > 0 && (shoot.cameras ?? []).length === 0)
    problems.push({
      pointer: '/cameras',
      sentence: 'There are shots and no camera. Add one, such as { "id": "A" }, to lay out the day.',
    })
  const wanted = [...shots, ...tasksOf(shoot)].some((item) => (item.needs ?? []).length > 0)
  if (wanted && (shoot.people ?? []).length === 0)
    problems.push({
      pointer: '/people',
      sentence:
        'Shots and tasks need people and there is nobody. Add one, such as { "id": "cam-1", "roles": ["camera"] }.',
    })
  return problems
}
