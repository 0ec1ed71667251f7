'use client'
import { Fragment } from 'react'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Field } from '../../../ui/field'
import { Folded } from '../../../ui/folded'
import { UndoAt } from '../../../ui/undo-line'
import {
  addContact,
  allergensOnSet,
  contact,
  emergencyNumber,
  emptyPrintsLine,
  fireRestrictionsToday,
  fireRestrictionsWhy,
  hospitalWhy,
  nearestHospital,
  notesWords,
  parkingWords,
  personResponsible,
  role,
  takeOut,
  telephone,
  whatOnlyProducerKnows,
} from '../../../words/calls'
import { takenOut } from '../../../words/shared'
import { asText, type DocumentField, fieldAt, optional, plain } from '../../document-fields'
import { SaveLine } from '../../save-line'
import { useActions } from '../../use-actions'
import { useSaved } from '../../use-saved'

const FIELDS: readonly DocumentField[] = [
  optional('emergency', emergencyNumber, '/callSheet/emergency'),
  optional('hospital', nearestHospital, '/callSheet/hospital', { why: hospitalWhy }),
  optional('allergens', allergensOnSet, '/callSheet/allergens'),
  optional('parking', parkingWords, '/callSheet/parking'),
  optional('notes', notesWords, '/callSheet/notes'),
  optional('responsible', personResponsible, '/risk/responsible'),
  optional('fire-rules', fireRestrictionsToday, '/risk/fireRules', {
    why: fireRestrictionsWhy,
  }),
]
const contactFields = (i: number): readonly DocumentField[] => [
  plain(`contact-name-${i}`, contact(i + 1), `/callSheet/contacts/${i}/name`),
  optional(`contact-role-${i}`, role, `/callSheet/contacts/${i}/role`),
  plain(`contact-phone-${i}`, telephone, `/callSheet/contacts/${i}/phone`),
]
const contactsOf = (document: ShootDocument) =>
  (valueAt(document, '/callSheet/contacts') as readonly unknown[] | undefined) ?? []

interface ProducerDeskProps {
  shootId: string
  version: number
  document: ShootDocument
}

/** What only the producer knows; what is left empty prints as a line to write on. */
export function ProducerDesk({ shootId, version, document: written }: ProducerDeskProps) {
  const saved = useSaved(shootId, version, written)
  const { document, change, problems } = saved
  const taken = useActions(document, change)
  const contacts = contactsOf(document)
  const shown = [...FIELDS, ...contacts.flatMap((_, i) => contactFields(i))]
  const control = (field: DocumentField) => (
    <Field
      key={field.key}
      label={field.label}
      why={field.why}
      value={field.read(document)}
      fault={problems.find((problem) => fieldAt([field], problem.pointer))?.sentence}
      onChange={(text) => change(field.write(document, text))}
    />
  )
  return (
    <Folded
      summary={whatOnlyProducerKnows}
      fault={problems.some((problem) => fieldAt(shown, problem.pointer) !== undefined)}
    >
      <SaveLine saved={saved} problems={problems.filter((problem) => !fieldAt(shown, problem.pointer))} />
      <p className="small">{emptyPrintsLine}</p>
      <div className="mt-4 grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-3">{FIELDS.map(control)}</div>
      {contacts.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the document
        <Fragment key={i}>
          <UndoAt taken={taken} at={`/callSheet/contacts/${i}`} />
          <div className="grid grid-cols-1 items-end gap-x-6 sm:grid-cols-[1fr_1fr_1fr_auto]">
            {contactFields(i).map(control)}
            <button
              type="button"
              className="textlink mb-4"
              onClick={() =>
                taken.act(
                  takenOut(asText(valueAt(document, `/callSheet/contacts/${i}/name`)) || contact(i + 1)),
                  removeAt(document, `/callSheet/contacts/${i}`),
                  `/callSheet/contacts/${i}`,
                )
              }
            >
              {takeOut}
            </button>
          </div>
        </Fragment>
      ))}
      <UndoAt taken={taken} at={`/callSheet/contacts/${contacts.length}`} />
      <button
        type="button"
        className="btn mt-2"
        onClick={() => change(setAt(document, '/callSheet/contacts', [...contacts, { name: '', phone: '' }]))}
      >
        {addContact}
      </button>
    </Folded>
  )
}
