import { describe, expect, it } from 'vitest'
import { checkLayout } from '../../../lib/day/check'
import { layOutWithLids } from '../../../lib/day/lay-out-with-lids'
import { alikeLids, type LidOpenings, lidsOfLayout } from '../../../lib/day/lid-openings'
import type { Shoot } from '../../../lib/plan/shoot'
import { seconds } from '../../../lib/units'
import { FOURTEEN, gardenShoot } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

/** Each minute of an open lid holds the pull back by two. */
function forecaster() {
  const asked: LidOpenings[] = []
  const forecast = (shoot: Shoot, openings: LidOpenings) => {
    asked.push(openings)
    return new Map(
      shoot.cooks.map(({ id }) => {
        const openS = (openings[id] ?? []).reduce((sum, o) => sum + o.open, 0)
        return [id, syntheticForecast(id, { members: 64, seed: 1, toPull: 120 + (openS / 60) * 2 })] as const
      }),
    )
  }
  return { forecast, asked }
}
const inside = (id: string, roll = '4 min') => ({
  id,
  title: id,
  between: ['turn', 'pull'],
  setup: '3 min',
  roll,
  needs: ['camera'],
  place: 'cooker',
  lid: 'open',
  priority: 'must',
})
const options = { seed: 1, sweeps: 12 }

describe('lid openings of shots, fed back into the forecast', () => {
  const shoot = gardenShoot({ shots: [...FOURTEEN, inside('basting'), inside('crust')] })
  const { forecast } = forecaster()
  const day = layOutWithLids(shoot, forecast, options)

  it('settle within four rounds, with the openings of the layout in the forecast it was made from', () => {
    expect(day.settled).toBe(true)
    expect(day.rounds).toBeLessThanOrEqual(4)
    expect(alikeLids(day.layout.lidOpenings ?? {}, lidsOfLayout(shoot, day.layout, day.forecasts))).toBe(true)
    expect(checkLayout(shoot, day.layout, day.forecasts).map((v) => v.sentence)).toEqual([])
  })
  it('tell the forecast of every shot inside, and not of those with the lid shut', () => {
    const openS = (day.layout.lidOpenings?.hero ?? []).reduce((sum, o) => sum + o.open, 0)
    const placed = day.layout.shots.filter((s) => ['basting', 'crust'].includes(s.id))
    expect(placed).toHaveLength(2)
    // meat-on and the turn with the probe are opened for two minutes each, shared or not the two shots for five
    expect(openS).toBeGreaterThanOrEqual((2 + 2 + 5) * 60 - 2)
    expect(openS).toBeLessThanOrEqual((2 + 2 + 2 * 5) * 60 + 2)
  })
  it('run the cook later than if the lid had stayed shut', () => {
    const later = day.forecasts.get('hero')?.moments.pull?.[0] as number
    const shut = forecast(shoot, {}).get('hero')?.moments.pull?.[0] as number
    expect(later).toBeGreaterThan(shut + 9 * 60)
  })
  it('need one round where only moments open the lid, and no second forecast where nothing does', () => {
    const moments = layOutWithLids(gardenShoot(), forecaster().forecast, options)
    expect(moments.rounds).toBeLessThanOrEqual(2)
    const shut = gardenShoot({ shots: FOURTEEN.map(({ lid: _, ...rest }) => rest) })
    const none = forecaster()
    const plain = layOutWithLids(shut, none.forecast, options)
    expect(none.asked).toHaveLength(1)
    expect([plain.rounds, plain.settled, plain.layout.lidOpenings]).toEqual([1, true, undefined])
  })
  it('stop after four rounds where they never settle, and say so', () => {
    let turn = 0
    const swinging = (s: Shoot) => {
      turn++
      return new Map(
        s.cooks.map(({ id }) => [id, syntheticForecast(id, { members: 64, seed: 1, toPull: turn % 2 ? 120 : 160 })]),
      )
    }
    const day = layOutWithLids(shoot, swinging, options)
    expect([day.rounds, day.settled]).toEqual([4, false])
  })
})

describe('two openings', () => {
  const at = (s: number, open = 120) => ({ hero: [{ at: seconds(s), open: seconds(open) }] })
  it('are alike less than a minute apart, and not where one is missing or longer', () => {
    expect(alikeLids(at(600), at(659))).toBe(true)
    expect(alikeLids(at(600), at(660))).toBe(false)
    expect(alikeLids(at(600), at(600, 240))).toBe(false)
    expect(alikeLids(at(600), {})).toBe(false)
  })
})
