import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import { pairScreen } from '../../../lib/day/pair-screen'
import { ruleCores } from '../../../lib/day/rule-core'
import { gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

const ONE = {
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }],
}
const forecasts = new Map([['hero', syntheticForecast('hero', { members: 128, seed: 1 })]])
function lay(change = {}) {
  const shoot = gardenShoot(change)
  return { shoot, layout: layOutDay(shoot, forecasts, { seed: 1, sweeps: 12 }) }
}

describe('pairs of moments for one camera', () => {
  const { shoot, layout } = lay()
  const pairs = pairScreen(shoot, forecasts, layout)
  const share = (a: string, b: string) => pairs.find(({ shots }) => shots[0] === a && shots[1] === b)?.share ?? 1

  it('are told member by member, the worst first', () => {
    expect(pairs.map((p) => p.share)).toEqual(pairs.map((p) => p.share).toSorted((a, b) => a - b))
    expect(pairs[0]?.sentence).toMatch(/^The same camera for ".*" and ".*" works in \d+ % of cooks\.$/)
  })
  it('never work at one instant, always hours apart, and in part minutes apart', () => {
    expect(Math.min(share('probe', 'turn'), share('turn', 'probe'))).toBe(0)
    expect(share('lighting', 'first-cut')).toBe(1)
    const { 'sear-start': sear, 'off-heat': off } = (forecasts.get('hero') ?? { moments: {} }).moments
    const fits = (sear as Float64Array).filter((t, m) => t / 60 + 2 + 1 <= ((off as Float64Array)[m] as number) / 60)
    expect(share('sear', 'off')).toBeCloseTo(fits.length / 128, 9)
    expect(share('sear', 'off')).toBeGreaterThan(0)
  })
})

describe('the core of a drop', () => {
  const { shoot, layout } = lay(ONE)
  const cores = ruleCores(shoot, forecasts, layout)
  it('names the dropped shot with the fewest others that stand in its way', () => {
    const turn = cores.find(({ dropped }) => dropped === 'turn')
    expect([...(turn?.shots ?? [])].sort()).toEqual(['probe', 'turn'])
    expect(turn?.sentence).toMatch(
      /cannot both be had: each needs .*cam-1.* and camera A; without any one of them the others can\.$/,
    )
  })
  it('is given for each dropped moment, and for none where nothing is dropped', () => {
    expect(cores.map((c) => c.dropped).sort()).toEqual(layout.dropped.map((d) => d.id).sort())
    const whole = lay()
    expect(ruleCores(whole.shoot, forecasts, whole.layout)).toEqual([])
  })
  it('is smallest: the day has the dropped shot once any other of the core is gone', () => {
    for (const core of cores)
      for (const gone of core.shots.filter((id) => id !== core.dropped)) {
        const left = { ...shoot, shots: (shoot.shots ?? []).filter((s) => s.id !== gone) }
        expect(
          ruleCores(left, forecasts, { ...layout, dropped: layout.dropped.filter((d) => d.id === core.dropped) }),
        ).toEqual([])
      }
  })
})
