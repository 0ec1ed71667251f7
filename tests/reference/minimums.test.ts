import { describe, expect, it } from 'vitest'
import { APPENDIX_B, TWO_STEP } from '../../lib/model/cooling-rules'
import type { Animal } from '../../lib/model/cuts'
import { tableVerdict } from '../../lib/model/dwell-table'
import { HOLD_LEAST_C, HOLD_ROAST_LEAST_C } from '../../lib/model/hot-hold'
import {
  FOOD_CODE_ROASTS,
  heatRules,
  meetsMinimum,
  minimumFor,
  surfaceInside,
  UK_THROUGHOUT,
} from '../../lib/model/minimums'
import { FOOD_CODE_OVENS, type OvenType } from '../../lib/model/oven-minimums'
import { fahrenheit, fromFahrenheit } from '../../lib/units'
import { published } from './measure'

interface Held {
  readonly F: number
  readonly s: number
}
interface Cooled {
  readonly toF: number
  readonly h_from_start: number
}
const CODE = published<{
  roast_hold: Held[]
  oven_minimums: { oven: OvenType; under_10lb_F: number; from_10lb_F: number }[]
  by_kind: { rule: string; asks: Held[] }[]
  hot_hold: { F: number }[]
  cooling: (Cooled & { fromF: number })[]
}>('food-code')
const SAFE = published<{
  consumer: { animals: Animal[]; F: number; rest_min: number }[]
  appendix_b: { rule: string; fromF: number; steps: Cooled[] }[]
  uk_throughout: { C: number; s: number }[]
}>('safe-minimums')
const held = (tempC: number, forS: number) => new Array<number>(Math.round(forS) + 1).fill(tempC)
const printed = (rows: readonly { tempC: number; heldS: number }[]) =>
  rows.map(({ tempC, heldS }) => ({ F: Math.round(fahrenheit(tempC as never)), s: heldS }))

describe('Food Code', () => {
  it.each(CODE.roast_hold)('roasts: $F °F for $s s is a row and is kept to the second', ({ F, s }) => {
    expect(printed(FOOD_CODE_ROASTS)).toContainEqual({ F, s })
    expect(tableVerdict(held(fromFahrenheit(F), s), 1, FOOD_CODE_ROASTS).met).toBe(true)
    if (s > 0) expect(tableVerdict(held(fromFahrenheit(F), s - 1), 1, FOOD_CODE_ROASTS).met).toBe(false)
  })
  it('roasts: there are no other rows', () => expect(FOOD_CODE_ROASTS).toHaveLength(CODE.roast_hold.length))
  it.each(CODE.oven_minimums)('$oven oven: $under_10lb_F °F under 10 lb, $from_10lb_F °F from there', (row) => {
    expect(FOOD_CODE_OVENS[row.oven]).toEqual({ underF: row.under_10lb_F, fromF: row.from_10lb_F })
  })
  it.each(CODE.by_kind)('$rule is as printed', ({ rule, asks }) => {
    const all = (['salmon', 'venison', 'turkey', 'pork'] as const).flatMap((animal) => heatRules(animal, true))
    expect(printed(all.find(({ id }) => id === rule)?.asks ?? [])).toEqual(asks)
  })
  it('hot holding is at 135 °F, of roasts cooked by its table at 130 °F', () => {
    expect([HOLD_LEAST_C, HOLD_ROAST_LEAST_C]).toEqual(CODE.hot_hold.map(({ F }) => fromFahrenheit(F)))
  })
  it('cooling: 2 h to 70 °F, 6 h in all to 41 °F', () => {
    expect(TWO_STEP.steps.map(({ toC, within }) => ({ fromC: TWO_STEP.fromC, toC, within }))).toEqual(
      CODE.cooling.map(({ fromF, toF, h_from_start }) => ({
        fromC: fromFahrenheit(fromF),
        toC: fromFahrenheit(toF),
        within: h_from_start * 3600,
      })),
    )
  })
})

describe('FSIS', () => {
  it.each(SAFE.consumer.flatMap(({ animals, F, rest_min }) => animals.map((animal) => ({ animal, F, rest_min }))))(
    '$animal: $F °F, then $rest_min min',
    ({ animal, F, rest_min }) => {
      expect(minimumFor({ animal })).toMatchObject({ tempC: fromFahrenheit(F), restMin: rest_min, asAsked: true })
      expect(printed(heatRules(animal, false)[0]?.asks ?? [])).toEqual([{ F, s: rest_min * 60 }])
    },
  )
  it.each(SAFE.appendix_b)('Appendix B cooling, $rule', ({ rule, fromF, steps }) => {
    const found = APPENDIX_B.find(({ id }) => id === rule)
    expect(found?.fromC).toBe(fromFahrenheit(fromF))
    expect(found?.steps).toEqual(
      steps.map(({ toF, h_from_start }) => ({ toC: fromFahrenheit(toF), within: h_from_start * 3600 })),
    )
  })
  it('whose they are is said where no table is held for the authority asked', () => {
    expect(minimumFor({ animal: 'beef' }, 'IE')).toMatchObject({ authority: 'US', asAsked: false })
  })
  it('want the rest too', () => {
    const minimum = minimumFor({ animal: 'beef' })
    expect(meetsMinimum([60, ...held(63, 181), 60], 1, minimum)).toBe(true)
    expect(meetsMinimum([60, ...held(63, 170), 60], 1, minimum)).toBe(false)
  })
})

describe('UK Food Standards Agency', () => {
  it.each(SAFE.uk_throughout)('$C °C for $s s is cooked throughout', ({ C, s }) => {
    expect(UK_THROUGHOUT.some(({ tempC, heldS }) => Math.abs(tempC - C) < 1e-9 && heldS === s)).toBe(true)
  })
})

describe('meat whose surface is inside', () => {
  it('is pierced meat of any cut, and rolled meat by the catalogue', () => {
    expect(surfaceInside({ name: 'beef rib, bone in' })).toBe(false)
    expect(surfaceInside({ name: 'beef rib, bone in' }, true)).toBe(true)
    expect(surfaceInside({ name: 'leg of lamb, boned and rolled' })).toBe(true)
  })
  it('has its own minimums beside those of whole meat', () => {
    const ids = (inside: boolean) => heatRules('beef', inside).map(({ id }) => id)
    expect(ids(false)).toEqual(['consumer-minimum', 'food-code-roast'])
    expect(ids(true)).toEqual(['consumer-minimum', 'food-code-roast', 'food-code-pierced', 'uk-throughout'])
  })
})
