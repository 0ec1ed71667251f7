import { describe, expect, it } from 'vitest'
import { insideMeat, type WatchInput, watchReadings } from '../../../lib/model/reading-watch'
import type { Sample } from '../../../lib/model/readings'

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
  it('an oven does not die for want of fuel', () => {
    const cooker = minutes(60, (m) => (m > 25 ? 150 - 1.2 * (m - 25) : 150))
    expect(codes({ cooker, burns: false })).toEqual(['cooker-off-plan'])
  })
})
