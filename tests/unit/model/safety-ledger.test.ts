import { describe, expect, it } from 'vitest'
import type { CookPlan, Stage } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { hotHold } from '../../../lib/model/hot-hold'
import { consumerOven, foodCodeOven } from '../../../lib/model/oven-minimums'
import { type LedgerRow, ledgerOf } from '../../../lib/model/safety-ledger'
import { safetyOf } from '../../../lib/model/safety-summary'
import { celsius, fromFahrenheit, kilograms, minutes } from '../../../lib/units'
import { madeUpForecast } from '../card/made-up-forecast'

const STEP_S = 60
const held = (tempC: number, forMin: number) => new Array<number>(forMin + 1).fill(tempC)
/** A forecast whose members are these histories. */
function forecastOf(cut: string, histories: readonly number[][], change: Partial<CookPlan> = {}): Forecast {
  const plain = madeUpForecast({ cut, sear: false, cooker: 'oven' }, 1, histories.length)
  return { ...plain, cook: { ...plain.cook, ...change }, trace: { ...plain.trace, stepS: STEP_S } }
}
const rows = (
  cut: string,
  animal: 'beef' | 'lamb' | 'venison' | 'turkey' | 'salmon',
  history: number[],
  inside = false,
) => ledgerOf(forecastOf(cut, [history, history]), [history, history], animal, inside)
const verdict = (found: readonly LedgerRow[], id: LedgerRow['id']) => found.find((row) => row.id === id)?.verdict

describe('the ledger, animal by animal', () => {
  const SAFE_BY_TABLE = held(60, 20)
  it('beef that keeps Appendix A is below the consumer minimum all the same', () => {
    const found = rows('beef-rib-bone-in', 'beef', SAFE_BY_TABLE)
    expect(verdict(found, 'consumer-minimum')).toBe('not-kept')
    expect(verdict(found, 'dwell-table')).toBe('kept')
  })
  it.each(['lamb-leg-bone-in'])('%s that keeps Appendix A keeps it with care', (cut) => {
    const found = rows(cut, 'lamb', SAFE_BY_TABLE)
    expect(verdict(found, 'dwell-table')).toBe('kept-with-care')
    expect(found.find(({ id }) => id === 'dwell-table')?.care).toContain('other-animal')
  })
  it('beef kept by the lowest row alone keeps it with care', () => {
    const found = rows('beef-rib-bone-in', 'beef', held(fromFahrenheit(130) + 0.1, 130))
    expect(verdict(found, 'dwell-table')).toBe('kept-with-care')
    expect(found.find(({ id }) => id === 'dwell-table')?.care).toEqual(['lowest-row'])
  })
  it('the dwell alone does not keep the Food Code where the oven is too cool for the roast', () => {
    const found = rows('beef-rib-bone-in', 'beef', SAFE_BY_TABLE)
    expect(found.find(({ id }) => id === 'food-code-roast')).toMatchObject({
      share: 1,
      verdict: 'kept-in-part',
      care: ['oven'],
    })
  })
  it('poultry and fish have their own rules and no word from the beef table', () => {
    const turkey = rows('turkey-whole', 'turkey', held(72, 30))
    expect(turkey.map(({ id, verdict: v }) => [id, v])).toEqual([
      ['consumer-minimum', 'not-kept'],
      ['food-code-poultry', 'not-kept'],
    ])
    expect(rows('salmon-side', 'salmon', held(63, 1)).map(({ verdict: v }) => v)).toEqual(['kept', 'kept'])
  })
  it('venison at 64 °C is enough where it was farmed, too little where it was wild or for consumers', () => {
    const found = rows('venison-haunch-boneless', 'venison', held(64, 10))
    expect(verdict(found, 'food-code-farmed-game')).toBe('kept')
    expect(verdict(found, 'food-code-wild-game')).toBe('not-kept')
    expect(verdict(found, 'consumer-minimum')).toBe('not-kept')
  })
  it('rolled meat at 64 °C for 5 min keeps the code for pierced meat, not the British advice', () => {
    const found = rows('lamb-leg-boneless', 'lamb', held(64, 5), true)
    expect(verdict(found, 'food-code-pierced')).toBe('kept')
    expect(verdict(found, 'uk-throughout')).toBe('not-kept')
  })
  it('a half of the members keeps a rule in part', () => {
    const f = forecastOf('beef-rib-bone-in', [held(64, 5), held(50, 5)])
    const found = ledgerOf(f, [held(64, 5), held(50, 5)], 'beef', false)
    expect(verdict(found, 'consumer-minimum')).toBe('kept-in-part')
  })
  it('names the rule on tenderised beef where the roast is pierced', () => {
    const source = (pierced: boolean) => {
      const plain = forecastOf('beef-rib-bone-in', [held(64, 5)])
      const f = { ...plain, cook: { ...plain.cook, roast: { ...plain.cook.roast, pierced } } }
      return ledgerOf(f, [held(64, 5)], 'beef', pierced)[0]?.source
    }
    expect([source(false), source(true)]).toEqual(['fsis-safe-minimum', 'fsis-tenderised-2016'])
  })
})

describe('ovens that go with the minimums', () => {
  const planned = (kind: CookPlan['cooker']['kind'], kg: number, atC: number) => {
    const plain = forecastOf('beef-rib-bone-in', [[4, 60]]).cook
    const stages: Stage[] = [{ do: 'roast', at: celsius(atC), until: { core: celsius(55) } }]
    return { ...plain, cooker: { kind }, roast: { ...plain.roast, mass: kilograms(kg) }, stages }
  }
  it.each([
    ['oven', 3, 177, true],
    ['oven', 3, 160, false],
    ['oven', 5, 121, true],
    ['oven', 5, 115, false],
    ['convection-oven', 3, 163, true],
    ['convection-oven', 3, 150, false],
    ['kettle-charcoal', 3, 150, false],
    ['kettle-charcoal', 5, 125, true],
  ] as const)('%s, %s kg at %s °C: kept %s', (kind, kg, atC, kept) => {
    expect(foodCodeOven(planned(kind, kg, atC))?.kept).toBe(kept)
  })
  it('says where the code does not name the cooker', () => {
    expect(foodCodeOven(planned('kettle-charcoal', 3, 180))).toMatchObject({ named: false, oven: 'still-dry' })
    expect(foodCodeOven(planned('oven', 3, 180))?.named).toBe(true)
  })
  it('consumers are told 325 °F', () => {
    expect(consumerOven(planned('oven', 3, 163))?.kept).toBe(true)
    expect(consumerOven(planned('oven', 3, 150))?.kept).toBe(false)
  })
})

describe('holding hot', () => {
  const after: Stage[] = [
    { do: 'roast', at: celsius(150), until: { core: celsius(60) } },
    { do: 'rest', until: { after: minutes(10) } },
    { do: 'hold', at: celsius(60), until: { after: minutes(60) } },
  ]
  /** Core and skin alike: 70 °C until the hold begins at 150 min, then `heldC`. */
  function heldForecast(heldC: number, stages = after): Forecast {
    const plain = forecastOf('beef-rib-bone-in', [[0]], { stages })
    const core = Float32Array.from({ length: 240 }, (_, i) => (i < 152 ? 70 : heldC))
    const at = (min: number) => Float64Array.of(min * 60)
    return {
      ...plain,
      members: 1,
      trace: { ...plain.trace, startS: 0, stepS: 60, count: 240, coreC: core, surfaceC: core },
      moments: { ...plain.moments, 'off-heat': at(140), 'first-slice': at(210) },
    }
  }
  it('is asked at 57 °C, of a roast cooked by the code’s table at 54 °C', () => {
    expect(hotHold(heldForecast(56), [false])).toMatchObject({
      keptShare: 0,
      verdict: 'not-kept',
      leastC: fromFahrenheit(135),
    })
    expect(hotHold(heldForecast(56), [true])).toMatchObject({
      keptShare: 1,
      verdict: 'kept',
      leastC: fromFahrenheit(130),
    })
    expect(hotHold(heldForecast(53), [true])?.keptShare).toBe(0)
    expect(hotHold(heldForecast(58), [false])?.coldest.likely).toBeCloseTo(58, 4)
  })
  it('of a member that is never sliced goes to the end of its trace, and is never kept for want of samples', () => {
    const f = heldForecast(40)
    const never = { ...f, moments: { ...f.moments, 'first-slice': Float64Array.of(Infinity) } }
    expect(hotHold(never, [true])?.coldest.likely).toBeCloseTo(40, 4)
    const byReading: Stage[] = [...after.slice(0, 2), { do: 'hold', at: celsius(60), until: { core: celsius(60) } }]
    expect(hotHold(heldForecast(40, byReading), [true])?.keptShare).toBe(0)
  })
  it('is not asked where nothing is held: a rest is no hold', () => {
    expect(hotHold(heldForecast(40, after.slice(0, 2)), [false])).toBeUndefined()
  })
})

describe('a 54 °C roast sliced at once', () => {
  it('says plainly that it does not meet the table', () => {
    const f = madeUpForecast({ cut: 'beef-rib-bone-in', slicedC: 53, sear: false, restMin: 0 })
    const { dwellTable, ledger } = safetyOf(f)
    expect(dwellTable.sentence).toContain('It does not meet the dwell table')
    expect(dwellTable).toMatchObject({ grade: 'not-met', reach: 'table' })
    expect(ledger.find(({ id }) => id === 'dwell-table')?.verdict).toBe('not-kept')
  })
})
