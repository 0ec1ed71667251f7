import { describe, expect, it } from 'vitest'
import { captureOf } from '../../../lib/day/capture'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import type { Layout } from '../../../lib/day/layout'
import type { Shoot } from '../../../lib/plan/shoot'
import { FOURTEEN, gardenShoot } from './garden-shoot'
import { type Invented, syntheticForecast } from './synthetic-forecast'

const forecastsFor = (shoot: Shoot, invented: Partial<Invented> = {}) =>
  new Map(shoot.cooks.map((c) => [c.id, syntheticForecast(c.id, { members: 256, seed: 1, ...invented })]))
function lay(change: Record<string, unknown> = {}, invented: Partial<Invented> = {}) {
  const shoot = gardenShoot(change)
  const forecasts = forecastsFor(shoot, invented)
  const layout = layOutDay(shoot, forecasts, { seed: 1 })
  return { shoot, forecasts, layout, broken: checkLayout(shoot, layout, forecasts).map((v) => v.sentence) }
}
const shotOf = (layout: Layout, id: string) => layout.shots.find((s) => s.id === id)
const clockOf = (iso: string | undefined) => iso?.slice(11, 16)
const minutesBetween = (a: string, b: string) => (Date.parse(b) - Date.parse(a)) / 60_000
const ONE_OPERATOR = {
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }],
}

describe('a laid-out day', () => {
  it('breaks no rule and drops nothing with a crew of four and fourteen shots', () => {
    const { layout, broken } = lay()
    expect(broken).toEqual([])
    expect(layout.dropped).toEqual([])
    expect(layout.shots).toHaveLength(14)
  })
  it('is the same to the byte for the same seed', () => {
    expect(JSON.stringify(lay().layout)).toBe(JSON.stringify(lay().layout))
  })
  it('puts the likely first slice at the wanted time', () => {
    const { layout } = lay()
    const call = layout.calls.find((c) => c.moment === 'first-slice')
    expect(Math.abs(minutesBetween(call?.window.likely ?? '', '2027-05-15T18:30+01:00'))).toBeLessThan(1)
  })
  it('shifts every time with the wanted slice, across a clock change too', () => {
    const summer = lay({ date: '2027-10-30', day: { slice: { at: '18:30' } } }).layout
    const winter = lay({ date: '2027-10-31', day: { slice: { at: '18:30' } } }).layout
    expect(winter.shots.map((s) => clockOf(s.start))).toEqual(summer.shots.map((s) => clockOf(s.start)))
    expect(winter.start.slice(16)).toBe('+00:00')
    expect(summer.start.slice(16)).toBe('+01:00')
  })
  it('starts as soon as fire and first setup allow where only a call is given', () => {
    const { layout, broken } = lay({ day: { call: '14:00', wrap: '20:00' } })
    expect(broken).toEqual([])
    expect(clockOf(layout.crewCall)).toBe('14:00')
    expect(minutesBetween(layout.crewCall, layout.start)).toBeLessThan(90)
  })
  it('slices in the light with the highest chance', () => {
    const { layout, broken } = lay({ day: { call: '12:00', slice: { in: 'golden-hour' } } })
    expect(broken).toEqual([])
    expect(layout.conflicts.filter((c) => c.rule === 'slice-wish')).toEqual([])
  })
  it('says so when the call is too late for the wanted slice, and by how much', () => {
    const { layout, broken } = lay({ day: { call: '17:00', slice: { at: '18:30' } } })
    expect(broken).toEqual([])
    expect(layout.conflicts.map((c) => c.sentence).join()).toMatch(/cannot come at 18:30.*Call the crew \d+ min sooner/)
  })
  it('feeds everybody twice on a long day, within six hours each time', () => {
    const { layout, broken } = lay({ day: { call: '07:00' } }, { toPull: 660, spread: 0.08 })
    expect(broken).toEqual([])
    expect(layout.meals).toHaveLength(2)
    expect(minutesBetween(layout.crewCall, layout.meals[0]?.start ?? '')).toBeLessThanOrEqual(360)
    expect(minutesBetween(layout.meals[0]?.end ?? '', layout.meals[1]?.start ?? '')).toBeLessThanOrEqual(360)
  })
  it('relieves the fire watcher at the meal when somebody else may watch', () => {
    const people = [
      { id: 'presenter', roles: ['presenter', 'cook'] },
      { id: 'cam-1', roles: ['camera'] },
      { id: 'cam-2', roles: ['camera'] },
      { id: 'stylist', roles: ['stylist', 'cook'] },
    ]
    const { layout, broken } = lay({ people, day: { call: '07:00' } }, { toPull: 500, spread: 0.1 })
    expect(broken).toEqual([])
    expect(new Set(layout.tasks.map((t) => t.id))).toEqual(new Set(['fire-watch']))
    for (let i = 1; i < layout.tasks.length; i++) expect(layout.tasks[i]?.start).toBe(layout.tasks[i - 1]?.end)
  })
})

describe('two moments and one operator', () => {
  it('gives the other camera one of two shots at the same instant', () => {
    const { layout } = lay()
    expect(shotOf(layout, 'probe')?.camera).not.toEqual(shotOf(layout, 'turn')?.camera)
    expect(shotOf(layout, 'probe')?.people[0]).not.toBe(shotOf(layout, 'turn')?.people[0])
  })
  it('drops the lesser one when there is no other camera, and a second operator would save it', () => {
    const { layout, broken } = lay(ONE_OPERATOR)
    expect(broken).toEqual([])
    expect(layout.dropped.map((d) => d.id).sort()).toEqual(['turn', 'vents'])
    expect(layout.dropped.map((d) => d.wouldSave)).toEqual([
      'A second operator with a camera.',
      'A second operator with a camera.',
    ])
    expect(layout.dropped[0]?.why).toMatch(/^In 100 cooks of 100 it comes while "/)
  })
  it('tells in plain words how often one comes while the other still holds the camera', () => {
    const { layout } = lay(ONE_OPERATOR)
    const told = layout.conflicts.find((c) => c.shots.includes('off'))
    expect(told?.sentence).toMatch(/^In \d cooks? of 100 off the heat comes while camera A is still on "The sear"\.$/)
    expect(layout.capture.each['hero/off-heat']).toBeLessThan(1)
  })
})

describe('what is dropped', () => {
  it('names who is short and the one change that would save it', () => {
    const details = Array.from({ length: 9 }, (_, i) => ({
      id: `detail-${i}`,
      title: `Detail ${i}`,
      free: true,
      setup: '8 min',
      roll: '22 min',
      needs: ['camera', 'stylist'],
      place: 'bench',
      priority: 'could',
    }))
    const { layout, broken } = lay({ shots: [...FOURTEEN, ...details], day: { call: '14:00', wrap: '18:30' } })
    expect(broken).toEqual([])
    expect(layout.dropped.length).toBeGreaterThan(0)
    for (const d of layout.dropped) {
      expect(d.id).toMatch(/^detail/)
      expect(d.why).toMatch(/stylist/)
      expect(d.wouldSave).not.toBe('')
    }
  })
  it('says that nobody here has the role', () => {
    const shoot = gardenShoot()
    const people = shoot.people?.filter((p) => p.id !== 'stylist')
    const layout = layOutDay({ ...shoot, people }, forecastsFor(shoot), { seed: 1 })
    const drop = layout.dropped.find((d) => d.id === 'beauty')
    expect(drop).toEqual({
      id: 'beauty',
      why: 'Nobody on this shoot is "stylist".',
      wouldSave: 'A person with the role "stylist".',
    })
  })
  it('gives a locked-off camera up for moments, and says which', () => {
    const wide = {
      id: 'wide',
      title: 'Locked off',
      from: 'meat-on',
      to: 'off-heat',
      locked: true,
      camera: 'B',
      setup: '8 min',
      priority: 'should',
    }
    const { layout, broken } = lay({ shots: [...FOURTEEN, wide] })
    expect(broken).toEqual([])
    expect(layout.dropped).toHaveLength(1)
    expect(layout.dropped[0]?.why).toMatch(/camera B has no/)
    expect(layout.dropped[0]?.wouldSave).toBe('A third camera for "Locked off".')
  })
  it('holds the named camera for a locked-off shot where there is a third', () => {
    const wide = {
      id: 'wide',
      title: 'Locked off',
      from: 'meat-on',
      to: 'off-heat',
      locked: true,
      camera: 'B',
      setup: '8 min',
      priority: 'should',
    }
    const { layout, broken } = lay({ shots: [...FOURTEEN, wide], cameras: [{ id: 'A' }, { id: 'B' }, { id: 'C' }] })
    expect(broken).toEqual([])
    expect(shotOf(layout, 'wide')?.camera).toEqual(['B'])
  })
})

describe('capture', () => {
  it('holds in an ensemble the layout has not seen, and the planned clock times alone do not', () => {
    const { shoot, layout } = lay()
    const fresh = captureOf(shoot, layout, forecastsFor(shoot, { members: 2000, seed: 9 }))
    for (const share of Object.values(fresh.each)) expect(share).toBeGreaterThanOrEqual(0.95)
    expect(fresh.joint).toBeGreaterThanOrEqual(0.9)
    expect(fresh.openLoop.joint).toBeLessThan(0.5)
  })
  it('falls when a trigger is set too hot', () => {
    const { shoot, layout, forecasts } = lay()
    const hotter = layout.calls.map((c) =>
      c.trigger && c.moment === 'pull' ? { ...c, trigger: { ...c.trigger, probe: 45.5 } } : c,
    )
    const capture = captureOf(shoot, { ...layout, calls: hotter }, forecasts)
    expect(capture.each['hero/pull']).toBeLessThan(0.5)
    expect(capture.each['hero/turn']).toBe(1)
  })
  it('falls when two moments share one camera and operator', () => {
    const { shoot, layout, forecasts } = lay()
    const turn = shotOf(layout, 'turn')
    const shots = layout.shots.map((s) =>
      s.id === 'probe' && turn ? { ...s, people: turn.people, camera: turn.camera } : s,
    )
    const capture = captureOf(shoot, { ...layout, shots }, forecasts)
    expect(Math.min(capture.each['hero/probe-in'] ?? 1, capture.each['hero/turn'] ?? 1)).toBe(0)
  })
  it('counts a moment that never comes as not captured', () => {
    const { shoot, layout, forecasts } = lay()
    const hero = forecasts.get('hero')
    if (!hero) throw new Error('no forecast')
    const cold = hero.moments['off-heat']?.map((t, m) => (m % 2 === 0 ? Number.POSITIVE_INFINITY : t))
    const never = new Map([['hero', { ...hero, moments: { ...hero.moments, 'off-heat': cold } }]])
    expect(captureOf(shoot, layout, never).each['hero/off-heat']).toBeCloseTo(0.5, 1)
  })
})
