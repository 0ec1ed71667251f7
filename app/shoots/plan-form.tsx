'use client'
import { Fragment } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem, Warning } from '@/lib/refusals'
import { Caution, Field } from '../ui/field'
import { Folded } from '../ui/folded'
import { type DocumentField, fieldAt } from './document-fields'
import type { Gain } from './gains'
import { fieldGroups } from './plan-fields'
import type { RememberedCooker } from './remembered-field'

/** Faults that no field of the form owns; they are told at the top, with where they are. */
export function strayProblems(document: ShootDocument, problems: readonly Problem[]): readonly Problem[] {
  const fields = fieldGroups(document).flatMap((group) => group.fields)
  return problems.filter((problem) => !fieldAt(fields, problem.pointer))
}

interface PlanFormProps {
  document: ShootDocument
  onChange: (document: ShootDocument, key: string) => void
  problems: readonly Problem[]
  /** Warnings and cautions, each at its place in the document. */
  notes: readonly Warning[]
  /** What measuring would do, each under its field. */
  gains: readonly Gain[]
  cookers: readonly RememberedCooker[]
}

/** The plan, field by field. Everything typed is kept, right or wrong. */
export function PlanForm({ document, onChange, problems, notes, gains, cookers }: PlanFormProps) {
  const groups = fieldGroups(document, cookers)
  const fields = groups.flatMap((group) => group.fields)
  const owns = (field: DocumentField, pointer: string) => fieldAt(fields, pointer)?.key === field.key
  const control = (field: DocumentField) => (
    <Field
      key={field.key}
      label={field.label}
      why={field.why}
      type={field.type}
      options={field.options}
      suggestions={field.suggestions}
      value={field.read(document)}
      fault={problems.find((problem) => owns(field, problem.pointer))?.sentence}
      onChange={(text) => onChange(field.write(document, text), field.key)}
    >
      {gains
        .filter(({ cook, what }) => field.gain?.cook === cook && field.gain.what === what)
        .map(({ what, sentence }) => (
          <p key={what} className="small">
            {sentence}
          </p>
        ))}
      {notes
        .filter((note) => owns(field, note.path))
        .map((note) => (
          <Caution key={note.code}>{note.sentence}</Caution>
        ))}
    </Field>
  )
  return (
    <form aria-label="Cook plan" onSubmit={(event) => event.preventDefault()}>
      {groups.map((group) => (
        <Fragment key={group.title}>
          {group.folded ? (
            <Folded summary={group.title} fault={group.fields.some((f) => problems.some((p) => owns(f, p.pointer)))}>
              {group.fields.map(control)}
            </Folded>
          ) : (
            <fieldset className="mt-4 border-0 p-0">
              <legend className="small">{group.title}</legend>
              {group.fields.map(control)}
            </fieldset>
          )}
        </Fragment>
      ))}
    </form>
  )
}
