import { describe, expect, it } from 'vitest'
import type { Forecast } from '../../../lib/model/forecast'
import { momentsGiven } from '../../../lib/model/moments-given'
import { quantileOf, sortedCopy } from '../../../lib/model/quantiles'

const pull = Float64Array.from({ length: 101 }, (_, m) => 7200 + 10 * (m - 50))
const forecast = { members: pull.length, moments: { pull } } as unknown as Forecast
/** Width of the pull's 80 %, and its middle, with so much left of forty readings. */
const windowAt = (nowS: number, leftK: number, count = 40) => {
  const given = { pastS: {}, nowS, alive: true, extrapolatedS: undefined, left: { leftK, count } }
  const pulls = sortedCopy(momentsGiven(forecast, given).pull as Float64Array)
  return { width: quantileOf(pulls, 0.9) - quantileOf(pulls, 0.1), middle: quantileOf(pulls, 0.5) }
}

describe('the window of a pull', () => {
  it('is wider where the model follows the readings badly, narrower where it follows them well, about one middle', () => {
    const [well, usual, badly] = [0.1, 0.19, 0.3].map((leftK) => windowAt(3600, leftK)) as [W, W, W]
    expect(usual.width).toBeCloseTo(800)
    expect(well.width).toBeCloseTo(480)
    expect(badly.width).toBeCloseTo(1440)
    expect([well.middle, badly.middle]).toEqual([usual.middle, usual.middle])
  })
  it('is left as it is near the pull, and while there are few readings', () => {
    expect(windowAt(7200 - 300, 0.3).width).toBeCloseTo(windowAt(7200 - 300, 0.19).width)
    expect(windowAt(3600, 0.3, 2).width).toBeLessThan(880)
  })
})
type W = ReturnType<typeof windowAt>
