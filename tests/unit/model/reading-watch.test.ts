import { describe, expect, it } from 'vitest'
import { asItWent } from '../../../lib/model/as-it-went'
import { forecastCook, prepared } from '../../../lib/model/forecast-cook'
import { cookAllBy } from '../../../lib/model/kernels'
import { watchInput } from '../../../lib/model/read-summary'
import { insideMeat, type WatchInput, watchReadings } from '../../../lib/model/reading-watch'
import { type Sample, samplesOf } from '../../../lib/model/readings'
import { celsius, seconds } from '../../../lib/units'
import { cookPlan } from '../../laws/cooks'

const minutes = (count: number, tempAt: (minute: number) => number): Sample[] =>
  Array.from({ length: count + 1 }, (_, m) => ({ timeS: 60 * m, tempC: tempAt(m) }))
const usual = (m: number) => 5 + 0.4 * m
const input = (change: Partial<WatchInput>): WatchInput => ({
  core: minutes(60, usual),
  cooker: minutes(60, (m) => 150 + 3 * Math.sin(m)),
  nowS: 3600,
  aim: { tempC: 150, sinceS: 0 },
  airC: 15,
  targetC: 52,
  likely: { lowC: 15, highC: 38 },
  lid: [],
  burns: true,
  ...change,
})
const codes = (change: Partial<WatchInput>) => watchReadings(input(change)).map(({ code }) => code)

describe('troubles that readings show', () => {
  it('a cook that goes as planned has none', () => expect(codes({})).toEqual([]))

  it.each([
    ['probe-out', { core: minutes(60, (m) => (m > 55 ? 95 : usual(m))) }],
    ['probe-out', { core: minutes(60, (m) => (m > 57 ? 16 : usual(m))) }],
    ['probe-on-bone', { core: minutes(60, (m) => 5 + 0.85 * m) }],
    ['lid-left-open', { cooker: minutes(60, (m) => (m > 52 ? 62 : 150)) }],
    ['fire-dying', { cooker: minutes(60, (m) => (m > 25 ? 150 - 1.2 * (m - 25) : 150)) }],
    ['cooker-off-plan', { cooker: minutes(60, () => 122) }],
    ['thawing-core', { core: minutes(60, () => -0.8), likely: undefined }],
    ['stall', { core: minutes(60, (m) => (m > 10 ? 68 + 0.01 * m : 67)), targetC: 92, likely: undefined }],
  ] as const)('%s is seen, alone, and says what to do', (code, change) => {
    const found = watchReadings(input(change))
    expect(found.map((watched) => watched.code)).toEqual([code])
    expect(found[0]?.sentence).toMatch(/^The .*\.$/)
    expect(found[0]?.action).toMatch(/\.$/)
  })

  it('a lid that was off for a minute and is shut again is no trouble', () => {
    const dip = (m: number) => (m < 50 ? 150 : m < 52 ? 70 : 150 - 80 * Math.exp(-(m - 52) / 3))
    expect(codes({ cooker: minutes(60, dip) })).toEqual([])
  })
  it('a lid opening that is planned is no trouble while it lasts', () => {
    const cooker = minutes(60, (m) => (m > 57 ? 70 : 150))
    expect(codes({ cooker, lid: [[3440, 3640]] })).toEqual([])
  })
  it('a probe that was put back is in again', () => {
    const core = minutes(60, (m) => (m > 30 && m < 40 ? 95 : usual(m)))
    expect(codes({ core })).toEqual([])
    expect(insideMeat(core).map(({ timeS }) => timeS / 60)).not.toContain(35)
    expect(insideMeat(core)).toHaveLength(52)
  })
  it('a cooker that always runs under its dial is not dying when it drifts', () => {
    const cooker = minutes(80, (m) => (m > 45 ? 132 - 0.36 * (m - 45) : 132))
    expect(codes({ cooker, nowS: 80 * 60 })).not.toContain('fire-dying')
  })
  it('an oven does not die for want of fuel', () => {
    const cooker = minutes(60, (m) => (m > 25 ? 150 - 1.2 * (m - 25) : 150))
    expect(codes({ cooker, burns: false })).toEqual(['cooker-off-plan'])
  })
  it('fifty cooks that go as a fire goes raise few alarms that nothing calls for', () => {
    const plan = cookPlan({ kg: 2.4 })
    const before = forecastCook(plan, { seed: 5, members: 50, kernel: 'simd' })
    const { course } = prepared(plan, 5, cookAllBy('simd'))
    const { trace, moments, members } = before
    const alarms = Array.from({ length: members }, (_, m) => {
      const told = new Set<string>()
      const pullS = (moments.pull as Float64Array)[m] as number
      const readings = Array.from({ length: Math.floor(pullS / 60) }, (_, minute) => {
        const i = m * trace.count + minute - trace.startS / 60
        const row = { core: trace.probeC, cooker: trace.cookerC }
        return (['core', 'cooker'] as const).map((sensor) => ({
          t: seconds(60 * minute),
          sensor,
          tempC: celsius(row[sensor][i] as number),
        }))
      }).flat()
      for (let nowS = 600; nowS < pullS; nowS += 300) {
        const heard = readings.filter(({ t }) => t <= nowS)
        const [core, cooker] = [samplesOf(heard, 'core'), samplesOf(heard, 'cooker')]
        const went = asItWent(course, { marks: [], core, cooker, nowS })
        const found = watchReadings(watchInput(before, { went, nowS, pastS: went.pastS }, { readings: heard }))
        for (const { code } of found) told.add(code)
      }
      return [...told]
    }).flat()
    expect(alarms.length).toBeLessThanOrEqual(5)
  }, 30_000)
})
