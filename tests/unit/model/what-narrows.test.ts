import { describe, expect, it } from 'vitest'
import type { CookPlan } from '../../../lib/model/cook'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { windowOf } from '../../../lib/model/quantiles'
import { type Measurable, type Narrowings, whatNarrows, widthOf } from '../../../lib/model/what-narrows'
import { metres, minutes } from '../../../lib/units'
import { cookPlan } from '../../laws/cooks'

const tenderloin = (more: Partial<CookPlan['roast']> = {}): CookPlan => {
  const plan = cookPlan({ cut: 'beef-tenderloin', kg: 2, kind: 'oven', atC: 200, coreC: 50 })
  return { ...plan, roast: { ...plan.roast, ...more } }
}
const found = (plan: CookPlan, members = 128) => {
  const narrowings = whatNarrows(forecastCook(plan, { seed: 1, members }))
  if (!narrowings) throw new Error('nothing narrows')
  return narrowings
}
const of = ({ each }: Narrowings, what: Measurable) => each.find((one) => one.what === what)

describe('what narrows the window at pull', () => {
  const guessed = found(tenderloin())
  it('ranks the thickness of a tenderloin first, and never widens a window by measuring', () => {
    expect(guessed.each[0]?.what).toBe('thickness')
    expect(guessed.each.map(({ gainS }) => gainS)).toEqual(guessed.each.map(({ gainS }) => gainS).sort((a, b) => b - a))
    for (const { gainS, measured } of guessed.each) {
      expect(measured).toBe(false)
      expect(gainS).toBeGreaterThanOrEqual(0)
    }
  })
  it('foretells what a whole ensemble with the thickness measured comes to, within a tenth of the window', () => {
    const members = 600
    const wide = windowOf(forecastCook(tenderloin(), { seed: 1, members }).moments.pull as Float64Array)
    const asTypical = tenderloin({ thickness: metres(0.075 * (2 / 2.27) ** (1 / 3)) })
    const narrow = windowOf(forecastCook(asTypical, { seed: 1, members }).moments.pull as Float64Array)
    const width = ({ early, late }: typeof wide) => (late as number) - (early as number)
    const ratio = width(narrow) / width(wide)
    const told = of(guessed, 'thickness')
    if (!told) throw new Error('no thickness')
    expect(Math.abs(widthOf(told.other) / widthOf(guessed.now) - ratio)).toBeLessThan(0.1)
  })
  it('tells of a thickness that was measured what the window would be without it, and where', () => {
    const thick = of(found(tenderloin({ thickness: metres(0.09) })), 'thickness')
    const now = found(tenderloin({ thickness: metres(0.09) })).now
    expect(thick?.measured).toBe(true)
    expect(thick?.gainS).toBeGreaterThan(0)
    expect(thick?.other.earlyS).toBeLessThan(now.earlyS)
  })
  it('leaves what is measured to the rulers: with thickness known, the other sides add little', () =>
    expect(of(found(tenderloin({ thickness: metres(0.075) })), 'width-and-length')?.gainS).toBeLessThan(
      0.3 * (of(guessed, 'width-and-length')?.gainS as number),
    ))
  it('is silent where pull goes by the clock', () => {
    const plan = tenderloin()
    const stages = plan.stages.map((stage) =>
      stage.do === 'roast' ? { ...stage, until: { after: minutes(60) } } : stage,
    )
    expect(whatNarrows(forecastCook({ ...plan, stages }, { seed: 1, members: 16 }))).toBeUndefined()
  })
})
