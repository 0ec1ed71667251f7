import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { at, type CleanDay, cleanDay } from './clean-day'

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}\+01:00$/
/** Every time in the layout moved by so many minutes; Dublin keeps its summer offset for weeks on both sides. */
function shifted<T>(value: T, minutes: number): T {
  if (typeof value === 'string' && ISO.test(value)) {
    const local = new Date(Date.parse(value) + (minutes + 60) * 60_000).toISOString().slice(0, 16)
    return `${local}+01:00` as T
  }
  if (Array.isArray(value)) return value.map((v) => shifted(v, minutes)) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, shifted(v, minutes)])) as T
}
/** The clean day without anything that ties it to the clock or the sun. */
function untied(): CleanDay {
  const day = cleanDay()
  day.shoot.day = {}
  day.shoot.tasks = day.shoot.tasks?.filter((t) => t.id !== 'plates') ?? []
  day.layout.tasks = day.layout.tasks.filter((t) => t.id !== 'plates')
  for (const shot of day.shoot.shots ?? []) delete shot.light
  return day
}

describe('the checker', () => {
  it('finds nothing on a clean day, with forecasts and without', () => {
    const { shoot, layout, forecasts } = cleanDay()
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
    expect(checkLayout(shoot, layout)).toEqual([])
  })
  it('finds nothing on a clean day that is moved as a whole', () => {
    const day = untied()
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (minutes) => {
        expect(checkLayout(day.shoot, shifted(day.layout, minutes), day.forecasts)).toEqual([])
      }),
      { numRuns: 60 },
    )
  })
  it('finds something when one shot is moved alone by an hour or more', () => {
    const day = untied()
    const bound = day.layout.shots.filter((s) => day.shoot.shots?.some((a) => a.id === s.id && (a.at || a.locked)))
    fc.assert(
      fc.property(
        fc.constantFrom(...bound),
        fc.integer({ min: 60, max: 900 }),
        fc.boolean(),
        (shot, minutes, sooner) => {
          const shots = day.layout.shots.map((s) => (s === shot ? shifted(s, sooner ? -minutes : minutes) : s))
          expect(checkLayout(day.shoot, { ...day.layout, shots }, day.forecasts)).not.toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })
  it('lets a slice miss its light where a conflict says so', () => {
    const { shoot, layout, forecasts } = cleanDay()
    shoot.day = { ...shoot.day, slice: { at: '19:30' } }
    expect(checkLayout(shoot, layout, forecasts).map((v) => v.rule)).toEqual(['slice-missed'])
    layout.conflicts.push({ sentence: 'The slice comes later.', shots: [], people: [], rule: 'slice' })
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
  })
  it('takes a clock time before the call as the next day, and of a doubled hour the first', () => {
    const { shoot, layout, forecasts } = cleanDay()
    shoot.day = { ...shoot.day, wrap: '01:00' }
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
    layout.wrap = '2027-05-16T01:30+01:00'
    expect(checkLayout(shoot, layout, forecasts).map((v) => v.rule)).toContain('wrap-late')
  })
  it('asks no setup of a shot whose camera stands ready since another moment there, but of one that moves', () => {
    const { shoot, layout, forecasts } = cleanDay()
    const sear = shoot.shots?.find((s) => s.id === 'sear')
    if (sear) sear.place = 'table'
    expect(checkLayout(shoot, layout, forecasts).map((v) => v.rule)).toContain('setup-short')
  })
  it('lets the presenter serve two moments at the cooker at once, and no camera operator', () => {
    const day = cleanDay()
    const probe = day.layout.shots.find((s) => s.id === 'probe')
    const asked = day.shoot.shots?.find((s) => s.id === 'probe')
    const call = day.layout.calls.find((c) => c.for === 'probe')
    if (!probe || !asked || !call) throw new Error('the clean day has changed')
    day.shoot.shots?.push({ ...asked, id: 'probe-hands' })
    day.layout.shots.push({ ...probe, id: 'probe-hands', people: ['cam-2', 'presenter'], camera: ['C'] })
    day.layout.calls.push({ ...call, id: 'call-hands', for: 'probe-hands', people: ['cam-2', 'presenter'] })
    day.shoot.cameras?.push({ id: 'C' })
    expect(checkLayout(day.shoot, day.layout, day.forecasts)).toEqual([])
    day.layout.shots.at(-1)?.people.splice(0, 1, 'cam-1')
    expect(checkLayout(day.shoot, day.layout, day.forecasts).map((v) => v.rule)).toContain('person-in-two-places')
  })
  it('finds a shot with the lid shut while it is off for the probe, filmed or not', () => {
    const { shoot, layout, forecasts } = cleanDay()
    const smoke = layout.shots.find((s) => s.id === 'smoke')
    Object.assign(smoke ?? {}, { setupStart: at('18:58'), start: at('19:03'), end: at('19:08'), people: ['cam-2'] })
    layout.shots = layout.shots.filter((s) => s.id !== 'probe')
    expect(checkLayout(shoot, layout, forecasts).map((v) => v.rule)).toContain('lid-conflict')
  })
  it('lets a must stand in the window of a moment that it comes after by its own asking', () => {
    const { shoot, layout, forecasts } = cleanDay()
    Object.assign(shoot.shots?.find((s) => s.id === 'beauty') ?? {}, { priority: 'must' })
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
  })
  it("shares the plan's schema and the layout's shape with the scheduler, the sun, and nothing else of it", () => {
    const folder = new URL('../../../lib/day/', import.meta.url)
    const files = ['check.ts', ...readdirSync(new URL('check/', folder)).map((name) => `check/${name}`)]
    const imported = files.flatMap((file) => {
      const text = readFileSync(new URL(file, folder), 'utf8')
      return [...text.matchAll(/from '([^']+)'/g)].map(
        ([, path]) => new URL(path as string, new URL(file, folder)).pathname,
      )
    })
    const fromDay = imported.filter((path) => path.includes('/lib/day/') && !/\/lib\/day\/check(\/|$)/.test(path))
    expect([...new Set(fromDay.map((path) => path.replace(/.*\/lib\//, '')))].sort()).toEqual([
      'day/day-forecast',
      'day/layout',
      'day/sun',
    ])
  })
})
