import { describe, expect, test } from 'vitest'
import type { CookPlan, Stage } from '../../../lib/model/cook'
import { COOKERS } from '../../../lib/model/cooker'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { burn_KgpS, chargeShare, HEATING_VALUE_JPKG, lossOutside_WpK } from '../../../lib/model/fuel'
import { summarise } from '../../../lib/model/summary'
import { celsius, kilograms, metresPerSecond, minutes } from '../../../lib/units'
import { cookPlan } from '../../laws/cooks'

const run = (plan: CookPlan, members = 24) => forecastCook(plan, { seed: 1, members })
const lit = (kg: number, more: Partial<CookPlan['cooker']> = {}): CookPlan => {
  const plan = cookPlan({ coreC: 60 })
  return { ...plan, cooker: { ...plan.cooker, fuel: kilograms(kg), ...more } }
}
const told = (plan: CookPlan, code: string) => run(plan).warnings.find((warning) => warning.code === code)
const SEAR: Stage = { do: 'sear', at: celsius(320), until: { after: minutes(5) }, max: minutes(30) }

describe('fuel', () => {
  test('burning gives its heating value, less what full draught carries off', () => {
    const kgPerHour = 3600 * burn_KgpS('charcoal', 1000, 1e9)
    expect(kgPerHour * HEATING_VALUE_JPKG.charcoal).toBeCloseTo(3.6e6, -2)
    expect(burn_KgpS('charcoal', 1000, 1000)).toBeCloseTo((2 * kgPerHour) / 3600, 6)
  })
  test('a full charge gives all, an empty one nothing, an eighth a quarter', () => {
    expect(chargeShare(2, 1)).toBe(1)
    expect(chargeShare(1, 8)).toBeCloseTo(0.25, 12)
    expect(chargeShare(-0.1, 1)).toBe(0)
  })
  test('the habits hold in the usual wind, and indoors wind is nothing', () => {
    expect(lossOutside_WpK(COOKERS['kettle-charcoal'], { windMpS: 2 })).toBeCloseTo(
      COOKERS['kettle-charcoal'].loss_WpK,
      12,
    )
    expect(lossOutside_WpK(COOKERS['kettle-charcoal'], { windMpS: 8 })).toBeGreaterThan(
      COOKERS['kettle-charcoal'].loss_WpK * 1.4,
    )
    expect(lossOutside_WpK(COOKERS.oven, { windMpS: 8, rain: 'heavy' })).toBe(COOKERS.oven.loss_WpK)
  })
  test('rain takes as much heat as the lid boils off, and never more than its wet walls let through', () => {
    const dry = { windMpS: 2 }
    const kettle = COOKERS['kettle-charcoal']
    const more = (rain: 'light' | 'heavy') => lossOutside_WpK(kettle, { ...dry, rain }) - lossOutside_WpK(kettle, dry)
    // 0.26 m² catches 0.52 kg in an hour: with its warming about 385 W, over 135 K
    expect(more('light')).toBeGreaterThan(2.5)
    expect(more('light')).toBeLessThan(3.1)
    expect(more('heavy')).toBe(kettle.loss_WpK / 2)
    expect(lossOutside_WpK(COOKERS.oven, { ...dry, rain: 'heavy' })).toBe(COOKERS.oven.loss_WpK)
  })
  test('in rain a kettle burns more, and comes later to its sear or not at all; the roast itself hardly minds', () => {
    const plan = cookPlan({ coreC: 50, sear: SEAR })
    const wet = { ...plan, surroundings: { ...plan.surroundings, rain: 'heavy' as const } }
    const [fair, foul] = [run(plan), run(wet)]
    const middle = (of: Float64Array | undefined) => [...(of ?? [])].sort((a, b) => a - b)[12] as number
    expect(middle(foul.fuelKg)).toBeGreaterThan(1.2 * middle(fair.fuelKg))
    expect(middle(foul.moments['sear-start'])).toBeGreaterThan(middle(fair.moments['sear-start']) + 60)
    expect(Math.abs(middle(foul.moments.pull) - middle(fair.moments.pull))).toBeLessThan(300)
    expect(told(wet, 'too-rough-a-day')?.sentence).toMatch(
      /and in heavy rain this cooker comes to about \d+ °C, not to 320 °C/,
    )
  })
  test('what is needed is the same however much was lit, and told with a reserve', () => {
    const needed = [undefined, 0.8, 3].map((kg) => run(kg === undefined ? cookPlan({ coreC: 60 }) : lit(kg)).fuelKg)
    expect(needed[1]).toEqual(needed[0])
    expect(needed[2]).toEqual(needed[0])
    const { fuel } = summarise(run(lit(3)))
    expect(fuel).toMatchObject({ kind: 'charcoal', reserveShare: 0.25 })
    expect(fuel?.take).toBeGreaterThanOrEqual(1.25 * (fuel?.needed.likely ?? Infinity))
    expect(fuel?.sentence).toMatch(
      /^Have \d\.\d kg of charcoal at hand: the cook likely burns \d\.\d kg, from \d00 g to \d\.\d kg\.$/,
    )
  })
  test('a kettle takes 0.7 to 2 kg of charcoal for a leg of lamb, an offset several kg of wood (common practice, no source)', () => {
    const likely = (kind: 'kettle-charcoal' | 'offset-wood') =>
      summarise(run(cookPlan({ kind, coreC: 52 }))).fuel?.needed.likely ?? 0
    expect(likely('kettle-charcoal')).toBeGreaterThan(0.7)
    expect(likely('kettle-charcoal')).toBeLessThan(2)
    expect(likely('offset-wood')).toBeGreaterThan(3)
    expect(likely('offset-wood')).toBeLessThan(9)
  })
  test('an oven has none to tell of', () => {
    const forecast = run(cookPlan({ kind: 'oven' }), 4)
    expect(forecast.fuelKg).toBeUndefined()
    expect('fuel' in summarise(forecast)).toBe(false)
  })
})

describe('sentences', () => {
  test('a charge that runs out is told with its time and its share of runs, at the fuel', () => {
    expect(told(lit(1.1), 'fire-runs-out')).toMatchObject({
      path: '/cooker/fuel',
      sentence: expect.stringMatching(
        /^The fire runs out at about (\d h )?\d+ min in \d+ % of runs: light more, or add some before then\.$/,
      ),
    })
    expect(told(lit(4), 'fire-runs-out')).toBeUndefined()
  })
  test('a charge that is gone before the meat goes on is told so', () => {
    expect(told(lit(0.3), 'fire-runs-out')?.sentence).toBe(
      'The fire is too low to hold its heat from the moment the meat goes on in 100 % of runs: light more.',
    )
  })
  test('never reached comes out of a fire that runs out', () => {
    const { moments, warnings } = summarise(run(lit(0.6)), '/cooks/0')
    expect(moments.find(({ id }) => id === 'pull')?.reached).toBeLessThan(0.5)
    expect(warnings.map(({ code }) => code)).toContain('never')
  })
  test('coals too few for the sear are told at the sear', () => {
    const plan = cookPlan({ coreC: 50, sear: SEAR })
    const few = { ...plan, cooker: { ...plan.cooker, fuel: kilograms(1.3) } }
    expect(told(few, 'sear-fuel-short')).toMatchObject({
      path: '/stages/2',
      sentence: expect.stringMatching(
        /^The coals left at the sear are too few for 320 °C in \d+ % of runs: add fuel before the vents open\.$/,
      ),
    })
    expect(told({ ...plan, cooker: { ...plan.cooker, fuel: kilograms(5) } }, 'sear-fuel-short')).toBeUndefined()
  })
  test('a day too rough for the cooker is told where its heat is written', () => {
    const plan = cookPlan({ kind: 'offset-wood', atC: 220 })
    const rough = {
      ...plan,
      surroundings: { ...plan.surroundings, air: celsius(2), wind: metresPerSecond(12) },
    }
    expect(told(rough, 'too-rough-a-day')).toMatchObject({
      path: '/stages/1/at',
      sentence: expect.stringMatching(
        /^In a wind of 12 m\/s at 2 °C this cooker comes to about \d+ °C, not to 220 °C: shelter it, or plan a cooler fire\.$/,
      ),
    })
    expect(told({ ...rough, cooker: { ...rough.cooker, sheltered: true } }, 'too-rough-a-day')).toBeUndefined()
    expect(told(plan, 'too-rough-a-day')).toBeUndefined()
  })
  test('where the lead does not stand the sear the probe comes out and a hand reading follows', () => {
    const plan = cookPlan({ coreC: 50, sear: SEAR })
    const weak = plan.stages.map((stage) =>
      stage.do === 'roast' ? { ...stage, probe: { at: 'start' as const, lead: celsius(250) } } : stage,
    )
    expect(told({ ...plan, stages: weak }, 'probe-out-for-sear')?.sentence).toMatch(/a hand reading follows\.$/)
    expect(told(plan, 'probe-out-for-sear')).toBeUndefined()
  })
})
