'use client'
import { Fragment, useState } from 'react'
import { removeAt, removeShot, setAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Field } from '../../../ui/field'
import { Folded } from '../../../ui/folded'
import { newWriteId } from '../../../ui/send'
import { type DocumentField, fieldAt } from '../../document-fields'
import { SaveLine } from '../../save-line'
import { useSaved } from '../../use-saved'
import { Offers } from './offers'
import { addPerson, crewFields, freshShot, peopleOf, shotFields } from './shot-fields'

/** What the layout says of one shot, in words; made on the server. */
export interface ShotRow {
  readonly id: string
  readonly number: number
  readonly kind: 'moment' | 'free' | 'drop'
  readonly likely: string
  readonly camera: string
  readonly people: string
  readonly standby: string
  readonly window: string
  readonly tentative: boolean
}
interface DayDeskProps {
  shootId: string
  version: number
  document: ShootDocument
  rows: readonly ShotRow[]
}

const shotsOf = (document: ShootDocument) => (document.shots as { id: string; title?: string }[] | undefined) ?? []

/** Shots under the heat line, edited where they stand; every change is saved and the day is laid out anew. */
export function DayDesk({ shootId, version, document: written, rows }: DayDeskProps) {
  const saved = useSaved(shootId, version, written)
  const { document, change, problems } = saved
  const [open, setOpen] = useState<string | null>(null)
  const cameras = ((document.cameras as { id: string }[] | undefined) ?? []).map((camera) => camera.id)
  const shots = shotsOf(document)
  const control = (field: DocumentField) => (
    <Field
      key={field.key}
      label={field.label}
      why={field.why}
      options={field.options}
      value={field.read(document)}
      fault={problems.find((problem) => fieldAt([field], problem.pointer))?.sentence}
      onChange={(text) => change(field.write(document, text))}
    />
  )
  const openIndex = shots.findIndex((shot) => shot.id === open)
  const shownFields = [...(openIndex < 0 ? [] : shotFields(document, openIndex, cameras)), ...crewFields(document)]
  const crewFaults = problems.some((problem) => fieldAt(crewFields(document), problem.pointer))
  /** The sentence, and in which shot: its fields may be folded away. */
  const strays = problems
    .filter((problem) => !fieldAt(shownFields, problem.pointer))
    .map((problem) => {
      const title = shots[Number(/^\/shots\/(\d+)/.exec(problem.pointer)?.[1] ?? -1)]?.title
      return title ? { ...problem, sentence: `${title}: ${problem.sentence}` } : problem
    })
  function addShot() {
    const id = `shot-${newWriteId().slice(-6).toLowerCase()}`
    change(setAt(document, '/shots', [...shots, freshShot(id)]))
    setOpen(id)
  }
  const order = [
    ...rows.map((row) => row.id),
    ...shots.map((shot) => shot.id).filter((id) => !rows.some((row) => row.id === id)),
  ]
  return (
    <section aria-label="Shots">
      <div className="cols-head">
        <h2>Shots</h2>
        <button type="button" className="btn" onClick={addShot}>
          Add a shot
        </button>
      </div>
      <SaveLine saved={saved} problems={strays} />
      <div className="scroll-x">
        <table className="stacks mt-2">
          <thead>
            <tr>
              <th scope="col">no.</th>
              <th scope="col">shot</th>
              <th scope="col" className="text-right">
                likely
              </th>
              <th scope="col">camera</th>
              <th scope="col">with</th>
              <th scope="col">stand by at</th>
              <th scope="col">early to late</th>
            </tr>
          </thead>
          <tbody>
            {order.map((id) => {
              const index = shots.findIndex((shot) => shot.id === id)
              if (index < 0) return null
              const row = rows.find((r) => r.id === id)
              const title = shots[index]?.title
              return (
                <Fragment key={id}>
                  <tr className={row?.kind ?? 'free'}>
                    <td className="time">{row?.number ?? index + 1}</td>
                    <td>
                      <button
                        type="button"
                        className="textlink struck text-left"
                        aria-expanded={open === id}
                        onClick={() => setOpen(open === id ? null : id)}
                      >
                        {title || 'Untitled shot'}
                      </button>
                      {row?.tentative && <span className="small"> (tentative)</span>}
                      {row?.kind === 'drop' && <span className="small"> dropped</span>}
                    </td>
                    <td className="time text-right">{row?.likely}</td>
                    <td data-label="camera">{row?.camera}</td>
                    <td data-label="with">{row?.people}</td>
                    <td data-label="stand by at">{row?.standby}</td>
                    <td className="win" data-label="early to late">
                      {row?.window}
                    </td>
                  </tr>
                  {open === id && (
                    <tr>
                      <td colSpan={7}>
                        <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-3">
                          {shotFields(document, index, cameras).map(control)}
                        </div>
                        <button
                          type="button"
                          className="textlink"
                          onClick={() => {
                            setOpen(null)
                            change(removeShot(document, id))
                          }}
                        >
                          Take this shot out
                        </button>
                      </td>
                    </tr>
                  )}
                </Fragment>
              )
            })}
          </tbody>
        </table>
      </div>
      <p className="small mt-2">A bar at the left edge marks a shot that happens once. Choose a shot to change it.</p>
      <Offers document={document} change={change} />
      <Folded summary="The crew" fault={crewFaults}>
        <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2">{crewFields(document).map(control)}</div>
        <p className="mt-2 flex flex-wrap gap-x-6 gap-y-2">
          <button type="button" className="btn" onClick={() => change(addPerson(document))}>
            Add a person
          </button>
          {peopleOf(document).map((person, i) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: a name may stand there twice while it is typed
              key={i}
              type="button"
              className="textlink"
              onClick={() => change(removeAt(document, `/people/${i}`))}
            >
              Take out {person.id}
            </button>
          ))}
        </p>
      </Folded>
    </section>
  )
}
