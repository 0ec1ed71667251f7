import { describe, expect, it } from 'vitest'
import { GATES } from './gates'
import { meanOf, type Sample, worstOf } from './measure'
import { conductivityRaw, heatCapacity } from './samples'

const asRatio = ({ label, error }: Sample) => `${label}: ${(1 + error).toFixed(3)} of the table`
describe.each([
  ['heat capacity against the handbook table', GATES['choi-okos/heat-capacity'], heatCapacity()],
  ['conductivity of raw meat against measurements', GATES['choi-okos/conductivity-raw'], conductivityRaw()],
] as const)('Choi-Okos %s', (_, gate, samples) => {
  it.each(samples.map((s) => [asRatio(s), s] as const))('%s', (__, s) => {
    expect(Math.abs(s.error)).toBeLessThanOrEqual(gate.worst)
  })
  it(`mean of ${samples.length} within ${gate.mean}`, () => {
    expect(meanOf(samples)).toBeLessThanOrEqual(gate.mean)
    expect(worstOf(samples)).toBeGreaterThan(0)
  })
})
