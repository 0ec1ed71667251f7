'use client'
import type { ReactNode } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { Folded } from '../../../ui/folded'
import { daysHours } from '../../../words/day'
import { dayFields } from '../../day-fields'
import { type DocumentField, fieldAt } from '../../document-fields'
import type { Act } from '../../use-actions'
import { Crew } from './crew'
import type { DayView } from './day-view'
import { OfferedShots } from './offered-shots'
import { crewFields } from './shot-fields'
import { Sides } from './sides'
import { Tasks } from './tasks'
import { WhatIf } from './what-if'

interface RestProps {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly problems: readonly Problem[]
  readonly control: (field: DocumentField) => ReactNode
  readonly change: (next: ShootDocument) => void
  readonly act: Act
}
/** What stands round the shots: tasks, sides, hours, people, and what might come. */
export function RestOfDay({ document, view, problems, control, change, act }: RestProps) {
  const hours = dayFields(document)
  return (
    <>
      <OfferedShots document={document} act={act} />
      <Tasks document={document} view={view} problems={problems} control={control} change={change} act={act} />
      <Sides document={document} view={view} problems={problems} control={control} act={act} />
      <Folded summary={daysHours} fault={problems.some(({ pointer }) => fieldAt(hours, pointer))}>
        <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-4">{hours.map(control)}</div>
      </Folded>
      <Crew
        document={document}
        faulty={problems.some(({ pointer }) => fieldAt(crewFields(document), pointer))}
        control={control}
        act={act}
      />
      {view && <WhatIf document={document} act={act} />}
    </>
  )
}
