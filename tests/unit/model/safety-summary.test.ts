import { describe, expect, it } from 'vitest'
import type { CookPlan } from '../../../lib/model/cook'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { safetyOf } from '../../../lib/model/safety-summary'
import { celsius, frac, kilograms, metres, metresPerSecond, minutes } from '../../../lib/units'

const cook = (cut: string, endC: number): CookPlan => ({
  id: 'hero',
  roast: { cut, mass: kilograms(2.5), start: celsius(4) },
  cooker: { kind: 'oven' },
  stages: [
    { do: 'preheat', at: celsius(160) },
    { do: 'roast', at: celsius(160), until: { core: celsius(endC) } },
    { do: 'rest', until: { after: minutes(20) } },
  ],
  surroundings: { air: celsius(20), wind: metresPerSecond(0), humidity: frac(0.5), altitude: metres(0) },
  lidOpenings: [],
})
const safety = (cut: string, endC: number, authority?: string) =>
  safetyOf(forecastCook(cook(cut, endC), { members: 24, seed: 3 }), authority)

describe('safety of an ensemble', () => {
  it('hardly ever meets the minimum for a leg pulled at 46 °C, and always when pulled at 74 °C', () => {
    expect(safety('lamb-leg-bone-in', 46).metShare).toBeLessThan(0.2)
    const done = safety('lamb-leg-bone-in', 74)
    expect(done.metShare).toBe(1)
    expect(done.dwellTable).toMatchObject({ reach: 'with-care', metShare: 1, grade: 'borne-out-with-care' })
    expect(done.lethalityLog.low).toBeGreaterThan(6.5)
  })
  it('takes the minimum of poultry for poultry, with no word from the beef table', () => {
    const { minimum, dwellTable } = safety('turkey-breast-bone-in', 70)
    expect(minimum.tempC).toBeCloseTo(73.9, 1)
    expect(dwellTable.reach).toBe('none')
  })
  it('counts the time from 5 to 57 °C, longer than none and shorter than the cook', () => {
    const { low, high } = safety('beef-rib-bone-in', 60).timeIn5to57
    expect(low).toBeGreaterThan(1800)
    expect(high).toBeLessThan(6 * 3600)
  })
  it('says whose minimum it is where no table is held', () => {
    expect(safety('beef-rib-bone-in', 60, 'IE').notes[0]).toContain('We hold no table for IE')
  })
})

describe('what is inside', () => {
  it('a rolled cut and a pierced one are told, and have more rules than a whole one', () => {
    const of = (cut: string, pierced?: boolean) => {
      const plan = cook(cut, 60)
      return safetyOf(forecastCook({ ...plan, roast: { ...plan.roast, pierced } }, { members: 8, seed: 3 }))
    }
    const [whole, rolled, pierced] = [of('beef-rib-bone-in'), of('beef-rib-boneless'), of('beef-rib-bone-in', true)]
    expect([whole, rolled, pierced].map((s) => s.surfaceInside)).toEqual([false, true, true])
    expect(rolled.ledger.map(({ id }) => id)).toContain('uk-throughout')
    expect(pierced.ledger[0]?.source).toBe('fsis-tenderised-2016')
    expect(pierced.notes[0]).toContain('every part must get the heat')
    expect(whole.leastAt.likely).toBe(0)
  })
})
