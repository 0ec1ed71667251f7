import { describe, expect, test } from 'vitest'
import { renamePerson } from '../../../lib/plan/edit-people'
import { addTask, tasksOf } from '../../../lib/plan/edit-tasks'

const shoot = {
  people: [
    { id: 'anna', roles: ['presenter', 'cook'] },
    { id: 'ben', roles: ['camera'] },
  ],
  shots: [
    { id: 'gate', needs: ['anna', 'camera'] },
    { id: 'wide', needs: ['ben'] },
  ],
  tasks: [{ id: 'watch', needs: ['anna'] }],
}
const needs = (document: Record<string, unknown>) =>
  [document.shots, document.tasks].flatMap((list) => (list as { needs: string[] }[]).map((each) => each.needs.join()))

describe('a person renamed', () => {
  test('is renamed in what shots, tasks and sides need', () => {
    const after = renamePerson(shoot, 0, 'anna', 'hannah')
    expect(needs(after)).toEqual(['hannah,camera', 'ben', 'hannah'])
    const sides = [{ id: 'potatoes', needs: ['anna'] }]
    expect(renamePerson({ ...shoot, sides }, 0, 'anna', 'hannah').sides).toEqual([
      { id: 'potatoes', needs: ['hannah'] },
    ])
  })
  test('keeps the last name that was nobody else’s while the new one is empty, a role or taken', () => {
    for (const unclear of ['', 'camera', 'ben']) {
      const between = renamePerson(shoot, 0, 'anna', unclear)
      expect(needs(between)).toEqual(needs(shoot))
      expect(needs(renamePerson(between, 0, 'anna', 'hannah'))).toEqual(['hannah,camera', 'ben', 'hannah'])
    }
  })
  test('takes no role along that has the same name', () => {
    const roles = { ...shoot, people: [{ id: 'camera', roles: ['presenter'] }, shoot.people[1]] }
    expect(needs(renamePerson(roles, 0, 'camera', 'hannah'))).toEqual(needs(shoot))
  })
})

test('a new task is for somebody who is there', () => {
  expect(tasksOf(addTask(shoot, 'task-1')).at(-1)).toMatchObject({ id: 'task-1', needs: ['cook'], takes: '5 min' })
  const filming = { people: [{ id: 'ben', roles: ['camera'] }] }
  expect(tasksOf(addTask(filming, 'task-1'))).toMatchObject([{ needs: ['camera'] }])
})
