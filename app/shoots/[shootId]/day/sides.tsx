'use client'
import type { ReactNode } from 'react'
import { addSide, removeSide, sidesOf } from '@/lib/plan/edit-sides'
import type { ShootDocument } from '@/lib/plan/shoot'
import { sideTaskIds } from '@/lib/plan/side-tasks'
import type { Problem } from '@/lib/refusals'
import { Folded } from '../../../ui/folded'
import {
  addSideWords,
  onOff,
  out,
  sideIsAdded,
  sidesCounted,
  sidesOnSameCooker,
  sideWords,
  take,
  thisSide,
} from '../../../words/day'
import { takenOut } from '../../../words/shared'
import { asText, type DocumentField } from '../../document-fields'
import type { Act } from '../../use-actions'
import type { DayView } from './day-view'
import { sideFields } from './side-fields'

interface SidesProps {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly problems: readonly Problem[]
  readonly control: (field: DocumentField) => ReactNode
  readonly act: Act
}

/** Dishes that share the fire: what they are, how long they take, and when they go on and come off. */
export function Sides({ document, view, problems, control, act }: SidesProps) {
  const sides = sidesOf(document)
  const summary = sides.length === 0 ? sidesOnSameCooker : sidesCounted(sides.length)
  return (
    <Folded summary={summary} fault={problems.some(({ pointer }) => pointer.startsWith('/sides'))}>
      {sides.map((side, index) => {
        const falls = fallsOf(view, side.id)
        return (
          <fieldset key={side.id} className="mt-2">
            <legend className="sr-only">{asText(side.title) || sideWords(index + 1)}</legend>
            <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-5">
              {sideFields(document, index).map(control)}
            </div>
            <p className="flex flex-wrap items-center gap-x-6 pb-2">
              {falls && <span className="small">{falls}</span>}
              <button
                type="button"
                className="textlink"
                onClick={() =>
                  act(takenOut(asText(side.title) || 'The side'), removeSide(document, index), `/sides/${index}`)
                }
              >
                {take} {asText(side.title) || thisSide} {out}
              </button>
            </p>
          </fieldset>
        )
      })}
      <p className="pb-2">
        <button type="button" className="btn" onClick={() => act(sideIsAdded, addSide(document))}>
          {addSideWords}
        </button>
      </p>
    </Folded>
  )
}

/** "On 20:04 to 20:05, stylist; off 21:00 to 21:01, stylist". */
function fallsOf(view: DayView | null, id: string): string {
  const { on, off } = sideTaskIds({ id })
  const words = (task: string) => view?.tasks.find((shift) => shift.id === task)?.words
  const [onto, from] = [words(on), words(off)]
  return onto && from ? onOff(onto, from) : ''
}
