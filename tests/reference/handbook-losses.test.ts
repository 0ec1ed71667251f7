import { describe, expect, it } from 'vitest'
import { GATES } from './gates'
import { meanOf, published } from './measure'
import { handbookLosses } from './samples'

interface Miss {
  readonly item: string
  readonly points: number
}
const MISSES = published<{ losses: Miss[] }>('known-misses').losses
const SAMPLES = handbookLosses()
const GATE = GATES['losses/handbook']
const listed = (label: string) => MISSES.find((m) => label.startsWith(m.item))

describe(`weight losses of the 1930s handbook, n ${SAMPLES.length}`, () => {
  it.each(SAMPLES)('$label: within 4 points, or listed with its figure ($error)', ({ label, error }) => {
    const miss = listed(label)
    if (miss === undefined) expect(Math.abs(error)).toBeLessThanOrEqual(GATE.worst)
    else {
      expect(Math.abs(error)).toBeGreaterThan(GATE.worst)
      expect(Math.abs(100 * error - miss.points)).toBeLessThanOrEqual(0.5)
    }
  })
  it(`is off by at most ${100 * GATE.mean} points in the mean`, () => {
    expect(meanOf(SAMPLES)).toBeLessThanOrEqual(GATE.mean)
  })
  it('lists only misses that are rows', () => {
    expect(MISSES.filter((m) => !SAMPLES.some((s) => s.label.startsWith(m.item)))).toEqual([])
  })
})
