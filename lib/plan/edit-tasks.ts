import { setAt } from './edit'
import type { ShootDocument } from './shoot'
import { listAt, peopleOf } from './sketch'

export type TaskEntry = { readonly id: string; readonly title?: unknown; readonly [key: string]: unknown }
export const tasksOf = (document: ShootDocument): readonly TaskEntry[] => listAt<TaskEntry>(document, '/tasks')

/** Five minutes of somebody's hands while it cooks; what it is and when is then written. */
export function addTask(document: ShootDocument, id: string): ShootDocument {
  const held = peopleOf(document).flatMap(({ roles }) => roles)
  const role = ['cook', 'presenter', 'camera'].find((each) => held.includes(each)) ?? held[0] ?? 'cook'
  const task = { id, title: 'New task', from: 'meat-on', to: 'pull', takes: '5 min', needs: [role] }
  return setAt(document, '/tasks', [...tasksOf(document), task])
}
