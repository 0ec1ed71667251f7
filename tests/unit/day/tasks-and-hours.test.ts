import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { offeredTasks, takeTask } from '../../../lib/plan/offered-tasks'
import { parseShoot } from '../../../lib/plan/parse'
import { cleanDay } from './clean-day'
import { FOURTEEN, gardenDocument, gardenShoot } from './garden-shoot'
import { type Invented, syntheticForecast } from './synthetic-forecast'

type Part = Record<string, unknown>
const watch = (gardenDocument().tasks as Part[])[0] as Part
function lay(change: Part, invented: Partial<Invented> = {}) {
  const shoot = gardenShoot(change)
  const forecasts = new Map(
    shoot.cooks.map((c) => [c.id, syntheticForecast(c.id, { members: 64, seed: 1, ...invented })]),
  )
  const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 })
  return { layout, broken: checkLayout(shoot, layout, forecasts).map((v) => v.sentence) }
}
const at = (iso: string) => Date.parse(iso) / 60_000
const tasked = (extra: Part[], more: Part = {}) => lay({ tasks: [watch, ...extra], ...more })

describe('a task that takes a while', () => {
  const swap = { id: 'swap', title: 'Battery and card', from: 'meat-on', to: 'off-heat', needs: ['camera'] }
  it('is done once between its edges, when somebody is free', () => {
    const { layout, broken } = tasked([{ ...swap, takes: '5 min' }])
    const own = layout.tasks.filter((t) => t.id === 'swap')
    expect(own.map((t) => at(t.end) - at(t.start))).toEqual([5])
    expect(at(own[0]?.start ?? '')).toBeGreaterThanOrEqual(Math.floor(at(layout.start)))
    expect(broken).toEqual([])
  })
  it('comes again and again, once in each stretch, the first so long after its edge', () => {
    const { layout, broken } = tasked([{ ...swap, delay: '30 min', takes: '2 min', every: '30 min' }])
    const own = layout.tasks.filter((t) => t.id === 'swap')
    own.forEach((t, i) => {
      expect(at(t.start) - at(layout.start)).toBeGreaterThanOrEqual(30 * (i + 1) - 1)
      expect(at(t.end) - at(layout.start)).toBeLessThanOrEqual(30 * (i + 2) + 1)
    })
    expect(own.length).toBeGreaterThanOrEqual(3)
    expect(broken).toEqual([])
  })
  it('binds nobody who is in a shot', () => {
    const { layout } = tasked([{ ...swap, takes: '4 min', every: '20 min' }])
    for (const task of layout.tasks.filter((t) => t.id === 'swap'))
      for (const shot of layout.shots.filter((s) => s.people.some((p) => task.people.includes(p))))
        expect(at(task.end) <= at(shot.setupStart) || at(task.start) >= at(shot.end)).toBe(true)
  })
  it('is found missing, short or misplaced by the checker', () => {
    const fault = (change: (tasks: { id: string; start: string; end: string }[]) => void) => {
      const day = cleanDay()
      change(day.layout.tasks)
      return checkLayout(day.shoot, day.layout, day.forecasts).filter((v) => v.sentence.includes('vent-check'))
    }
    expect(fault(() => undefined)).toEqual([])
    const check = (tasks: { id: string }[]) => tasks.findIndex((t) => t.id === 'vent-check')
    expect(fault((tasks) => tasks.splice(check(tasks), 1))[0]?.sentence).toMatch(/^"vent-check" is not done between/)
    expect(
      fault((tasks) => Object.assign(tasks[check(tasks)] ?? {}, { end: '2027-05-15T18:35+01:00' }))[0]?.sentence,
    ).toMatch(/shorter than it takes/)
    expect(
      fault((tasks) =>
        Object.assign(tasks[check(tasks)] ?? {}, { start: '2027-05-15T17:00+01:00', end: '2027-05-15T17:02+01:00' }),
      )[0]?.sentence,
    ).toMatch(/outside its time/)
  })
})

describe('the tasks that are offered', () => {
  it('can all be taken: the day breaks no rule, and what cannot be staffed is told', () => {
    const day = { call: '12:00', wrap: '21:00' }
    const asked = gardenDocument({ day })
    const tasks = offeredTasks(asked).reduce(takeTask, asked).tasks as Part[]
    const { layout, broken } = lay({ day, tasks })
    expect(broken).toEqual([])
    const placed = new Set(layout.tasks.map((t) => t.id))
    for (const id of ['ash-watch', 'light-fire', 'vent-check', 'baste', 'camera-clocks', 'room-tone', 'two-copies'])
      expect(placed.has(id), id).toBe(true)
  })
})

describe('a fire', () => {
  it('that nobody stays with once the meat is off is told', () => {
    const left = lay({}).layout.conflicts.filter((c) => c.rule === 'fire-left')
    expect(left[0]?.sentence).toMatch(
      /^Nobody is named for the fire of "hero" once the meat is off it, until it is out\./,
    )
    const after = { id: 'ash-watch', title: 'Until it is out', from: 'off-heat', to: '20:00', needs: ['camera'] }
    const { layout, broken } = tasked([after])
    expect(layout.conflicts.filter((c) => c.rule === 'fire-left')).toEqual([])
    expect(broken).toEqual([])
  })
})

describe('people with hours of their own', () => {
  const overnight = {
    day: { call: '18:00', wrap: '12:00' },
    people: [
      { id: 'host', roles: ['presenter', 'cook'], hours: { to: '02:00' } },
      { id: 'cam-1', roles: ['camera'], hours: { to: '02:00' } },
      { id: 'night-cook', roles: ['cook', 'presenter'], hours: { from: '01:00' } },
      { id: 'cam-2', roles: ['camera', 'sound'], hours: { from: '01:00' } },
      { id: 'stylist', roles: ['stylist'] },
    ],
  }
  const night = lay({ ...overnight, shots: FOURTEEN.filter((s) => s.id !== 'turn') }, { toPull: 600, spread: 0.05 })
  it('are in no shot, task or meal outside them', () => {
    expect(night.broken).toEqual([])
    const two = at('2027-05-16T02:00+01:00')
    for (const { people, start, end } of [...night.layout.shots, ...night.layout.tasks, ...night.layout.meals]) {
      if (people.includes('cam-1')) expect(at(end)).toBeLessThanOrEqual(two)
      if (people.includes('cam-2')) expect(at(start)).toBeGreaterThanOrEqual(two - 60)
    }
  })
  it('hand the fire over to each other without a gap', () => {
    const shifts = night.layout.tasks.filter((t) => t.id === 'fire-watch')
    expect([...new Set(shifts.flatMap((t) => t.people))].sort()).toEqual(['host', 'night-cook'])
    for (let i = 1; i < shifts.length; i++) expect(shifts[i]?.start).toBe(shifts[i - 1]?.end)
  })
  it('are named as the reason where a moment comes when nobody is there', () => {
    const people = [
      { id: 'presenter', roles: ['presenter', 'cook'] },
      { id: 'cam-1', roles: ['camera'], hours: { to: '22:00' } },
      { id: 'stylist', roles: ['stylist'] },
    ]
    const { layout } = lay({ ...overnight, people }, { toPull: 600, spread: 0.05 })
    const pull = layout.dropped.find((d) => d.id === 'display')
    expect(pull?.why).toMatch(/^The pull comes likely at \d\d:\d\d, outside the hours of those who could shoot it\.$/)
  })
})

describe('what a task or a shift may not be', () => {
  const faults = (change: Part) => {
    const read = parseShoot(gardenDocument(change))
    return read.ok ? [] : read.problems.map((p) => `${p.pointer}: ${p.sentence}`)
  }
  it('is told at its field', () => {
    expect(faults({ tasks: [{ ...watch, takes: '10 s' }] })[0]).toMatch(/^\/tasks\/0\/takes: /)
    expect(faults({ tasks: [{ ...watch, every: 5 }] })[0]).toMatch(/^\/tasks\/0\/every: /)
    expect(faults({ people: [{ id: 'a', roles: ['camera'], hours: { from: 'noon' } }] })[0]).toMatch(
      /^\/people\/0\/hours\/from: /,
    )
  })
})
