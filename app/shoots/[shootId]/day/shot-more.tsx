'use client'
import type { ReactNode } from 'react'
import { typedClock } from '@/lib/plan/as-read'
import { removeShot, shotsOf } from '@/lib/plan/edit'
import { canPin, canSplit, duplicateShot, pinShot, splitShot } from '@/lib/plan/edit-shots'
import type { ShootDocument } from '@/lib/plan/shoot'
import {
  duplicate,
  isFreeAgain,
  isPinnedAt,
  letGoOfItsTime,
  pinAt,
  splitInTwo,
  takeThisShotOut,
  untitledShot,
} from '../../../words/day'
import { takenOut } from '../../../words/shared'
import type { DocumentField } from '../../document-fields'
import type { Act } from '../../use-actions'
import type { ShotRow } from './day-view'
import { isBelow, isInTable, shotFields } from './shot-fields'

interface MoreProps {
  readonly document: ShootDocument
  readonly index: number
  readonly row: ShotRow | undefined
  readonly cameras: readonly string[]
  readonly control: (field: DocumentField) => ReactNode
  readonly act: Act
  readonly onGone: () => void
}

/** All that a shot says, and what can be done with it as a whole. */
export function ShotMore({ document, index, row, cameras, control, act, onGone }: MoreProps) {
  const shot = shotsOf(document)[index]
  if (!shot) return null
  const title = typeof shot.title === 'string' && shot.title ? shot.title : untitledShot
  const pinned = shot.pin !== undefined
  const clock = row?.likely ?? ''
  return (
    <tr className="shot-more">
      <td colSpan={11}>
        <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-4">
          {shotFields(document, index, cameras)
            .filter(isBelow)
            .map((field) => (
              <div key={field.key} className={isInTable(field) ? 'when-narrow' : undefined}>
                {control(field)}
              </div>
            ))}
        </div>
        <p className="flex flex-wrap gap-3 pb-3">
          {canPin(shot) && (pinned || clock !== '') && (
            <button
              type="button"
              className="btn"
              onClick={() =>
                pinned
                  ? act(isFreeAgain(title), pinShot(document, shot.id, null))
                  : act(isPinnedAt(title, clock), pinShot(document, shot.id, typedClock(clock)))
              }
            >
              {pinned ? letGoOfItsTime : pinAt(clock)}
            </button>
          )}
          {canSplit(shot) && (
            <button
              type="button"
              className="btn"
              onClick={() => act(`${title} is two shots.`, splitShot(document, shot.id))}
            >
              {splitInTwo}
            </button>
          )}
          <button
            type="button"
            className="btn"
            onClick={() => act(`${title} is there twice.`, duplicateShot(document, shot.id))}
          >
            {duplicate}
          </button>
          <button
            type="button"
            className="btn"
            onClick={() => {
              onGone()
              act(takenOut(title), removeShot(document, shot.id), `/shots/${index}`)
            }}
          >
            {takeThisShotOut}
          </button>
        </p>
      </td>
    </tr>
  )
}
