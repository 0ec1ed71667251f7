import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import type { Layout } from '../../../lib/day/layout'
import { parseShoot } from '../../../lib/plan/parse'
import { FOURTEEN, gardenDocument, gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const hero = (gardenDocument().cooks as object[])[0] as { id: string }
const twin = (ready?: object) => ({ ...hero, id: 'twin', ...(ready ? { ready } : {}) })
const finished = {
  id: 'finished',
  title: 'The finished one is lifted in',
  cook: 'twin',
  at: { moment: 'first-slice', before: '1 min', after: '2 min' },
  setup: '5 min',
  needs: ['camera', 'presenter'],
  place: 'table',
  priority: 'should',
}
function lay(ready: object, day: object) {
  const watch = (cook: string) => ({
    id: `watch-${cook}`,
    title: 'Fire',
    cook,
    from: 'fire-lit',
    to: 'off-heat',
    needs: ['cook'],
  })
  const tasks = [watch('hero'), watch('twin')]
  const shoot = gardenShoot({ tasks, cooks: [hero, twin(ready)], day, shots: [...FOURTEEN, finished] })
  const forecasts = new Map([
    ['hero', syntheticForecast('hero', { members: 64, seed: 1 })],
    ['twin', syntheticForecast('twin', { members: 64, seed: 2 })],
  ])
  const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 })
  return { shoot, forecasts, layout, rules: checkLayout(shoot, layout, forecasts).map((v) => v.rule) }
}
const minute = (iso: string | undefined) => Date.parse(iso ?? '') / 60_000
/** Share of pairs of roasts in which the twin is done when the hero comes there. */
function shareDone(
  { layout, forecasts }: { layout: Layout; forecasts: ReturnType<typeof lay>['forecasts'] },
  by: 'pull' | 'first-slice',
) {
  const done = [...(forecasts.get('twin')?.moments['first-slice'] ?? [])].map(
    (s) => minute(layout.meatOn.twin) + s / 60,
  )
  const due = [...(forecasts.get('hero')?.moments[by] ?? [])].map((s) => minute(layout.start) + s / 60)
  return done.flatMap((d) => due.filter((t) => d <= t)).length / (done.length * due.length)
}

describe('one made earlier', () => {
  it('is sliced before the moment of the hero that it is made for in at least 95 % of pairs, and not much sooner', () => {
    const day = lay({ by: 'hero/pull' }, { slice: { at: '18:30' } })
    expect(shareDone(day, 'pull')).toBeGreaterThanOrEqual(0.95)
    const later = {
      ...day.layout,
      meatOn: { ...day.layout.meatOn, twin: new Date((minute(day.layout.meatOn.twin) + 12) * 60_000).toISOString() },
    }
    expect(shareDone({ ...day, layout: later }, 'pull')).toBeLessThan(0.95)
    expect(day.rules).toEqual([])
    expect(day.layout.conflicts.filter((c) => c.rule === 'ready-late')).toEqual([])
  })
  it('is waited for where only a call is given', () => {
    const day = lay({ by: 'hero/pull' }, { call: '08:00', wrap: '22:00' })
    expect(shareDone(day, 'pull')).toBeGreaterThanOrEqual(0.95)
    expect(minute(day.layout.start)).toBeGreaterThan(minute(day.layout.meatOn.twin) + 15)
    expect(day.rules).toEqual([])
  })
  it('is done by a clock time', () => {
    const { layout, forecasts, rules } = lay({ by: '16:00', moment: 'off-heat' }, { slice: { at: '18:30' } })
    const off = [...(forecasts.get('twin')?.moments['off-heat'] ?? [])].map((s) => minute(layout.meatOn.twin) + s / 60)
    expect(off.filter((t) => t <= minute('2027-05-15T16:00+01:00')).length / off.length).toBeGreaterThanOrEqual(0.95)
    expect(rules).toEqual([])
  })
  it('is told late, with the call that would do, where the crew comes too late for it', () => {
    const { layout, rules } = lay({ by: '15:00' }, { call: '13:00' })
    const told = layout.conflicts.find((c) => c.rule === 'ready-late')
    expect(told?.sentence).toMatch(
      /^"twin" is not ready by 15:00 in \d+ cooks of 100\. Its meat would have to be on at \d\d:\d\d: call the crew \d+ min sooner\.$/,
    )
    expect(rules).not.toContain('cook-late')
  })
})

describe('two fires', () => {
  it('are both to be watched: the one that nobody is named for is told', () => {
    const shoot = gardenShoot({ cooks: [hero, twin({ by: 'hero/pull' })], day: { call: '08:00', wrap: '22:00' } })
    const forecasts = new Map([
      ['hero', syntheticForecast('hero', { members: 64, seed: 1 })],
      ['twin', syntheticForecast('twin', { members: 64, seed: 2 })],
    ])
    const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 })
    const told = layout.conflicts.filter((c) => c.rule === 'fire-unwatched').map((c) => c.sentence)
    expect(told).toEqual([
      expect.stringMatching(/^Nobody is named to stay in sight of the fire of "twin" at \d\d:\d\d\. Add a task for it/),
    ])
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
    const silent = { ...layout, conflicts: layout.conflicts.filter((c) => c.rule !== 'fire-unwatched') }
    expect(checkLayout(shoot, silent, forecasts).map((v) => v.rule)).toEqual(['fire-unwatched'])
  })
})

describe('what a cook is made ready for', () => {
  const faults = (cooks: object[]) => {
    const read = parseShoot({ ...gardenDocument(), cooks, shots: [] })
    return read.ok ? [] : read.problems.map((p) => `${p.pointer}: ${p.sentence}`)
  }
  it('is a moment of the first cook or a time', () => {
    expect(faults([hero, twin({ by: 'hero/first-slice' })])).toEqual([])
    expect(faults([hero, twin({ by: '16:30' })])).toEqual([])
    expect(faults([hero, twin({ by: 'soon' })])[0]).toMatch(/^\/cooks\/1\/ready\/by: "soon" is no moment of a cook\./)
    expect(faults([hero, twin({ by: 'twin/pull' })])[0]).toMatch(
      /^\/cooks\/1\/ready\/by: "twin" is not the first cook\./,
    )
    expect(faults([twin({ by: '16:30' }), hero])[0]).toMatch(/^\/cooks\/0\/ready\/by: The first cook sets the day/)
  })
})
