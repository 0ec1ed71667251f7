import type { Problem } from '../refusals'
import type { Shoot } from './shoot'

/** Every id stands once in its list. */
export function checkNames(shoot: Shoot): Problem[] {
  return [
    ...twice('cook', 'cooks', shoot.cooks),
    ...twice('person', 'people', shoot.people),
    ...twice('camera', 'cameras', shoot.cameras),
    ...twice('task', 'tasks', shoot.tasks),
    ...twice('shot', 'shots', shoot.shots),
    ...twice('step', 'card/steps', shoot.card?.steps),
    ...shadowed(shoot),
  ]
}

function twice(what: string, list: string, entries: readonly { readonly id: string }[] = []): Problem[] {
  const seen = new Set<string>()
  return entries.flatMap(({ id }, i) => {
    if (!seen.has(id)) {
      seen.add(id)
      return []
    }
    return [
      { pointer: `/${list}/${i}/id`, sentence: `Another ${what} is called "${id}" already. Give this one its own id.` },
    ]
  })
}

/** "needs" names roles and people alike, so an id that is also somebody else's role would be read two ways. */
function shadowed(shoot: Shoot): Problem[] {
  const people = shoot.people ?? []
  return people.flatMap(({ id }, i) =>
    people.some((other) => other.id !== id && other.roles.includes(id))
      ? [
          {
            pointer: `/people/${i}/id`,
            sentence: `"${id}" is also a role of somebody else. Give this person another id.`,
          },
        ]
      : [],
  )
}
