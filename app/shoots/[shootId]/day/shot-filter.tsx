'use client'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt, peopleOf } from '@/lib/plan/sketch'
import { ofShots, shots, shotsOfWhichRoast, shotsWhere, show, whoseShots } from '../../../words/day'
import type { ShotRow } from './day-view'

export interface ShotFilter {
  readonly person: string
  readonly place: string
  readonly cook: string
}
export const EVERYTHING: ShotFilter = { person: '', place: '', cook: '' }
type Shot = { id: string; needs?: unknown; place?: unknown; cook?: unknown }

/** A person's shots are those they are laid out for, and those that ask for them or for one of their roles. */
export function shows(filter: ShotFilter, document: ShootDocument, shot: Shot, row: ShotRow | undefined): boolean {
  const { person, place, cook } = filter
  const firstCook = listAt<{ id: string }>(document, '/cooks')[0]?.id
  if (place && shot.place !== place) return false
  if (cook && (shot.cook ?? firstCook) !== cook) return false
  if (!person) return true
  if (row?.place) return row.peopleIds.includes(person)
  const roles = peopleOf(document).find(({ id }) => id === person)?.roles ?? []
  return Array.isArray(shot.needs) && shot.needs.some((need) => need === person || roles.includes(need))
}

export const placesOf = (document: ShootDocument): readonly string[] =>
  [
    ...new Set(
      listAt<Shot>(document, '/shots').flatMap(({ place }) => (typeof place === 'string' && place ? [place] : [])),
    ),
  ].sort()

interface FilterProps {
  readonly document: ShootDocument
  readonly filter: ShotFilter
  readonly onChange: (filter: ShotFilter) => void
  readonly shown: number
  readonly all: number
}

/** Whose shots, where, of which roast; a choice of one is none. */
export function FilterLine({ document, filter, onChange, shown, all }: FilterProps) {
  const choices = [
    ['person', whoseShots, 'everybody', peopleOf(document).map(({ id }) => id)],
    ['place', shotsWhere, 'every place', placesOf(document)],
    ['cook', shotsOfWhichRoast, 'every roast', listAt<{ id: string }>(document, '/cooks').map(({ id }) => id)],
  ] as const
  return (
    <div className="filter">
      <span aria-hidden="true">{show}</span>
      {choices.map(([key, label, none, options]) =>
        options.length < 2 ? null : (
          <select
            key={key}
            aria-label={label}
            className="cell-input"
            value={filter[key]}
            onChange={(event) => onChange({ ...filter, [key]: event.target.value })}
          >
            <option value="">{none}</option>
            {options.map((option) => (
              <option key={option} value={option}>
                {option}
              </option>
            ))}
          </select>
        ),
      )}
      <span className="small" role="status">
        {shown === all ? shots(all) : ofShots(shown, all)}
      </span>
    </div>
  )
}
