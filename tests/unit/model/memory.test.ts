import { describe, expect, it } from 'vitest'
import type { CookPlan } from '../../../lib/model/cook'
import { COOKERS } from '../../../lib/model/cooker'
import { forecastCook, prepared } from '../../../lib/model/forecast-cook'
import { cookAllBy } from '../../../lib/model/kernels'
import { type CookerLesson, combineLessons, rememberCook } from '../../../lib/model/memory'
import { priorOf } from '../../../lib/model/memory-prior'
import { medianOf } from '../../../lib/model/quantiles'
import { chanceOf } from '../../../lib/model/random'
import { simulate } from '../../../lib/model/simulate'
import { centralMember, drawLatents } from '../../../lib/model/spread'
import { ROASTS, type Roasted, readingsOf, roastPlan } from '../../twins/twin'

const plan = roastPlan('steady', ROASTS[0] as Roasted, chanceOf(1, 1, 1))
const SIMD = { seed: 1, kernel: 'simd' } as const
/** The likely cook in a cooker that stands so far off its dial. */
function readWith(levelK: number) {
  const { setting } = prepared(plan, 1, cookAllBy('simd'))
  const member = { ...centralMember(plan.roast.start, COOKERS[plan.cooker.kind]), levelK }
  const { trace, moments } = simulate({ ...setting, endsAtSlice: true }, member)
  const at = (row: ArrayLike<number>, timeS: number) => row[Math.round(timeS / 60)] as number
  return readingsOf(chanceOf(1, 2, 3), {
    fromS: 0,
    untilS: moments.pull + 60,
    coreC: (timeS) => at(trace.probeC, timeS),
    cookerC: (timeS) => at(trace.cookerC, timeS) + levelK,
  })
}
const learn = (levelK: number, from: CookPlan = plan) =>
  rememberCook(from, { readings: readWith(levelK) }, { cook: 'hero', date: '2027-05-15', ...SIMD }) as CookerLesson
const pull = (cooker: CookPlan['cooker']) =>
  medianOf(forecastCook({ ...plan, cooker }, { ...SIMD, members: 64 }).moments.pull as Float64Array)

describe('cooker memory', { timeout: 60_000 }, () => {
  const cool = learn(-20)
  it('a cook in a cooker that runs cool teaches so, and the next forecast is later and surer', () => {
    expect(cool.level.mean).toBeLessThan(-5)
    expect(cool.level.sd).toBeLessThan(cool.level.before)
    const memory = combineLessons([cool, { ...cool, date: '2027-05-16' }, { ...cool, date: '2027-05-17' }])
    expect(pull({ ...plan.cooker, memory } as CookPlan['cooker'])).toBeGreaterThan(1.05 * pull(plan.cooker))
    const hot = combineLessons([learn(20)])
    expect(pull({ ...plan.cooker, memory: hot } as CookPlan['cooker'])).toBeLessThan(pull(plan.cooker))
  })
  it('what earlier cooks taught does not count twice', () => {
    const memory = combineLessons([cool])
    expect(learn(-20, { ...plan, cooker: { ...plan.cooker, memory } as CookPlan['cooker'] })).toEqual(cool)
  })
  it('cooks that agree make it surer, one listed twice does not, and none teach nothing', () => {
    const [one, again, two] = [[cool], [cool, cool], [cool, { ...cool, date: '2027-06-01' }]].map(combineLessons)
    expect(again).toEqual(one)
    expect(combineLessons([cool, { ...cool, cook: 'copy/hero' }])).toEqual(one)
    expect(two?.level.sd).toBeLessThan(one?.level.sd as number)
    expect(one?.level.sd).toBeCloseTo(cool.level.sd)
    expect(one?.pace.mean).toBeCloseTo(cool.pace.mean)
    expect(combineLessons([])).toBeUndefined()
  })
  it('a cook whose probe was never read teaches nothing', () => {
    const readings = readWith(-20).filter(({ sensor }) => sensor === 'cooker')
    expect(rememberCook(plan, { readings }, { cook: 'hero', date: '2027-05-15', ...SIMD })).toBeUndefined()
  })
  it('without a memory the draws are what they were; with one the day keeps its own part of the level', () => {
    const draws = drawLatents(1, 1)
    expect(priorOf(plan.cooker).of(draws)).toBe(draws)
    const memory = { cooks: 9, level: { mean: -12, sd: 0 }, pace: { mean: 0, sd: 0 } }
    const { mean, sd } = priorOf({ kind: 'kettle-charcoal', memory }).at('level')
    expect(mean).toBeCloseTo(-1)
    expect(sd).toBeCloseTo(Math.sqrt(0.2))
  })
})
