import { describe, expect, it } from 'vitest'
import { chooseRule, ruleTimes } from '../../../lib/day/call-rule'
import { cookTimes } from '../../../lib/day/cook-times'
import { probeCrossing, readingAt } from '../../../lib/day/probe-crossing'
import type { MomentId } from '../../../lib/model/moment-ids'
import { syntheticForecast } from './synthetic-forecast'

const LEAD = { release: 15, setup: 5, before: 1 }
const cook = (seed: number, members = 500) => cookTimes('hero', syntheticForecast('hero', { members, seed }))

function missed(moment: MomentId, seed: number): number {
  const rule = chooseRule(cook(1), moment, LEAD)
  if (!rule) return 1
  const fresh = cook(seed, 2000)
  const needed = rule.by === 'clock' ? LEAD.setup + LEAD.before : LEAD.release + LEAD.setup + LEAD.before
  const called = ruleTimes(fresh, rule)
  const times = fresh.at(moment) as Float64Array
  return times.filter((t, m) => t - (called[m] as number) < needed).length / times.length
}

describe('call rule', () => {
  it('calls by the clock for a moment that the clock decides', () => {
    // Six minutes of lead, and three of margin.
    expect(chooseRule(cook(1), 'turn', LEAD)).toEqual({ by: 'clock', standby: 60 - 6 - 3 })
  })
  it('calls by the probe for the pull, at a whole or half degree', () => {
    const rule = chooseRule(cook(1), 'pull', LEAD)
    expect(rule?.by).toBe('trigger')
    expect(rule?.by === 'trigger' && rule.probe * 2).toSatisfy(Number.isInteger)
  })
  it('follows an earlier moment when that costs no more standing about', () => {
    const longRest = cookTimes('hero', syntheticForecast('hero', { members: 500, seed: 1, restMin: 40 }))
    expect(chooseRule(longRest, 'first-slice', LEAD)).toEqual({ by: 'follows', moment: 'off-heat', afterMin: 19 })
  })
  it('has no rule for a moment that the cook does not have', () => {
    const oven = cookTimes('hero', syntheticForecast('hero', { members: 50, seed: 1, sear: false }))
    expect(chooseRule(oven, 'sear-start', LEAD)).toBeNull()
  })
  for (const moment of ['cooker-steady', 'pull', 'vents-open', 'sear-start', 'off-heat', 'first-slice'] as const)
    it(`keeps the lead of ${moment} in at least 95 % of 2,000 members it has not seen`, () => {
      expect(missed(moment, 77)).toBeLessThanOrEqual(0.05)
    })
  it('waits no longer than it must: half a degree more would miss too often', () => {
    const seen = cook(1)
    const rule = chooseRule(seen, 'pull', LEAD)
    if (rule?.by !== 'trigger') throw new Error('not a trigger')
    const called = ruleTimes(seen, { by: 'trigger', probe: rule.probe + 0.5 })
    const late = (seen.at('pull') as Float64Array).filter((t, m) => t - (called[m] as number) < 21).length
    expect(late / 500).toBeGreaterThan(0.01)
  })
})

describe('probe crossing', () => {
  it('reads the level at the crossing, between two samples of the trace', () => {
    const seen = cook(3, 20)
    const crossed = probeCrossing(seen, 38)
    for (let m = 0; m < 20; m++) expect(readingAt(seen, m, (crossed[m] as number) * 60)).toBeCloseTo(38, 3)
  })
  it('is probe-in where the probe reads more by then', () => {
    const seen = cook(3, 20)
    expect(probeCrossing(seen, 0)).toEqual(seen.at('probe-in'))
  })
  it('never comes above the temperature at pull', () => {
    expect([...probeCrossing(cook(3, 20), 60)].every((t) => t === Number.POSITIVE_INFINITY)).toBe(true)
  })
})
