import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Forecast } from '../../lib/model/forecast'
import { forecastCook } from '../../lib/model/forecast-cook'
import { MOMENT_IDS } from '../../lib/model/moment-ids'
import { anyPlan } from './cooks'
import { comparisonFaults, forecastFaults } from './plan-faults'

/** Ten thousand in the proof "plans". */
const PLANS = 80
const MEMBERS = 4

// By the fast kernel, for time; tests/unit/model/kernels-agree.test.ts holds it to the plain one.
test(`any plan: over ${PLANS} random ones no number is missing, no moment or quantile out of order, no meat hotter than its surroundings`, () => {
  fc.assert(
    fc.property(anyPlan, fc.integer({ min: 0, max: 1e6 }), (plan, seed) => {
      expect(forecastFaults(forecastCook(plan, { seed, members: MEMBERS, kernel: 'simd' }))).toEqual([])
    }),
    { numRuns: PLANS, seed: 7 },
  )
}, 240_000)

test('any plan: heavier is never sooner, hotter never later', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      expect(comparisonFaults(plan)).toEqual([])
    }),
    { numRuns: 40, seed: 8 },
  )
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
