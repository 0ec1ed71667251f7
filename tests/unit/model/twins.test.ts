import { describe, expect, it } from 'vitest'
import type { Line } from '../../twins/score'
import { BOUNDS, missesOf, tableOf } from '../../twins/table'
import { FAMILIES } from '../../twins/twin'

/** One kind of five is enough for every day; a hundred of each are the proofs twins-solid and twins-drying. */
const FEW = 1
/** So few are off by more in the mean than many are; the bounds themselves are the proof's. */
const FEW_ALLOW = 1.5

describe('twins: cooks whose truth the forecast is not told', { timeout: 300_000 }, () => {
  it.each(FAMILIES)('family %s: the pull is foretold within the bounds for few', (family) => {
    const { seen } = tableOf(family, 1, FEW, ['probe-at-half'])
    expect(seen.length).toBeGreaterThan(0)
    for (const { horizonMin, maeMin } of seen)
      expect(maeMin, `${horizonMin} min ahead`).toBeLessThan(
        FEW_ALLOW * BOUNDS[family].maeMin[horizonMin as keyof typeof BOUNDS.A.maeMin],
      )
  })
  it('a bound that is missed is told with its figure', () => {
    const line = { horizonMin: 15, maeMin: 1.2, bestBaseline: 1, coverage: 0.95, sliceProbeMaeC: 1.5 } as Line
    expect(missesOf('A', line)).toEqual([
      'A at 15 min: error 1.20 min, at most 1',
      'A at 15 min: error 1.20 min, the best baseline 1.00',
      'A at 15 min: 80 % intervals cover 95 %',
      'A at 15 min: probe at slicing off by 1.50 °C, at most 1',
    ])
  })
})
