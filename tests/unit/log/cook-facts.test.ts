import { describe, expect, it } from 'vitest'
import { cookFacts } from '../../../lib/log/cook-facts'
import { foldLog } from '../../../lib/log/fold'
import type { Line } from '../../../lib/log/log'
import { line, logOf, mark, reading } from './lines'

const factsOf = (...lines: readonly Line[]) => cookFacts(foldLog(logOf(...lines)), 'hero')
const check = (minutes: number, found: string) => line(minutes, 'probe-check', { cook: 'hero', sensor: 'core', found })

describe('what a day’s log says of one cook', () => {
  it('has no times where nobody marked that the meat went on', () => {
    expect(factsOf(mark(100, 'pull'), reading(90, 40))).toBeNull()
  })

  it('gives marks after meat-on, of two the earlier, what is before it below zero', () => {
    const facts = factsOf(mark(-50, 'fire-lit'), mark(0, 'meat-on'), mark(161, 'pull'), mark(160, 'pull'))
    expect(facts?.at).toEqual({ 'fire-lit': -3000, 'meat-on': 0, pull: 9600 })
    expect(facts?.lastReading).toBeNull()
  })

  it('reads the probe on the straight line between two readings, and not across a gap', () => {
    const facts = factsOf(
      mark(0, 'meat-on'),
      mark(64, 'turn'),
      mark(85, 'pull'),
      reading(60, 30),
      reading(68, 34),
      reading(92, 46),
    )
    expect(facts?.probeC).toEqual({ turn: 32 })
    expect(facts?.lastReading).toBe(92 * 60)
  })

  it('takes the last reading of a probe that comes out with the mark, and its next place afterwards', () => {
    const facts = factsOf(
      mark(0, 'meat-on'),
      reading(98, 45),
      reading(99, 46),
      mark(100, 'pull'),
      check(100.5, 'pulled-out'),
      mark(112, 'off-heat'),
      check(116, 'in'),
      reading(130, 56),
      reading(134, 58),
      mark(132, 'first-slice'),
    )
    expect(facts?.probeC).toEqual({ pull: 46, 'first-slice': 57 })
  })

  it('of two probes believes the colder', () => {
    const two = [0, 2, 4].flatMap((min) => [reading(96 + min, 50), reading(96 + min, 46, {}, 'core-2')])
    expect(factsOf(mark(0, 'meat-on'), mark(98, 'pull'), ...two)?.probeC).toEqual({ pull: 46 })
  })

  it('tells the heat of the cooker while it roasts and while it sears apart', () => {
    const heat = [140, 150, 160].map((c, i) => reading(10 + 30 * i, c, {}, 'cooker'))
    const marks = [mark(0, 'meat-on'), mark(80, 'vents-open'), mark(84, 'sear-start'), mark(95, 'off-heat')]
    const facts = factsOf(...marks, ...heat, reading(90, 310, {}, 'cooker'))
    expect(facts?.cookerC.roast).toMatchObject({ likely: 150 })
    expect(facts?.cookerC.sear).toMatchObject({ low: 310, high: 310 })
    expect(factsOf(mark(0, 'meat-on'), ...heat)?.cookerC).toEqual({ roast: null, sear: null })
  })
})
