import fc from 'fast-check'
import { expect, test } from 'vitest'
import { hatch } from '../../../lib/export/drawing'
import { stackInBlocks } from '../../../lib/export/heat-line-blocks'
import { type FlagReach, staircase } from '../../../lib/export/heat-line-flags'
import { fitWords, textWidth } from '../../../lib/export/text-width'

const reach = (pole: number, label: number, half: number): FlagReach => ({
  pole,
  left: pole - half,
  right: Math.max(pole + half, pole + label),
  labelEnd: pole + label,
})
const flags = fc
  .array(
    fc.tuple(fc.integer({ min: 0, max: 1100 }), fc.integer({ min: 20, max: 220 }), fc.integer({ min: 1, max: 90 })),
    {
      maxLength: 11,
    },
  )
  .map((all) => all.sort((a, b) => a[0] - b[0]).map(([pole, label, half]) => reach(pole, label, half)))

test('staircase: no label is crossed by a later pole, no two on one step touch', () => {
  fc.assert(
    fc.property(flags, (all) => {
      const steps = staircase(all)
      all.forEach((a, i) => {
        all.forEach((b, j) => {
          if (j <= i) return
          const [s, t] = [steps[i] ?? 0, steps[j] ?? 0]
          if (b.pole < a.labelEnd + 8) expect(s).toBeGreaterThan(t)
          else if (s === t) expect(a.right + 8 <= b.left || b.right + 8 <= a.left).toBe(true)
        })
      })
    }),
  )
})
test('staircase: the last flag stands on the lowest step, far ones all do', () => {
  expect(staircase([reach(0, 100, 5), reach(400, 100, 5), reach(800, 100, 5)])).toEqual([0, 0, 0])
  expect(staircase([reach(0, 100, 5), reach(40, 100, 5), reach(80, 100, 5)])).toEqual([2, 1, 0])
})

test('blocks: items keep their order, do not overlap, and stay inside where they fit', () => {
  const items = fc
    .array(fc.record({ at: fc.integer({ min: 0, max: 900 }), height: fc.integer({ min: 20, max: 40 }) }), {
      maxLength: 14,
    })
    .map((all) => all.sort((a, b) => a.at - b.at))
  fc.assert(
    fc.property(items, (all) => {
      const tops = stackInBlocks(all, 0, 900)
      all.forEach((item, i) => {
        const next = tops[i + 1]
        if (next !== undefined) expect((tops[i] ?? 0) + item.height).toBeLessThanOrEqual(next + 1e-6)
      })
      expect(tops.every((top) => top >= -1e-6)).toBe(true)
    }),
  )
})
test('blocks: what has room stands where it wants; touching ones are centred together', () => {
  expect(
    stackInBlocks(
      [
        { at: 100, height: 20 },
        { at: 300, height: 20 },
      ],
      0,
      900,
    ),
  ).toEqual([90, 290])
  expect(
    stackInBlocks(
      [
        { at: 100, height: 20 },
        { at: 102, height: 20 },
      ],
      0,
      900,
    ),
  ).toEqual([81, 101])
})

test('hatch: every stroke stays inside its box', () => {
  const d = hatch(100, 10, 57, 40, 7)
  const points = [...d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])])
  expect(points.length).toBeGreaterThan(12)
  for (const [x = 0, y = 0] of points) {
    expect(x).toBeGreaterThanOrEqual(99.9)
    expect(x).toBeLessThanOrEqual(157.1)
    expect(y).toBeGreaterThanOrEqual(9.9)
    expect(y).toBeLessThanOrEqual(50.1)
  }
})
test('fitWords: cuts at a space, and gives up rather than squeeze', () => {
  const small = { face: 'condensed', weight: 500, size: 12 } as const
  expect(fitWords('Mint sauce', 200, small)).toBe('Mint sauce')
  const cut = fitWords('Cooker and garden wall', 60, small)
  expect(cut).toMatch(/…$/)
  expect(textWidth(cut ?? '', small)).toBeLessThanOrEqual(60)
  expect(fitWords('Cooker and garden wall', 10, small)).toBeNull()
})
