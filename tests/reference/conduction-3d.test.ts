import { describe, expect, it } from 'vitest'
import { GATES } from './gates'
import { meanOf, type Sample } from './measure'
import { conduction3d, shapeResidual } from './samples'

const named = (samples: readonly Sample[]) =>
  samples.map((s) => [`${s.label}: ${(100 * s.error).toFixed(2)} %`, s] as const)
const EXACT = conduction3d()
const RESIDUAL = shapeResidual()

describe(`3-D run against exact series and product solutions, n ${EXACT.length}`, () => {
  const gate = GATES['conduction-3d/time']
  it.each(named(EXACT))('%s', (_, s) => expect(Math.abs(s.error)).toBeLessThanOrEqual(gate.worst))
  it(`mean within ${gate.mean}`, () => expect(meanOf(EXACT)).toBeLessThanOrEqual(gate.mean))
})
describe(`radial model against each cut's 3-D run from 40 to 90 °C, n ${RESIDUAL.length}`, () => {
  const gate = GATES['shape/residual']
  it.each(named(RESIDUAL))('%s', (_, s) => expect(s.error).toBeLessThanOrEqual(gate.worst))
  it(`mean within ${gate.mean}`, () => expect(meanOf(RESIDUAL)).toBeLessThanOrEqual(gate.mean))
})
