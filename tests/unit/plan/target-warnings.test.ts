import { describe, expect, test } from 'vitest'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { targetWarnings } from '../../../lib/plan/target-warnings'
import { lambWith, read } from './shoots'

const warned = (doneness: string | undefined) => {
  const shoot = read(lambWith({ '/cooks/0/target': doneness && { doneness } }))
  const forecasts = new Map(
    shoot.cooks.map((cook) => [cook.id, forecastCook(toCookPlan(shoot, cook), { seed: 1, members: 32 })]),
  )
  return targetWarnings(shoot, forecasts)
}

describe('targetWarnings', () => {
  test('lamb off the heat at 52 °C is not well done', () => {
    const [warning] = warned('well-done')
    expect([warning?.code, warning?.path]).toEqual(['target-disagrees', '/cooks/0/target/doneness'])
    expect(warning?.sentence).toMatch(/You want well-done, but the middle will be about \d+ °C when sliced/)
  })
  test('medium-rare is what it is, and no word needs no warning', () => {
    expect(warned('medium-rare')).toEqual([])
    expect(warned(undefined)).toEqual([])
  })
})
