'use client'
import { type ReactNode, useId } from 'react'
import { asRead } from '@/lib/plan/as-read'
import { Fault } from './fault'
import { useReadersWay } from './reader'

interface FieldProps {
  label: string
  value: string
  onChange: (text: string) => void
  why?: string
  fault?: string
  options?: readonly (readonly [value: string, words: string])[]
  suggestions?: readonly string[]
  type?: 'text' | 'date'
  children?: ReactNode
}

/** Label, value with its unit, why it matters; the sentence about a fault stands under the field it is about. */
export function Field({
  label,
  value,
  onChange,
  why,
  fault,
  options,
  suggestions,
  type = 'text',
  children,
}: FieldProps) {
  const id = useId()
  const way = useReadersWay()
  const described = [why && `${id}-why`, fault && `${id}-fault`].filter(Boolean).join(' ') || undefined
  /** What a file says and the list does not know is shown as it is, never as the first of the list. */
  const unlisted = options && !options.some(([option]) => option === value)
  const shared = {
    id,
    value,
    'aria-invalid': fault ? true : undefined,
    'aria-describedby': described,
  }
  return (
    <div className={fault ? 'field wrong' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {options ? (
        <select {...shared} onChange={(e) => onChange(e.target.value)}>
          {unlisted && <option value={value}>{value}</option>}
          {options.map(([option, words]) => (
            <option key={option} value={option}>
              {asRead(words, way)}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type={type}
          autoComplete="off"
          list={suggestions ? `${id}-list` : undefined}
          onChange={(e) => onChange(e.target.value)}
        />
      )}
      {suggestions && (
        <datalist id={`${id}-list`}>
          {suggestions.map((text) => (
            <option key={text} value={text} />
          ))}
        </datalist>
      )}
      <Fault id={`${id}-fault`}>{fault}</Fault>
      {why && (
        <span className="why" id={`${id}-why`}>
          {asRead(why, way)}
        </span>
      )}
      {children}
    </div>
  )
}

export const Caution = ({ children }: { children: ReactNode }) => (
  <p className="caution">
    <span>{children}</span>
  </p>
)
