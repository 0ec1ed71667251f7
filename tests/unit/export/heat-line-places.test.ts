import fc from 'fast-check'
import { expect, test } from 'vitest'
import { hatch } from '../../../lib/export/drawing'
import { stackInBlocks } from '../../../lib/export/heat-line-blocks'
import { type FlagWish, type PlacedFlag, placeFlags } from '../../../lib/export/heat-line-staircase'
import { fitWords, textWidth } from '../../../lib/export/text-width'

const flag = (pole: number, label: number, half: number): FlagWish => ({
  pole,
  widths: [label, label * 0.6, 36],
  bar: [pole - half, pole + half],
})
const PLOT = { left: 0, right: 1232 }
const flags = fc
  .array(
    fc.tuple(fc.integer({ min: 104, max: 1180 }), fc.integer({ min: 60, max: 220 }), fc.integer({ min: 1, max: 90 })),
    { maxLength: 11 },
  )
  .map((all) => all.sort((a, b) => a[0] - b[0]).map(([pole, label, half]) => flag(pole, label, half)))
const now = fc.option(fc.integer({ min: 104, max: 1224 }))

const extent = (wish: FlagWish, { side, cut }: PlacedFlag) => {
  const width = wish.widths[cut] ?? 0
  return side === 'right' ? [wish.pole + 6, wish.pole + 6 + width] : [wish.pole - 6 - width, wish.pole - 6]
}
test('flags: no label is crossed by a pole or by now, none leaves the picture, no two on one step touch', () => {
  fc.assert(
    fc.property(flags, now, (all, at) => {
      const placed = placeFlags(all, { ...PLOT, now: at })
      all.forEach((wish, i) => {
        const own = placed[i] as PlacedFlag
        const [left = 0, right = 0] = extent(wish, own)
        expect(left).toBeGreaterThanOrEqual(0)
        expect(right).toBeLessThanOrEqual(PLOT.right)
        if (at !== null) expect(left > at || right < at).toBe(true)
        all.forEach((other, j) => {
          if (i === j) return
          const its = placed[j] as PlacedFlag
          // A pole comes down from its own step: it passes every lower one.
          if (other.pole > left - 4 && other.pole < right + 4) expect(own.step).toBeGreaterThan(its.step)
          const [from = 0, to = 0] = extent(other, its)
          const apart = right + 8 <= from || to + 8 <= left
          if (own.step === its.step) expect(apart).toBe(true)
        })
      })
    }),
    { numRuns: 300 },
  )
})
const steps = (all: readonly FlagWish[]) => placeFlags(all, { ...PLOT, now: null }).map(({ step }) => step)
test('flags: the last stands on the lowest step, far ones all do', () => {
  expect(steps([flag(110, 100, 5), flag(400, 100, 5), flag(800, 100, 5)])).toEqual([0, 0, 0])
  expect(steps([flag(110, 100, 5), flag(140, 100, 5), flag(180, 100, 5)])).toEqual([2, 1, 0])
  expect(steps([flag(200, 100, 5), flag(200, 100, 5)])).toEqual([1, 0])
})
test('flags: a label that would reach over now, or over the edge, stands to the left of its pole', () => {
  expect(placeFlags([flag(400, 150, 5)], { ...PLOT, now: 450 })[0]).toMatchObject({ side: 'left', cut: 0 })
  expect(placeFlags([flag(1180, 150, 5)], { ...PLOT, now: null })[0]).toMatchObject({ side: 'left', cut: 0 })
  expect(placeFlags([flag(110, 150, 5)], { ...PLOT, now: 160 })[0]).toMatchObject({ cut: 1, side: 'left' })
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
