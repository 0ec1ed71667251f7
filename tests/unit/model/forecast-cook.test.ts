import { describe, expect, test } from 'vitest'
import type { CookPlan, Stage } from '../../../lib/model/cook'
import type { Forecast } from '../../../lib/model/forecast'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { windowOf } from '../../../lib/model/quantiles'
import { summarise } from '../../../lib/model/summary'
import { celsius, fromFahrenheit, kilograms, minutes } from '../../../lib/units'
import { cookPlan } from '../../laws/cooks'

const SEED = 1
const run = (plan: CookPlan, members = 48) => forecastCook(plan, { seed: SEED, members })
const roast = (atC: number, coreC: number, more: Partial<Stage & { do: 'roast' }> = {}): Stage => ({
  do: 'roast',
  at: celsius(atC),
  until: { core: celsius(coreC) },
  probe: { at: 'start' },
  ...more,
})
const withStages = (stages: readonly Stage[], change: Parameters<typeof cookPlan>[0] = {}): CookPlan => ({
  ...cookPlan(change),
  stages,
})
const preheat = (atC: number): Stage => ({ do: 'preheat', at: celsius(atC) })
const rest: Stage = { do: 'rest', until: { after: minutes(15) } }
const codes = (forecast: Forecast) => forecast.warnings.map(({ code }) => code)
const likelyMin = (forecast: Forecast, id: keyof Forecast['moments']) =>
  (windowOf(forecast.moments[id] as Float64Array).likely ?? Infinity) / 60

describe('common practice', () => {
  test.each(['ceramic-charcoal', 'kettle-charcoal'] as const)(
    'a 9 lb beef rib at 325 °F over charcoal (%s) reads 110 °F within 2 h 30 min ± 20 % (no source)',
    (kind) => {
      const atC = fromFahrenheit(325)
      const plan = withStages(
        [preheat(atC), roast(atC, fromFahrenheit(110), { turn: { at: 'half' }, probe: { at: 'turn' } }), rest],
        { cut: 'beef-rib-bone-in', kg: kilograms(9 * 0.45359237), kind },
      )
      const pull = likelyMin(run(plan, 256), 'pull')
      expect(pull).toBeGreaterThan(120)
      expect(pull).toBeLessThan(180)
    },
  )
})

describe('moments', () => {
  test('turn at half stands at half the likely time to pull, within a few minutes', () => {
    const forecast = run(withStages([preheat(150), roast(150, 46, { turn: { at: 'half' } }), rest]), 256)
    expect(Math.abs(2 * likelyMin(forecast, 'turn') - likelyMin(forecast, 'pull'))).toBeLessThan(8)
  })
  test('a probe that goes in late and reads more is pulled that instant, with a warning', () => {
    const forecast = run(withStages([preheat(180), roast(180, 35, { probe: { at: minutes(200) } }), rest]))
    expect(forecast.moments.pull).toEqual(forecast.moments['probe-in'])
    expect(codes(forecast)).toContain('probe-read-more')
  })
  test('an oven has no vents, a cold one no steady moment and is lit as the meat goes in', () => {
    const sear: Stage = { do: 'sear', at: celsius(230), until: { core: celsius(52) }, max: minutes(20) }
    const cold: Stage = { do: 'preheat', at: celsius(150), cold: true }
    const { moments } = run(withStages([cold, roast(150, 46), sear, rest], { kind: 'oven' }))
    expect(moments['vents-open']).toBeUndefined()
    expect(moments['cooker-steady']).toBeUndefined()
    expect(moments['fire-lit']?.every((t) => t === 0)).toBe(true)
    expect(moments['sear-start']?.every((t) => t < Infinity)).toBe(true)
  })
  test('where the cable does not stand the sear it goes by one planned time in every member', () => {
    const sear: Stage = { do: 'sear', at: celsius(320), until: { core: celsius(52) } }
    const forecast = run(
      withStages([preheat(150), roast(150, 46, { probe: { at: 'start', lead: celsius(250) } }), sear, rest]),
    )
    const { 'sear-start': start, 'off-heat': off } = forecast.moments as Record<string, Float64Array>
    const lengths = new Set([...(off as Float64Array)].map((t, m) => Math.round(t - (start?.[m] as number))))
    expect(lengths.size).toBe(1)
    expect(codes(forecast)).toContain('probe-out-for-sear')
  })
  test('a core target above the cooker is never reached: quantiles are null, and it is told with its share', () => {
    const forecast = run(withStages([preheat(80), roast(80, 92), rest]), 12)
    const { moments, warnings } = summarise(forecast, '/cooks/0')
    expect(moments.find(({ id }) => id === 'pull')).toMatchObject({ early: null, likely: null, late: null, reached: 0 })
    expect(warnings.map(({ code }) => code)).toEqual(expect.arrayContaining(['target-above-cooker', 'never']))
    expect(warnings.find(({ code }) => code === 'never')?.sentence).toBe(
      'The probe never reads 92 °C in 100 % of runs.',
    )
    expect(warnings.every(({ path }) => path.startsWith('/cooks/0/stages/1'))).toBe(true)
  })
  test('a stage by the clock lasts as long as written, however little the core still gains', () => {
    const hold: Stage = { do: 'hold', at: celsius(57), until: { after: minutes(480) } }
    const { moments } = run(withStages([preheat(120), roast(120, 55), hold, rest], { kg: 1.2, kind: 'oven' }), 12)
    const { pull, 'off-heat': off } = moments as Record<string, Float64Array>
    for (const [m, t] of (off as Float64Array).entries()) expect(t - (pull?.[m] as number)).toBeCloseTo(480 * 60, 6)
  })
  test('a limit ends a roast that stalls below its target', () => {
    const stalls = roast(80, 79, { max: minutes(14 * 60) })
    const { moments } = run(withStages([preheat(80), stalls, rest], { kg: 1.2, kind: 'oven' }), 12)
    expect(moments.pull?.every((t) => t <= 14 * 3600)).toBe(true)
  })
  test('a rest that never warms so far is told at the rest, with what it waits for', () => {
    const waits: Stage = { do: 'rest', until: { core: celsius(90) } }
    const { warnings, moments } = run(withStages([preheat(150), roast(150, 50), waits]), 12)
    expect(moments.pull?.every((t) => t < Infinity)).toBe(true)
    expect(warnings).toContainEqual({
      code: 'never',
      path: '/stages/2/until',
      sentence: 'The probe never reads 90 °C in 100 % of runs.',
    })
  })
  test('a turn planned for after the roast never comes, and that is told at the turn', () => {
    const { moments, warnings } = run(
      withStages([preheat(180), roast(180, 50, { turn: { after: minutes(600) } }), rest]),
      12,
    )
    expect(moments.turn?.every((t) => t === Infinity)).toBe(true)
    expect(warnings).toContainEqual({
      code: 'turn-too-late',
      path: '/stages/1/turn',
      sentence: 'The roast is over before its turn at 10 h in 100 % of runs: turn it earlier.',
    })
  })
  test('half of a time that never comes is no time: the turn never comes, the probe reads from the start', () => {
    const stages = [preheat(95), roast(95, 90, { turn: { at: 'half' }, probe: { at: 'turn' } }), rest]
    const { moments, warnings } = run(withStages(stages, { kg: 2 }), 24)
    expect(moments.turn?.every((t) => t === Infinity)).toBe(true)
    expect(moments['probe-in']?.every((t) => t === 0)).toBe(true)
    expect(warnings.map(({ code }) => code)).toEqual(expect.arrayContaining(['never', 'turn-too-late']))
    expect(warnings.map(({ code }) => code)).not.toContain('probe-read-more')
  })
})

describe('the ends of an ensemble', () => {
  test.each([2, 6, 10])('a thick loin, the roundest of its ensemble (seed %i), warms like the others', (seed) => {
    const atC = [120, 150, 180][seed % 3] as number
    const sear: Stage = { do: 'sear', at: celsius(250), until: { core: celsius(55) }, max: minutes(25) }
    const stages = [preheat(atC), roast(atC, 50, { turn: { at: 'half' }, probe: { at: 'turn' } }), sear, rest]
    const forecast = forecastCook(withStages(stages, { cut: 'pork-loin-boneless', kg: 1.4, kind: 'convection-oven' }), {
      seed,
    })
    for (const tempC of [...forecast.trace.coreC, ...forecast.peakCoreC]) {
      expect(tempC).toBeGreaterThan(-10)
      expect(tempC).toBeLessThan(110)
    }
  })
})

describe('summary', () => {
  const summary = summarise(run(cookPlan()))
  test('the curve has each minute and each likely moment, in order', () => {
    const times = summary.curve.map(({ t }) => t)
    expect(times).toEqual(times.toSorted((a, b) => a - b))
    for (const { likely } of summary.moments) expect(times).toContain(likely)
    for (let t = 0; t <= 3600; t += 60) expect(times).toContain(t)
  })
  test('the core lies between its low and its high, and what is printed is JSON without gaps', () => {
    for (const { core, coreLow, coreHigh } of summary.curve) {
      expect(core).toBeGreaterThanOrEqual(coreLow)
      expect(core).toBeLessThanOrEqual(coreHigh)
    }
    expect(JSON.parse(JSON.stringify(summary))).toEqual(summary)
  })
})
