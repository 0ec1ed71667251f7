import { setAt, valueAt } from './edit'
import type { ShootDocument } from './shoot'
import { listAt, peopleOf } from './sketch'

/** Shots, tasks and sides ask for people and roles by name; a name that means one person alone follows that person. */
export function renamePerson(document: ShootDocument, index: number, was: string, id: string): ShootDocument {
  const named = setAt(document, `/people/${index}/id`, id)
  if (!meansOne(named, index, id) || !meansOne(document, index, was)) return named
  return ['/shots', '/tasks', '/sides'].reduce(
    (d, list) =>
      listAt<{ needs?: unknown }>(d, list).reduce((each, { needs }, i) => {
        if (!Array.isArray(needs) || !needs.includes(was)) return each
        return setAt(
          each,
          `${list}/${i}/needs`,
          needs.map((need) => (need === was ? id : need)),
        )
      }, d),
    named,
  )
}

/** Nobody else is called so, and it is no role: then "needs" can mean only this person. */
export const meansOne = (document: ShootDocument, index: number, id: string): boolean =>
  id !== '' &&
  listAt<{ id?: unknown }>(document, '/people').every((person, i) => i === index || person.id !== id) &&
  peopleOf(document).every(({ roles }) => !roles.includes(id))

export const personAt = (document: ShootDocument, index: number): string =>
  String(valueAt(document, `/people/${index}/id`) ?? '')
