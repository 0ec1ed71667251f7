import { describe, expect, test } from 'vitest'
import { ASSUMED, toCookPlan } from '../../../lib/plan/cook-plan'
import { setAt } from '../../../lib/plan/edit'
import { momentsOf } from '../../../lib/plan/moments'
import type { Cook, ShootDocument } from '../../../lib/plan/shoot'
import { minutes } from '../../../lib/units'
import { lamb, minimal, read } from './shoots'

const inCooker = (kind: string) => setAt(minimal(), '/cooks/0/cooker/kind', kind) as ShootDocument
const planOf = (document: Record<string, unknown>) => {
  const shoot = read(document)
  return toCookPlan(shoot, shoot.cooks[0] as Cook)
}

describe('toCookPlan', () => {
  test('fills in what a short file leaves unsaid', () => {
    const plan = planOf(minimal())
    expect(planOf(inCooker('kettle-charcoal')).surroundings).toEqual(ASSUMED)
    expect(plan.lidOpenings).toEqual([])
    expect(plan.stages.map((stage) => stage.do)).toEqual(['preheat', 'roast', 'rest'])
    expect(plan.stages[0]).toEqual({ do: 'preheat', at: 180 })
    expect(plan.stages[1]).toMatchObject({ probe: { at: 'start' } })
  })
  test('an oven stands in a still kitchen, as does what rests beside it, unless it rests outdoors', () => {
    const kitchen = { air: 21, wind: 0, humidity: 0.5, altitude: 0 }
    expect(planOf(minimal())).toMatchObject({ surroundings: kitchen, restSurroundings: kitchen })
    const hot = planOf({ ...minimal(), weather: { air: '33 °C' } })
    expect(hot.surroundings.air).toBe(33)
    const rest = { do: 'rest', until: { after: '15 min' }, where: 'outdoors' }
    const roast = { do: 'roast', at: '180 °C', until: { core: '60 °C' } }
    const outdoors = planOf(setAt(minimal(), '/cooks/0/stages', [roast, rest]) as ShootDocument)
    expect(outdoors).toMatchObject({ surroundings: kitchen, restSurroundings: ASSUMED })
  })
  test('keeps what the file says', () => {
    const plan = planOf(lamb())
    const shoot = read(lamb())
    expect(plan.surroundings).toEqual({ air: 14, wind: 3, humidity: 0.65, altitude: 20 })
    expect(plan.stages).toEqual(shoot.cooks[0]?.stages)
    expect(plan.roast).toEqual(shoot.cooks[0]?.roast)
  })
  test('passes lid openings on', () => {
    const shoot = read(lamb())
    const openings = [{ at: minutes(30), open: minutes(1) }]
    expect(toCookPlan(shoot, shoot.cooks[0] as Cook, openings).lidOpenings).toEqual(openings)
  })
  test('a filled-in plan has the moments of the file it came from', () => {
    for (const document of [minimal(), lamb()]) {
      const plan = planOf(document)
      expect(momentsOf(plan)).toEqual(momentsOf(read(document).cooks[0] as Cook))
    }
  })
})
