import { describe, expect, it } from 'vitest'
import { comeUpS, growthTimeS, lethalityLog, longestAboveS } from '../../../lib/model/time-at-heat'
import { fromFahrenheit } from '../../../lib/units'

const level = (f: number, n: number) => new Array<number>(n).fill(fromFahrenheit(f))

describe('lethality', () => {
  it('at 136 °F takes 28 min for 6.5 log', () => expect(lethalityLog(level(136, 29), 60)).toBeCloseTo(6.5, 9))
  it('is ten times faster 10 °F hotter', () => {
    expect(lethalityLog(level(150, 11), 60) / lethalityLog(level(140, 11), 60)).toBeCloseTo(10, 9)
  })
  it('is no faster above 158 °F, and nothing below 130 °F', () => {
    expect(lethalityLog(level(200, 2), 1)).toBeCloseTo(lethalityLog(level(158, 2), 1), 9)
    expect(lethalityLog(level(129.99, 1000), 60)).toBe(0)
  })
  it('of a ramp hardly depends on how often it is sampled', () => {
    const ramp = (n: number) => Array.from({ length: n + 1 }, (_, i) => 50 + (15 * i) / n)
    expect(lethalityLog(ramp(6), 600)).toBeCloseTo(lethalityLog(ramp(3600), 1), 1)
  })
})

describe('times read off straight lines', () => {
  it('longest stay above a level: the crossings count, and two stays do not add up', () => {
    expect(longestAboveS([0, 10, 0], 10, 5)).toBeCloseTo(10, 9)
    expect(longestAboveS([0, 10, 0, 10, 10, 0], 10, 5)).toBeCloseTo(20, 9)
    expect(longestAboveS([1, 2, 3], 10, 5)).toBe(0)
  })
  it('between 5 and 57 °C: a rise from 0 to 100 °C spends 52 of 100 s there', () => {
    expect(growthTimeS([0, 100], 100)).toBeCloseTo(52.2, 1)
    expect(growthTimeS([60, 60, 60], 100)).toBe(0)
    expect(growthTimeS([20, 20, 20], 100)).toBe(200)
  })
  it('warming up: from 10 to 54.4 °C before it is first there, and no more when it cools and warms again', () => {
    expect(comeUpS([0, 100], 100)).toBeCloseTo(44.4, 1)
    expect(comeUpS([0, 100, 0, 100], 100)).toBeCloseTo(44.4, 1)
    expect(comeUpS([20, 40, 40], 100)).toBe(200)
    expect(comeUpS([70, 20], 100)).toBe(0)
  })
})
