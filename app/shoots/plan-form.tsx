'use client'
import type { ReactNode } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem, Warning } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import { Caution, Field } from '../ui/field'
import { Folded } from '../ui/folded'
import { cookPlan, folded } from '../words/plan'
import { cautionedAt, type DocumentField, type FieldGroup, fieldAt } from './document-fields'
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
  units: UnitSystem
  /** Stands between what decides most and what is folded away. */
  children?: ReactNode
}

/** The plan, field by field. Everything typed is kept, right or wrong. */
export function PlanForm({ document, onChange, problems, notes, gains, cookers, units, children }: PlanFormProps) {
  const groups = fieldGroups(document, { cookers, units })
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
        .filter((note) => cautionedAt(fields, note.path)?.key === field.key)
        .map((note) => (
          <Caution key={note.code}>{note.sentence}</Caution>
        ))}
    </Field>
  )
  const wrong = (group: FieldGroup) => group.fields.some((f) => problems.some((p) => owns(f, p.pointer)))
  const cautions = (group: FieldGroup) =>
    notes.filter((note) => group.fields.includes(cautionedAt(fields, note.path) as DocumentField)).length
  return (
    <form
      aria-label={cookPlan}
      className="[&_:is(input,select,summary)]:scroll-mt-24"
      onSubmit={(event) => event.preventDefault()}
    >
      {groups
        .filter(({ says }) => says === undefined)
        .map((group) => (
          <fieldset key={group.key} className="mt-4 border-0 p-0">
            <legend className="small">{group.title}</legend>
            {group.fields.map(control)}
          </fieldset>
        ))}
      {children}
      {groups
        .filter(({ says }) => says !== undefined)
        .map((group) => (
          <Folded key={group.key} summary={folded(group.title, group.says ?? '', cautions(group))} fault={wrong(group)}>
            {group.fields.map(control)}
          </Folded>
        ))}
    </form>
  )
}
