import { describe, expect, test } from 'vitest'
import { crossing, hasMet, peakOf, toward } from '../../../lib/model/crossing'

describe('crossing', () => {
  test('a level half way is met half way through the step, and never outside it', () => {
    expect(crossing(50, 54, 52)).toBe(0.5)
    expect(crossing(54, 50, 53)).toBe(0.25)
    expect(crossing(50, 54, 60)).toBe(1)
    expect(crossing(50, 50, 50)).toBe(1)
  })
  test('a watch waits to rise to a higher level and to fall to a lower one', () => {
    expect(hasMet(toward('probe', 54, 50), 53)).toBe(false)
    expect(hasMet(toward('probe', 54, 50), 54)).toBe(true)
    expect(hasMet(toward('probe', 46, 50), 47)).toBe(false)
    expect(hasMet(toward('probe', 46, 50), 45)).toBe(true)
  })
  test('the top of a parabola is found from three samples at uneven steps', () => {
    const curve = (t: number) => 60 - 0.01 * (t - 7) ** 2
    const top = peakOf(curve(-30), curve(0), curve(20), 30, 20)
    expect(top.offsetS).toBeCloseTo(7, 9)
    expect(top.value).toBeCloseTo(60, 9)
  })
})
