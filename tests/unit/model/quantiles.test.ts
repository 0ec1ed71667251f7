import { expect, test } from 'vitest'
import { spreadOf, windowOf } from '../../../lib/model/quantiles'

test('window: one that never gets there is later than every time, and a quantile that falls there is null', () => {
  const half = windowOf(Float64Array.from([10, 20, 30, Infinity, Infinity, Infinity]))
  expect(half).toEqual({ early: 12.5, likely: null, late: null, q10: 15, q90: null, reached: 0.5 })
})
test('window: none ever gets there', () => {
  expect(windowOf(Float64Array.of(Infinity, Infinity))).toMatchObject({
    early: null,
    likely: null,
    late: null,
    reached: 0,
  })
})
test('spread: 5, 50 and 95 % of 0 to 100, in whatever order they come', () => {
  const shuffled = Float64Array.from({ length: 101 }, (_, i) => (i * 37) % 101)
  expect(spreadOf(shuffled)).toEqual({ low: 5, likely: 50, high: 95 })
})
