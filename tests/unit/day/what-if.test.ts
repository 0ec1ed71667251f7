import { describe, expect, it } from 'vitest'
import { compare, type WholeDay } from '../../../lib/day/compare-days'
import { holdLimit } from '../../../lib/day/hold-limit'
import { layOutDay } from '../../../lib/day/lay-out'
import { type RunDay, whatIf } from '../../../lib/day/what-if'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { laterClock } from '../../../lib/plan/clock-text'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { withChange, worseWeather } from '../../../lib/plan/day-changes'
import { parseShoot } from '../../../lib/plan/parse'
import type { Shoot, ShootDocument } from '../../../lib/plan/shoot'
import { gardenDocument } from './garden-shoot'

const run: RunDay = (shoot: Shoot) => {
  const forecasts = new Map(
    shoot.cooks.map((c) => [c.id, forecastCook(toCookPlan(shoot, c), { seed: 1, members: 48 })]),
  )
  return { forecasts, layout: layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 }) }
}
function dayOf(document: ShootDocument): WholeDay {
  const read = parseShoot(document)
  if (!read.ok) throw new Error(read.problems.map((p) => p.sentence).join())
  return { document, shoot: read.value, ...run(read.value) }
}
const today = dayOf(gardenDocument({ day: { call: '12:00', wrap: '21:00' }, weather: { air: '14 °C', wind: '2 m/s' } }))
const stagesOf = (document: ShootDocument) =>
  (document.cooks as { stages: { do: string; in?: string; until?: unknown }[] }[])[0]?.stages ?? []
const likely = (day: WholeDay | null) =>
  Date.parse(day?.layout.calls.find((c) => c.moment === 'first-slice')?.window.likely ?? '')

describe('what if the crew is late', () => {
  it('begins what began with the call when they are there', () => {
    const charcoal = { id: 'charcoal', between: ['12:00', 'fire-lit'] }
    const document = { day: { call: '12:00' }, shots: [charcoal], tasks: [{ id: 'ice', from: '12:20', to: '15:00' }] }
    const late = withChange(document, { kind: 'crew-late', minutes: 30 }, '12:00')
    expect(late).toMatchObject({
      day: { call: '12:30' },
      shots: [{ between: ['12:30', 'fire-lit'] }],
      tasks: [{ from: '12:30', to: '15:00' }],
    })
  })
  const late = whatIf(today, { kind: 'crew-late', minutes: 90 }, run)
  it('moves the call, and the slice with it where nothing is wished', () => {
    expect(late.document.day).toEqual({ call: '13:30', wrap: '21:00' })
    const laterMin = (likely(late.day) - likely(today)) / 60_000
    expect(laterMin).toBeGreaterThan(60)
    expect(late.lines[0]).toMatch(/^First slice \d\d:\d\d \(.*\), \d+ min later than today\.$/)
  })
  it('is told in six lines at most, and costs what it loses', () => {
    if (late.lost.length > late.gained.length) expect(late.price).toBeGreaterThan(0)
    expect(late.lines.length).toBeLessThanOrEqual(6)
  })
  it('says at once where it cannot be had', () => {
    const asked = dayOf(gardenDocument({ day: { call: '12:00', wrap: '21:00', slice: { at: '18:30' } } }))
    const tried = whatIf(asked, { kind: 'crew-late', minutes: 400 }, run)
    expect(tried.day).toBeNull()
    expect(tried.problems[0]?.pointer).toBe('/day/slice/at')
    expect(tried.lines[0]).toMatch(/first slice at 18:30/)
  })
})

describe('what if the weather turns', () => {
  it('rains on the cooker: the sear comes later, or is given up', () => {
    const tried = whatIf(today, { kind: 'weather', rain: 'heavy' }, run)
    expect(tried.title).toBe('Weather: heavy rain')
    expect(tried.document.weather).toEqual({ air: '14 °C', wind: '2 m/s', rain: 'heavy' })
    expect(likely(tried.day)).toBeGreaterThan(likely(today))
  })
  it('is cooked anew in it, with every moment beside where it stood', () => {
    const change = worseWeather(today.shoot, { colderK: 12, windierMpS: 6 })
    const tried = whatIf(today, change, run)
    expect(tried.title).toBe('Weather: 2 °C in the air, wind of 8 m/s')
    expect(tried.document.weather).toEqual({ air: '2 °C', wind: '8 m/s' })
    const slice = tried.moments.find((m) => m.moment === 'first-slice')
    expect(slice?.other?.likely).not.toBe(slice?.today?.likely)
    expect(tried.moments.map((m) => m.moment)).toContain('pull')
  })
})

describe('what if it is held', () => {
  it.each(['cooker', 'oven', 'box'] as const)(
    'in the %s for an hour: later by that hour, with what the ledger says',
    (place) => {
      const tried = whatIf(today, { kind: 'hold', in: place, for: '60 min' }, run)
      expect(tried.problems).toEqual([])
      expect((likely(tried.day) - likely(today)) / 60_000).toBeGreaterThan(45)
      expect(tried.safety[0]).toMatch(/^Held 1 h .*(FDA Food Code).*in \d+ % of cooks/)
      expect(tried.lines).toContain(tried.safety[0])
      expect(tried.lines.length).toBeLessThanOrEqual(6)
    },
  )
  it('stands before the rest on the fire and after it elsewhere, and once only', () => {
    const hold = (place: 'cooker' | 'box', document = today.document) =>
      withChange(document, { kind: 'hold', in: place, for: '60 min' }, '12:00')
    expect(stagesOf(hold('cooker')).map((s) => s.do)).toEqual(['preheat', 'roast', 'sear', 'hold', 'rest'])
    expect(stagesOf(hold('box')).map((s) => s.do)).toEqual(['preheat', 'roast', 'sear', 'rest', 'hold'])
    expect(hold('box', hold('box'))).toEqual(hold('box'))
  })
  it('has a limit no longer than the hold, and none where nothing is held', () => {
    const held = whatIf(today, { kind: 'hold', in: 'box', for: '3 h' }, run).day?.forecasts.get('hero')
    const limit = held && holdLimit(held, 'box')
    expect(limit?.minutes).toBeLessThanOrEqual(180)
    expect(limit?.planned).toBe(180)
    expect(held && holdLimit(held, 'oven')).toBeNull()
  })
})

describe('two days beside each other', () => {
  it('are told to be the same where they are', () => {
    expect(compare(today, today)).toEqual([expect.stringMatching(/as today\.$/), 'No shot is lost.'])
  })
})

describe('a clock', () => {
  it('goes on past midnight', () => {
    expect([laterClock('23:30', 45), laterClock('00:10', -20), laterClock('12:00', 0)]).toEqual([
      '00:15',
      '23:50',
      '12:00',
    ])
  })
})
