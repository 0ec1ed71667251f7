import { expect, test } from 'vitest'
import { boilingC, pressureAtPa, saturationPa, saturationSlopePerK } from '../../../lib/model/vapour'

test('water boils at 100 °C at the sea, and at about 95 °C at 1,500 m', () => {
  expect(boilingC(pressureAtPa(0))).toBeCloseTo(100, 1)
  expect(boilingC(pressureAtPa(1500))).toBeGreaterThan(94.5)
  expect(boilingC(pressureAtPa(1500))).toBeLessThan(95.5)
})
test('boiling is where saturation meets the pressure, and the slope is its derivative', () => {
  for (const t of [10, 60, 99]) {
    expect(boilingC(saturationPa(t))).toBeCloseTo(t, 9)
    const slope = Math.log(saturationPa(t + 1e-4) / saturationPa(t - 1e-4)) / 2e-4
    expect(saturationSlopePerK(t)).toBeCloseTo(slope, 6)
  }
})
