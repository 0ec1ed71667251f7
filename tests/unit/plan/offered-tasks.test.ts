import { describe, expect, test } from 'vitest'
import { removeAt, setAt } from '../../../lib/plan/edit'
import { leaveTask, offeredTasks, takeTask } from '../../../lib/plan/offered-tasks'
import { parseShoot } from '../../../lib/plan/parse'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { gardenDocument } from '../day/garden-shoot'
import { fixtureText } from './shoots'

const garden = (change = {}): ShootDocument => gardenDocument({ day: { call: '12:00', wrap: '22:00' }, ...change })
const idsOf = (document: ShootDocument) => offeredTasks(document).map(({ task }) => task.id)
const faults = (document: ShootDocument) => {
  const read = parseShoot(document)
  return read.ok ? [] : read.problems.map((p) => `${p.pointer}: ${p.sentence}`)
}
const wide = { id: 'wide', title: 'All of it', from: 'meat-on', to: 'off-heat', locked: true, camera: 'B' }

describe('tasks offered from the plan', () => {
  test('ask of a fire that it is lit, watched, looked at, and watched until it is out', () => {
    expect(idsOf(garden())).toEqual(
      expect.arrayContaining(['ash-watch', 'light-fire', 'vent-check', 'ash-bin', 'baste']),
    )
    expect(idsOf(garden())).not.toContain('fire-watch')
    expect(idsOf(garden({ tasks: [] }))).toContain('fire-watch')
  })
  test('ask nothing of a fire where there is none', () => {
    const oven = idsOf(setAt(removeAt(garden(), '/cooks/0/stages/2'), '/cooks/0/cooker', { kind: 'oven' }))
    for (const id of ['ash-watch', 'light-fire', 'vent-check', 'ash-bin']) expect(oven).not.toContain(id)
  })
  test('refuel when the plan says so', () => {
    const fed = setAt(garden(), '/cooks/0/cooker', {
      kind: 'kettle-charcoal',
      fuel: '2 kg',
      refuel: [{ at: '75 min', add: '600 g' }],
    })
    const refuel = offeredTasks(fed).find(({ task }) => task.id === 'refuel-1')
    expect(refuel?.task.delay).toBe('75 min')
    expect(refuel?.task.title).toBe('Add 600 g of fuel')
  })
  test('change battery and card of a locked-off camera every 90 min, and of no other', () => {
    const swaps = (document: ShootDocument) => offeredTasks(document).filter(({ task }) => task.id.startsWith('swap-'))
    expect(swaps(garden())).toEqual([])
    expect(swaps(garden({ shots: [wide] }))[0]?.task).toMatchObject({
      from: 'meat-on',
      to: 'off-heat',
      every: '90 min',
    })
  })
  test('ask only for roles that somebody holds', () => {
    const people = [{ id: 'alone', roles: ['presenter', 'camera'] }]
    expect(idsOf(garden({ people, tasks: [] }))).not.toContain('room-tone')
    expect(
      offeredTasks(garden({ people, tasks: [] })).find(({ task }) => task.id === 'fire-watch')?.task.needs,
    ).toEqual(['presenter'])
  })
  test('are valid when taken, all of them, and then no longer offered', () => {
    const all = offeredTasks(garden({ shots: [wide] })).reduce(takeTask, garden({ shots: [wide] }))
    expect(faults(all)).toEqual([])
    expect(idsOf(all)).toEqual([])
  })
  test('are not offered again once left', () => {
    const [first] = offeredTasks(garden())
    const left = first ? leaveTask(garden(), first) : garden()
    expect(faults(left)).toEqual([])
    expect(idsOf(left)).not.toContain(first?.task.id)
  })
  test('are valid without call, wrap or people too', () => {
    const bare = JSON.parse(fixtureText('minimal')) as ShootDocument
    expect(idsOf(bare)).toEqual([])
    const open = gardenDocument({ day: { slice: { at: '18:30' } } })
    expect(faults(offeredTasks(open).reduce(takeTask, open))).toEqual([])
  })
})
