'use client'
import type { ReactNode } from 'react'
import { removeAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Folded } from '../../../ui/folded'
import type { DocumentField } from '../../document-fields'
import { addPerson, crewFields, peopleOf } from './shot-fields'

interface CrewProps {
  readonly document: ShootDocument
  readonly faulty: boolean
  readonly control: (field: DocumentField) => ReactNode
  readonly act: (words: string, next: ShootDocument) => void
}

export function Crew({ document, faulty, control, act }: CrewProps) {
  return (
    <Folded summary="The crew" fault={faulty}>
      <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2">{crewFields(document).map(control)}</div>
      <p className="mt-2 flex flex-wrap gap-x-6 gap-y-2">
        <button type="button" className="btn" onClick={() => act('A person is added.', addPerson(document))}>
          Add a person
        </button>
        {peopleOf(document).map((person, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a name may stand there twice while it is typed
            key={i}
            type="button"
            className="textlink"
            onClick={() => act(`${person.id} is taken out.`, removeAt(document, `/people/${i}`))}
          >
            Take out {person.id}
          </button>
        ))}
      </p>
    </Folded>
  )
}
