'use client'
import { Fragment, type ReactNode, useState } from 'react'
import { shotsOf } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { howToMoveCookByKeys, howToPinByKeys, no, noShots, shotHead, whenItFalls } from '../../../words/day'
import type { DocumentField } from '../../document-fields'
import type { Act } from '../../use-actions'
import type { DayAxis, DayView } from './day-view'
import { COLUMNS } from './shot-cells'
import { EVERYTHING, FilterLine, placesOf, shows } from './shot-filter'
import { ShotMore } from './shot-more'
import { ShotRow } from './shot-row'
import { TrackHead } from './shot-track'

interface TableProps {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly axis: DayAxis | null
  readonly problems: readonly Problem[]
  readonly cameras: readonly string[]
  readonly open: string | null
  readonly onOpen: (id: string | null) => void
  readonly control: (field: DocumentField) => ReactNode
  readonly change: (next: ShootDocument) => void
  readonly act: Act
  readonly attempt: (next: ShootDocument | null) => void
}

/** One row a shot, in the order of the day: written in its cells, moved along its track. */
export function ShotTable(props: TableProps) {
  const { document, view, axis, problems, open, onOpen } = props
  const [filter, setFilter] = useState(EVERYTHING)
  const shots = shotsOf(document)
  const rowOf = (id: string) => view?.rows.find((row) => row.id === id)
  const laid = view?.rows.map(({ id }) => id) ?? []
  const order = [...laid, ...shots.map(({ id }) => id).filter((id) => !laid.includes(id))]
  const listed = order.flatMap((id) => {
    const index = shots.findIndex((shot) => shot.id === id)
    const shot = shots[index]
    // What is being changed does not vanish under the fingers.
    return shot && (open === id || shows(filter, document, shot, rowOf(id))) ? [{ id, index }] : []
  })
  if (shots.length === 0) return <p className="small mt-2">{noShots}</p>
  return (
    <>
      <FilterLine document={document} filter={filter} onChange={setFilter} shown={listed.length} all={shots.length} />
      <datalist id="places">
        {placesOf(document).map((place) => (
          <option key={place} value={place} />
        ))}
      </datalist>
      <p id="how-pin" className="sr-only">
        {howToPinByKeys}
      </p>
      <p id="how-wish" className="sr-only">
        {howToMoveCookByKeys}
      </p>
      <table className="shots">
        <thead>
          <tr>
            <th scope="col" className="no">
              {no}
            </th>
            <th scope="col" className="name">
              {shotHead}
            </th>
            <th scope="col" className="on-axis">
              {axis && <TrackHead axis={axis} />}
              <span className="sr-only">{whenItFalls}</span>
            </th>
            {COLUMNS.map((column) => (
              <th key={column} scope="col" className={`in ${column.replace(' ', '-')}`}>
                {column}
              </th>
            ))}
            <td className="do" />
          </tr>
        </thead>
        <tbody>
          {listed.map(({ id, index }) => {
            const own = problems.filter(
              ({ pointer }) => pointer.startsWith(`/shots/${index}/`) || pointer === `/shots/${index}`,
            )
            const more = open === id
            return (
              <Fragment key={id}>
                <ShotRow
                  document={document}
                  index={index}
                  row={rowOf(id)}
                  axis={axis}
                  slice={view?.slice ?? null}
                  problems={own}
                  open={more}
                  onOpen={() => onOpen(more ? null : id)}
                  change={props.change}
                  act={props.act}
                  attempt={props.attempt}
                />
                {more && (
                  <ShotMore
                    document={document}
                    index={index}
                    row={rowOf(id)}
                    cameras={props.cameras}
                    control={props.control}
                    act={props.act}
                    onGone={() => onOpen(null)}
                  />
                )}
              </Fragment>
            )
          })}
        </tbody>
      </table>
    </>
  )
}
