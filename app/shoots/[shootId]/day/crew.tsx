'use client'
import { type ReactNode, useRef } from 'react'
import { removeAt } from '@/lib/plan/edit'
import { meansOne, personAt, renamePerson } from '@/lib/plan/edit-people'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Folded } from '../../../ui/folded'
import { addPersonWords, personIsAdded, takeOut, theCrew } from '../../../words/day'
import { takenOut } from '../../../words/shared'
import type { DocumentField } from '../../document-fields'
import type { Act } from '../../use-actions'
import { addPerson, crewFields, peopleOf } from './shot-fields'

interface CrewProps {
  readonly document: ShootDocument
  readonly faulty: boolean
  readonly control: (field: DocumentField) => ReactNode
  readonly act: Act
}

export function Crew({ document, faulty, control, act }: CrewProps) {
  const following = useNamesFollowing()
  return (
    <Folded summary={theCrew} fault={faulty}>
      <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2">{crewFields(document).map(following).map(control)}</div>
      <p className="mt-2 flex flex-wrap gap-x-6 gap-y-2">
        <button type="button" className="btn" onClick={() => act(personIsAdded, addPerson(document))}>
          {addPersonWords}
        </button>
        {peopleOf(document).map((person, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a name may stand there twice while it is typed
            key={i}
            type="button"
            className="textlink"
            onClick={() => act(takenOut(`${person.id}`), removeAt(document, `/people/${i}`), `/people/${i}`)}
          >
            {takeOut} {person.id}
          </button>
        ))}
      </p>
    </Folded>
  )
}

/** Shots, tasks and sides follow a name as it is typed; while it is empty or somebody else's they keep the last that was neither. */
function useNamesFollowing() {
  const last = useRef(new Map<number, string>())
  return (field: DocumentField): DocumentField => {
    const index = /^\/people\/(\d+)\/id$/.exec(field.pointers[0] ?? '')?.[1]
    if (index === undefined) return field
    const i = Number(index)
    return {
      ...field,
      write: (document, text) => {
        const now = personAt(document, i)
        const was = meansOne(document, i, now) ? now : (last.current.get(i) ?? now)
        last.current.set(i, was)
        return renamePerson(document, i, was, text)
      },
    }
  }
}
