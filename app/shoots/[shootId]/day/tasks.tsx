'use client'
import { removeAt, shotsOf } from '@/lib/plan/edit'
import { leaveTask, offeredTasks, takeTask } from '@/lib/plan/offered-tasks'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt } from '@/lib/plan/sketch'
import type { DayView } from './day-view'
import { Offers } from './offers'

interface TasksProps {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly act: (words: string, next: ShootDocument) => void
}

/** So many shifts are told one by one. */
const TOLD = 3
function shiftsOf(view: DayView | null, id: string): string {
  const shifts = (view?.tasks ?? []).filter((shift) => shift.id === id).map(({ words }) => words)
  const more = shifts.length > TOLD ? [`and ${shifts.length - TOLD} times more`] : []
  return [...shifts.slice(0, TOLD), ...more].join('; ')
}

/** What is done beside the shots, by whom and when, and what else fire, cameras and sound ask for. */
export function Tasks({ document, view, act }: TasksProps) {
  const tasks = listAt<{ id: string; title?: string }>(document, '/tasks')
  // The same thing may be on offer as a shot and as a task; one of them is enough.
  const shots = new Set(shotsOf(document).map(({ id }) => id))
  const offers = offeredTasks(document).filter(({ task }) => !shots.has(task.id))
  return (
    <section aria-label="Tasks" className="mt-8">
      <h2>Tasks</h2>
      {tasks.length === 0 && <p className="small">Nothing is asked of anybody beside the shots.</p>}
      <ul className="offers">
        {tasks.map((task, index) => (
          <li key={task.id}>
            <span>
              <b>{task.title ?? task.id}</b>
              <span className="small block">{shiftsOf(view, task.id)}</span>
            </span>
            <button
              type="button"
              className="btn quiet"
              aria-label={`Take out ${task.title ?? task.id}`}
              onClick={() => act(`${task.title ?? task.id} is taken out.`, removeAt(document, `/tasks/${index}`))}
            >
              Take out
            </button>
          </li>
        ))}
      </ul>
      <Offers
        title="Tasks that fire, cameras and sound ask for"
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
