import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { CookerKind } from '../../lib/model/cook'
import { CUTS } from '../../lib/model/cuts'
import { celsius, minutes } from '../../lib/units'
import { centralRun, cookPlan } from './cooks'

const kinds = fc.constantFrom<CookerKind>('oven', 'convection-oven', 'ceramic-charcoal', 'kettle-charcoal')
const cook = fc.record({
  cut: fc.constantFrom(...CUTS.map((cut) => cut.id)),
  kind: kinds,
  atC: fc.integer({ min: 120, max: 220 }),
  coreC: fc.integer({ min: 40, max: 75 }),
})
const SEAR = { do: 'sear', at: celsius(300), until: { core: celsius(56) }, max: minutes(15) } as const
const pullMin = (plan: ReturnType<typeof cookPlan>) => centralRun(plan).moments.pull / 60
const check = (runs: number) => ({ numRuns: runs, seed: 11 })

test('a heavier roast of the same shape is never sooner', () => {
  const similar = fc.constantFrom(...CUTS.filter((cut) => cut.sizing === 'similar').map((cut) => cut.id))
  fc.assert(
    fc.property(similar, fc.double({ min: 1.02, max: 1.5, noNaN: true }), kinds, (cut, factor, kind) => {
      const kg = CUTS.find(({ id }) => id === cut)?.atMassKg ?? 1
      expect(pullMin(cookPlan({ cut, kg: kg * factor, kind }))).toBeGreaterThan(pullMin(cookPlan({ cut, kg, kind })))
    }),
    check(15),
  )
})

test('a hotter cooker is never later, a warmer start never later, a higher target never sooner', () => {
  fc.assert(
    fc.property(cook, fc.integer({ min: 1, max: 30 }), (plan, more) => {
      const plain = pullMin(cookPlan(plan))
      expect(pullMin(cookPlan({ ...plan, atC: plan.atC + more }))).toBeLessThan(plain)
      expect(pullMin(cookPlan({ ...plan, startC: 4 + more / 2 }))).toBeLessThan(plain)
      expect(pullMin(cookPlan({ ...plan, coreC: plan.coreC + more / 2 }))).toBeGreaterThan(plain)
    }),
    check(12),
  )
})

test('the core is never above the hottest surroundings so far', () => {
  fc.assert(
    fc.property(cook, (plan) => {
      const { trace } = centralRun(cookPlan({ ...plan, sear: SEAR, restMin: 60 }))
      let hottest = 0
      trace.coreC.forEach((core, i) => {
        hottest = Math.max(hottest, trace.cookerC[i] as number)
        expect(core).toBeLessThan(hottest + 0.01)
        expect(core).toBeLessThan(100.5)
      })
    }),
    check(15),
  )
})

test('halving the mesh and the step moves no moment by more than 20 s and no temperature when sliced by more than 0.2 °C', () => {
  fc.assert(
    fc.property(cook, (plan) => {
      const whole = cookPlan({ ...plan, coreC: Math.min(plan.coreC, 60), sear: SEAR })
      const [coarse, fine] = [centralRun(whole), centralRun(whole, { nodes: 39, stepS: 10 })]
      for (const id of ['pull', 'sear-start', 'off-heat', 'first-slice'] as const)
        expect(Math.abs(coarse.moments[id] - fine.moments[id])).toBeLessThan(20)
      expect(Math.abs(coarse.atSlice.coreC - fine.atSlice.coreC)).toBeLessThan(0.2)
      expect(Math.abs(coarse.peakCoreC - fine.peakCoreC)).toBeLessThan(0.2)
      expect(Math.abs(coarse.lossFrac - fine.lossFrac)).toBeLessThan(0.003)
    }),
    check(12),
  )
})

test('a minute with the lid off costs between 1 and 4 minutes, and ten cost more than one', () => {
  const plain = cookPlan({ cut: 'beef-rib-bone-in', kg: 4 })
  const cost = (open: number) =>
    pullMin({ ...plain, lidOpenings: [{ at: minutes(60), open: minutes(open) }] }) - pullMin(plain)
  expect(cost(1)).toBeGreaterThan(1)
  expect(cost(1)).toBeLessThan(4)
  expect(cost(10)).toBeGreaterThan(2 * cost(1))
})

test('the core rises all through a rest until it peaks, and a longer rest only slices later', () => {
  const short = centralRun(cookPlan({ restMin: 10 }))
  const long = centralRun(cookPlan({ restMin: 25 }))
  expect(long.moments['first-slice'] - short.moments['first-slice']).toBeCloseTo(15 * 60, 6)
  expect(long.atSlice.coreC).toBeGreaterThan(short.atSlice.coreC)
  expect(long.peakCoreC).toBeCloseTo(short.peakCoreC, 1)
  expect(long.peakCoreC).toBeGreaterThan(long.atSlice.coreC)
  expect(long.lossFrac).toBeGreaterThan(short.lossFrac)
})

test('high up water boils sooner, the skin stays cooler and the roast takes longer', () => {
  const altitudes = [0, 1500, 3000].map((altitudeM) => pullMin(cookPlan({ altitudeM })))
  expect(altitudes).toEqual(altitudes.toSorted((a, b) => a - b))
})
