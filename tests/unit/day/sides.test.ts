import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { lidsOfLayout } from '../../../lib/day/lid-openings'
import { rePlan } from '../../../lib/day/re-plan'
import { fromIso } from '../../../lib/plan/clock'
import { parseShoot } from '../../../lib/plan/parse'
import { instant } from '../../../lib/units'
import { FOURTEEN, gardenDocument, gardenShoot } from './garden-shoot'
import { type Invented, syntheticForecast } from './synthetic-forecast'

type Part = Record<string, unknown>
const POTATOES = { id: 'potatoes', title: 'Potatoes', cook: 'hero', takes: '55 min' }
const forecastsOf = (shoot: ReturnType<typeof gardenShoot>, invented: Partial<Invented> = {}) =>
  new Map(shoot.cooks.map((c) => [c.id, syntheticForecast(c.id, { members: 64, seed: 1, ...invented })]))
function lay(sides: Part[], change: Part = {}) {
  const shoot = gardenShoot({ sides, ...change })
  const forecasts = forecastsOf(shoot)
  const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 })
  return { shoot, layout, forecasts, broken: checkLayout(shoot, layout, forecasts).map((v) => v.sentence) }
}
type Laid = ReturnType<typeof lay>['layout']
const min = (iso: string) => Date.parse(iso) / 60_000
const task = (layout: Laid, id: string) => {
  const [one, ...more] = layout.tasks.filter((t) => t.id === id)
  if (!one || more.length > 0) throw new Error(`not one ${id}`)
  return one
}
const isIn = (layout: Laid) => min(task(layout, 'potatoes-off').start) - min(task(layout, 'potatoes-on').end)
const likely = (laid: ReturnType<typeof lay>, moment: 'pull' | 'first-slice') => {
  const times = laid.forecasts.get('hero')?.moments[moment]?.toSorted() ?? new Float64Array(0)
  const middle = ((times[31] as number) + (times[32] as number)) / 2
  return min(laid.layout.start) + middle / 60
}

describe('a side on the same cooker', () => {
  it('is in for just its time, by hands that are free, and done when its moment is likely', () => {
    for (const ready of ['first-slice', 'pull'] as const) {
      // 55 min before the pull the presenter, who cooks, is in the turn
      const takes = ready === 'pull' ? 35 : 55
      const laid = lay([{ ...POTATOES, ready, takes: `${takes} min` }])
      expect(laid.broken).toEqual([])
      expect(isIn(laid.layout)).toBe(takes)
      expect(task(laid.layout, 'potatoes-on').people).toEqual(['presenter'])
      const early = likely(laid, ready) - min(task(laid.layout, 'potatoes-off').end)
      expect(early).toBeGreaterThanOrEqual(0)
      expect(early).toBeLessThanOrEqual(10)
    }
  })
  it('goes on at a moment, and shares the opening that is there', () => {
    const laid = lay([{ ...POTATOES, from: 'meat-on', needs: ['stylist'] }])
    expect(laid.broken).toEqual([])
    expect(isIn(laid.layout)).toBe(55)
    expect(min(task(laid.layout, 'potatoes-on').start) - min(laid.layout.start)).toBeLessThanOrEqual(2)
    const lids = (day: typeof laid) => lidsOfLayout(day.shoot, day.layout, day.forecasts).hero ?? []
    // on with the meat, for which the lid is off anyway; off by itself
    expect(lids(laid).length).toBeLessThanOrEqual(lids(lay([])).length + 1)
    expect(lids(laid).some(({ at }) => Math.abs(at / 60 - 57) < 7)).toBe(true)
  })
  it('is filmed raw, in the cooker and hot, each in its own time', () => {
    const shots = ['raw', 'cooking', 'hot'].map((state) => ({
      id: `potatoes-${state}`,
      title: `Potatoes ${state}`,
      cook: 'potatoes',
      free: true,
      state,
      setup: '2 min',
      roll: '2 min',
      needs: ['camera'],
      place: 'cooker',
      priority: 'must',
    }))
    const laid = lay([{ ...POTATOES, ready: 'pull' }], { shots: [...FOURTEEN.slice(0, 4), ...shots] })
    expect(laid.broken).toEqual([])
    const [raw, cooking, hot] = shots.map(({ id }) => laid.layout.shots.find((s) => s.id === id))
    expect(min(raw?.end ?? '')).toBeLessThanOrEqual(min(task(laid.layout, 'potatoes-on').start))
    expect(min(cooking?.start ?? '')).toBeGreaterThanOrEqual(min(task(laid.layout, 'potatoes-on').end))
    expect(min(cooking?.end ?? '')).toBeLessThanOrEqual(min(task(laid.layout, 'potatoes-off').start))
    expect(min(hot?.start ?? '')).toBeGreaterThanOrEqual(min(task(laid.layout, 'potatoes-off').end))
  })
  it('that takes longer than the roast goes on with the meat, and the day says how late it is', () => {
    const { layout, broken } = lay([{ ...POTATOES, takes: '5 h' }])
    expect(layout.conflicts.find((c) => c.rule === 'side-apart')?.sentence).toMatch(
      /^"Potatoes" is done at \d\d:\d\d, \d+ min after the first slice is likely\./,
    )
    expect(isIn(layout)).toBe(300)
    expect(broken).toEqual([])
  })
  it('that is in when the roast turns out late still comes off when it is done', () => {
    const { shoot, layout } = lay([POTATOES])
    const late = forecastsOf(shoot, { toPull: 185 })
    const on = task(layout, 'potatoes-on')
    const now = instant(fromIso(on.start) + 10 * 60_000)
    const running = rePlan(shoot, late, { previous: layout, now, seed: 1, sweeps: 2 })
    expect(task(running, 'potatoes-on')).toEqual(on)
    expect(isIn(running)).toBe(55)
    expect(running.conflicts.find((c) => c.rule === 'side-apart')?.sentence).toMatch(/before the first slice is likely/)
  })
})

describe('a side that is written wrongly', () => {
  const sentence = (side: Part, more: Part = {}) => {
    const read = parseShoot(gardenDocument({ sides: [{ ...POTATOES, ...side }], ...more }))
    return read.ok ? [] : read.problems.map((p) => `${p.pointer}: ${p.sentence}`)
  }
  it('is told at its field, with what would be right', () => {
    expect(sentence({})).toEqual([])
    expect(sentence({ takes: 55 })[0]).toMatch(/^\/sides\/0\/takes: .*Write "55 min"/)
    expect(sentence({ cook: 'herro' })[0]).toBe('/sides/0/cook: There is no cook "herro". Did you mean "hero"?')
    expect(sentence({ id: 'hero' })[0]).toMatch(/^\/sides\/0\/id: A cook is called "hero" already/)
    expect(sentence({ from: 'meat-on', ready: 'pull' })[0]).toMatch(/^\/sides\/0\/ready: .*Keep one\.$/)
    expect(sentence({ ready: 'lunch' })[0]).toMatch(/^\/sides\/0\/ready: /)
    expect(sentence({ needs: ['presentr'] })[0]).toMatch(/^\/sides\/0\/needs\/0: .*"presenter"/)
    expect(sentence({ people: 2 })[0]).toMatch(/^\/sides\/0\/people: "people" is not known here/)
    const shot = { id: 'p', title: 'P', cook: 'potatoes', free: true, state: 'sliced' }
    expect(sentence({}, { shots: [shot] })[0]).toBe(
      '/shots/0/state: A side is never sliced. Write "raw", "cooking" or "hot".',
    )
    expect(sentence({}, { shots: [{ ...shot, cook: 'potatos' }] })[0]).toMatch(/Did you mean "potatoes"\?$/)
  })
})
