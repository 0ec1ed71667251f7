import { describe, expect, test } from 'vitest'
import { BOX, type Box, spread } from '../../../lib/export/heat-line-lane-boxes'

const box = (x1: number, x2: number): Box => ({
  id: `${x1}`,
  number: '1',
  name: null,
  live: false,
  past: false,
  x1,
  x2,
})

describe('spread: boxes of one lane', () => {
  test('shots minutes apart stand clear of each other, in their order, none narrower than its number', () => {
    const out = spread([box(100, 116), box(104, 120), box(121, 180), box(182, 186)])
    out.forEach((each, i) => {
      expect(each.x2 - each.x1).toBeGreaterThanOrEqual(BOX.least)
      const before = out[i - 1]
      if (before) expect(each.x1 - before.x2).toBeGreaterThanOrEqual(BOX.gap)
    })
  })
  test('none runs over the right edge while there is room for all', () => {
    const out = spread([box(100, 116), box(180, 196), box(184, 200), box(186, 202)], 204)
    expect(out.map(({ x1, x2 }) => [x1, x2])).toEqual([
      [100, 116],
      [144, 160],
      [166, 182],
      [188, 204],
    ])
  })
  test('one that stands free keeps its place', () => {
    expect(spread([box(10, 40), box(60, 90)])).toEqual([box(10, 40), box(60, 90)])
  })
})
