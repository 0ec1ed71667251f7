'use client'
import { type ReactNode, useState } from 'react'
import { shotsOf } from '@/lib/plan/edit'
import { addTask, tasksOf } from '@/lib/plan/edit-tasks'
import { leaveTask, offeredTasks, takeTask } from '@/lib/plan/offered-tasks'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { newWriteId } from '../../../ui/send'
import { addTaskWords, noTasks, offeredTasksTitle, taskIsAdded, tasksWords, taskWords } from '../../../words/day'
import type { DocumentField } from '../../document-fields'
import type { Act } from '../../use-actions'
import type { DayView } from './day-view'
import { Offers } from './offers'
import { TASK_COLUMNS } from './task-fields'
import { TaskRow } from './task-row'

interface TasksProps {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly problems: readonly Problem[]
  readonly control: (field: DocumentField) => ReactNode
  readonly change: (next: ShootDocument) => void
  readonly act: Act
}

/** So many shifts are told one by one. */
const TOLD = 3
function shiftsOf(view: DayView | null, id: string): string {
  const shifts = (view?.tasks ?? []).filter((shift) => shift.id === id).map(({ words }) => words)
  const more = shifts.length > TOLD ? [`and ${shifts.length - TOLD} times more`] : []
  return [...shifts.slice(0, TOLD), ...more].join('; ')
}

/** What is done beside the shots, by whom and when, and what else fire, cameras and sound ask for. */
export function Tasks({ document, view, problems, control, change, act }: TasksProps) {
  const [open, setOpen] = useState<string | null>(null)
  const tasks = tasksOf(document)
  // The same thing may be on offer as a shot and as a task; one of them is enough.
  const shots = new Set(shotsOf(document).map(({ id }) => id))
  const offers = offeredTasks(document).filter(({ task }) => !shots.has(task.id))
  const addOne = () => {
    const id = `task-${newWriteId().slice(-6).toLowerCase()}`
    act(taskIsAdded, addTask(document, id))
    setOpen(id)
  }
  return (
    <section aria-label={tasksWords} className="mt-8">
      <div className="cols-head">
        <h2>{tasksWords}</h2>
        <button type="button" className="btn" onClick={addOne}>
          {addTaskWords}
        </button>
      </div>
      {tasks.length === 0 ? (
        <p className="small">{noTasks}</p>
      ) : (
        <table className="shots tasks">
          <thead>
            <tr>
              <th scope="col" className="name">
                {taskWords}
              </th>
              {TASK_COLUMNS.map((column) => (
                <th key={column} scope="col" className={`in ${column}`}>
                  {column}
                </th>
              ))}
              <td className="do" />
            </tr>
          </thead>
          <tbody>
            {tasks.map((task, index) => (
              <TaskRow
                key={task.id}
                document={document}
                index={index}
                falls={shiftsOf(view, task.id)}
                problems={problems.filter(({ pointer }) => `${pointer}/`.startsWith(`/tasks/${index}/`))}
                open={open === task.id}
                onOpen={(more) => setOpen(more ? task.id : null)}
                control={control}
                change={change}
                act={act}
              />
            ))}
          </tbody>
        </table>
      )}
      <Offers
        title={offeredTasksTitle}
        act={act}
        offers={offers.map((offer) => ({
          id: offer.task.id,
          title: offer.task.title,
          words: offer.why,
          taken: () => takeTask(document, offer),
          left: () => leaveTask(document, offer),
        }))}
      />
    </section>
  )
}
