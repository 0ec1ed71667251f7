import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Forecast } from '../../lib/model/forecast'
import { forecastCook } from '../../lib/model/forecast-cook'
import { MOMENT_IDS, type MomentId } from '../../lib/model/moment-ids'
import { windowOf } from '../../lib/model/quantiles'
import { anyPlan } from './cooks'

const BESIDE: readonly MomentId[] = ['turn', 'carryover-peak']
const CHAIN = MOMENT_IDS.filter((id) => !BESIDE.includes(id))
const PLANS = 30
const MEMBERS = 24
const overPlans = (law: (forecast: Forecast) => void) =>
  fc.assert(
    fc.property(anyPlan, fc.integer({ min: 0, max: 1e6 }), (plan, seed) =>
      law(forecastCook(plan, { seed, members: MEMBERS })),
    ),
    { numRuns: PLANS, seed: 7 },
  )

test(`chain: moments are in order in every one of ${MEMBERS} members of ${PLANS} random plans`, () => {
  overPlans(({ moments, members }) => {
    for (let m = 0; m < members; m++) {
      const times = CHAIN.flatMap((id) => (moments[id] ? [moments[id][m] as number] : []))
      expect(times).toEqual(times.toSorted((a, b) => a - b))
      expect(moments['meat-on']?.[m]).toBe(0)
    }
  })
}, 120_000)

test(`windows: early, likely, late are in order, and values finite, over ${PLANS} random plans`, () => {
  overPlans((forecast) => {
    for (const samples of Object.values(forecast.moments)) {
      const { early, q10, likely, q90, late } = windowOf(samples)
      const known = [early, q10, likely, q90, late].map((t) => t ?? Infinity)
      expect(known).toEqual(known.toSorted((a, b) => a - b))
      expect(samples.some(Number.isNaN)).toBe(false)
    }
    const { trace, atSlice, offHeat, peakCoreC, lossFrac, lethalityLog } = forecast
    for (const values of [
      trace.coreC,
      trace.probeC,
      trace.surfaceC,
      trace.cookerC,
      atSlice.coreC,
      offHeat.probeC,
      peakCoreC,
    ])
      expect(values.every((t) => t > -20 && t < 450)).toBe(true)
    expect(lossFrac.every((loss) => loss >= 0 && loss < 0.8)).toBe(true)
    expect(lethalityLog.every((log) => log >= 0)).toBe(true)
  })
}, 120_000)

test('chance: the same seed gives the same bytes, another seed others', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const bytes = (seed: number) =>
        JSON.stringify(forecastCook(plan, { seed, members: 6 }), (_, x) =>
          ArrayBuffer.isView(x) ? [...(x as Float64Array)].map(String) : x,
        )
      expect(bytes(5)).toBe(bytes(5))
      expect(bytes(5)).not.toBe(bytes(6))
    }),
    { numRuns: 6, seed: 7 },
  )
}, 60_000)

test('chance: a small ensemble is the beginning of a large one', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const [small, large] = [8, 20].map((members) => forecastCook(plan, { seed: 3, members }).moments) as [
        Forecast['moments'],
        Forecast['moments'],
      ]
      for (const id of MOMENT_IDS) expect(large[id]?.slice(0, 8)).toEqual(small[id])
    }),
    { numRuns: 8, seed: 7 },
  )
}, 60_000)
