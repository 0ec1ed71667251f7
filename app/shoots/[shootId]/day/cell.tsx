'use client'
import { useId } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Fault } from '../../../ui/fault'
import type { DocumentField } from '../../document-fields'

interface CellProps {
  readonly field: DocumentField
  readonly document: ShootDocument
  readonly fault?: string | undefined
  readonly list?: string
  readonly onChange: (next: ShootDocument) => void
}

/** A field inside the table: its column names it, the sentence about a fault stands under it. */
export function Cell({ field, document, fault, list, onChange }: CellProps) {
  const id = useId()
  const value = field.read(document)
  const shared = {
    className: 'cell-input',
    'aria-label': field.label,
    'aria-invalid': fault ? true : undefined,
    'aria-describedby': fault ? `${id}-fault` : undefined,
    value,
    onChange: (event: { target: { value: string } }) => onChange(field.write(document, event.target.value)),
  }
  const unlisted = field.options && !field.options.some(([option]) => option === value)
  return (
    <div className={fault ? 'cell wrong' : 'cell'}>
      {field.options ? (
        <select {...shared}>
          {unlisted && <option value={value}>{value}</option>}
          {field.options.map(([option, words]) => (
            <option key={option} value={option}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input {...shared} autoComplete="off" list={list} />
      )}
      <Fault id={`${id}-fault`}>{fault}</Fault>
    </div>
  )
}
