import { describe, expect, it } from 'vitest'
import { GATES } from './gates'
import { published } from './measure'
import { leanYields } from './samples'

interface Miss {
  readonly item: string
  readonly points: number
}
const MISSES = published<{ 'lean-yields': Miss[] }>('known-misses')['lean-yields']
const SAMPLES = leanYields()
const GATE = GATES['losses/lean-yield']

describe('yield of lamb lean, from protein that is kept (upper-side estimates)', () => {
  it.each(SAMPLES)('$label: within 6 points, or listed with its figure ($error)', ({ label, error }) => {
    const miss = MISSES.find((m) => m.item === label)
    if (miss === undefined) expect(Math.abs(error)).toBeLessThanOrEqual(GATE.worst)
    else {
      expect(Math.abs(error)).toBeGreaterThan(GATE.worst)
      expect(Math.abs(100 * error - miss.points)).toBeLessThanOrEqual(0.5)
    }
  })
  it('lists only misses that are rows', () => {
    expect(MISSES.filter((m) => !SAMPLES.some((s) => s.label === m.item))).toEqual([])
  })
})
