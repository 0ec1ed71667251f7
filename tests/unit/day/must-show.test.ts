import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { captureOf } from '../../../lib/day/capture'
import { checkLayout } from '../../../lib/day/check'
import { layOutDay } from '../../../lib/day/lay-out'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { parseShootText } from '../../../lib/plan/parse'
import type { Shoot } from '../../../lib/plan/shoot'

const SHOOTS = ['prisma/demo/leg-of-lamb.json', 'tests/fixtures/shoots/pork-loin.json']
const FRESH_SEED = 20_270_515

function readShoot(path: string): Shoot {
  const parsed = parseShootText(readFileSync(path, 'utf8'))
  if (!parsed.ok) throw new Error(`${path}: ${parsed.problems[0]?.sentence}`)
  return parsed.value
}
const forecastsOf = (shoot: Shoot, seed: number, members?: number) =>
  new Map(shoot.cooks.map((c) => [c.id, forecastCook(toCookPlan(shoot, c), { seed, members })]))

describe.each(SHOOTS)('%s', (path) => {
  const shoot = readShoot(path)
  const forecasts = forecastsOf(shoot, 1)
  const layout = layOutDay(shoot, forecasts, { seed: 1 })

  it('breaks no rule of the checker', () => {
    expect(checkLayout(shoot, layout, forecasts)).toEqual([])
  })
  it('calls the pull by the probe and drops nothing', () => {
    expect(layout.calls.find((c) => c.moment === 'pull')?.trigger?.cook).toBe(shoot.cooks[0]?.id)
    expect(layout.dropped).toEqual([])
  })
  it('catches every moment in at least 95 % of 2,000 fresh members, and all together in at least 90 %', () => {
    const fresh = captureOf(shoot, layout, forecastsOf(shoot, FRESH_SEED, 2000))
    const moments = new Set(shoot.shots?.flatMap((s) => (s.at ? [s.at.moment] : [])))
    expect(Object.keys(fresh.each)).toHaveLength(moments.size)
    for (const [moment, share] of Object.entries(fresh.each)) expect(share, moment).toBeGreaterThanOrEqual(0.95)
    expect(fresh.joint).toBeGreaterThanOrEqual(0.9)
  })
})
