import fc from 'fast-check'
import { expect, test } from 'vitest'
import { coolingCourse, FRIDGE, ICE_BATH, slab, whenAtS } from '../../lib/model/cooling'
import { greatestThickness, keepsRule, TWO_STEP } from '../../lib/model/cooling-rules'
import { CUTS } from '../../lib/model/cuts'
import { tableVerdict } from '../../lib/model/dwell-table'
import { MEATS, propertyTable } from '../../lib/model/materials'
import { lethalityLog, longestAboveS } from '../../lib/model/time-at-heat'

const STEP_S = 60
const history = fc.array(fc.double({ min: 20, max: 80, noNaN: true }), { minLength: 2, maxLength: 120 })
const chill = fc.constantFrom(FRIDGE, ICE_BATH)
const LEAN = propertyTable(MEATS['beef round, lean'])
const check = (numRuns: number) => ({ numRuns, seed: 23 })

test('more heat is never less lethality, nor a dwell less held, nor a kept table lost', () => {
  fc.assert(
    fc.property(history, fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { maxLength: 120 }), (plain, more) => {
      const warmer = plain.map((c, i) => c + (more[i] ?? 0))
      expect(lethalityLog(warmer, STEP_S)).toBeGreaterThanOrEqual(lethalityLog(plain, STEP_S) - 1e-9)
      expect(longestAboveS(warmer, STEP_S, 60)).toBeGreaterThanOrEqual(longestAboveS(plain, STEP_S, 60) - 1e-6)
      if (tableVerdict(plain, STEP_S).met) expect(tableVerdict(warmer, STEP_S).met).toBe(true)
    }),
    check(400),
  )
})

test('a longer cook is never less lethality', () => {
  fc.assert(
    fc.property(history, history, (first, rest) => {
      expect(lethalityLog([...first, ...rest], STEP_S)).toBeGreaterThanOrEqual(lethalityLog(first, STEP_S) - 1e-9)
    }),
    check(200),
  )
})

test('a piece twice as thick never cools sooner', () => {
  const thickness = fc.double({ min: 0.005, max: 0.08, noNaN: true })
  fc.assert(
    fc.property(
      thickness,
      fc.integer({ min: 50, max: 85 }),
      fc.integer({ min: 6, max: 40 }),
      chill,
      (m, from, to, cold) => {
        const at = (thick: number) => whenAtS(coolingCourse(slab(LEAN, thick, from), cold, { downToC: to }), to)
        expect(at(2 * m)).toBeGreaterThan(at(m) as number)
      },
    ),
    check(60),
  )
})

test('a colder or better stirred place never cools later, and no piece ends colder than its place', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 0.1, noNaN: true }), fc.integer({ min: 50, max: 85 }), (m, from) => {
      const [fridge, ice] = [FRIDGE, ICE_BATH].map((cold) => coolingCourse(slab(LEAN, m, from), cold, { downToC: 10 }))
      expect(whenAtS(ice as never, 10)).toBeLessThanOrEqual(whenAtS(fridge as never, 10) as number)
      expect(Math.min(...(fridge?.hottestC ?? []))).toBeGreaterThan(FRIDGE.airC)
    }),
    check(40),
  )
})

test('of every cut the greatest thickness keeps the two-step rule and a tenth more does not', () => {
  for (const cut of CUTS.filter((_, i) => i % 4 === 0)) {
    const m = greatestThickness(cut, 60, FRIDGE) as number
    const table = propertyTable(cut.composition)
    const keeps = (thick: number) =>
      keepsRule(coolingCourse(slab(table, thick, 57), FRIDGE, { downToC: 4.9 }), TWO_STEP)
    expect([cut.id, keeps(m), keeps(1.1 * m)]).toEqual([cut.id, true, false])
  }
})
