import { describe, expect, it } from 'vitest'
import { cutCells, type Solid } from '../../lib/model/cut-cells'
import { coreExcess3d } from '../../lib/model/run-3d'
import { CYLINDER, centreOfProduct, type Part, SLAB, SPHERE } from './exact'
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

/** Cells of 12 and 6 mm fit these sides exactly, so that halving the cell halves it. */
const R = 0.048
const [LONG, WIDE] = [0.072, 0.06]
const FLAT = Number.POSITIVE_INFINITY
type Case = readonly [name: string, solid: Solid, parts: readonly Part[]]
const SOLIDS: readonly Case[] = [
  [
    'short cylinder',
    { half: [R, R, R], exponents: [2, 2, FLAT] },
    [
      [CYLINDER, R],
      [SLAB, R],
    ],
  ],
  [
    'brick',
    { half: [R, WIDE, LONG], exponents: [FLAT, FLAT, FLAT] },
    [
      [SLAB, R],
      [SLAB, WIDE],
      [SLAB, LONG],
    ],
  ],
  ['sphere', { half: [R, R, R], exponents: [2, 2, 2] }, [[SPHERE, R]]],
]
/** From 5 °C in 160 °C, at these times; the first is when the middle has hardly begun to warm. */
const RISE_K = 155
const TIMES_M2 = [0.05, 0.1, 0.2, 0.3, 0.5, 0.8].map((Fo) => Fo * R ** 2)
/** Films: a cool roast, the wet skin that roasts are calibrated with, a skin all but held at 160 °C. */
const FILMS = [0.5, 3.2, 20]
const CENTRES = SOLIDS.flatMap(([name, solid, parts]) =>
  FILMS.map((Bi) => {
    const exact = centreOfProduct(parts, R / Bi)
    const worstAt = (cellM: number) => {
      const excess = coreExcess3d(cutCells(solid, cellM), R / Bi, TIMES_M2)
      return RISE_K * Math.max(...excess.map((x, i) => Math.abs(x - exact(TIMES_M2[i] as number))))
    }
    const [coarse, fine] = [worstAt(0.012), worstAt(0.006)]
    const order = Math.log2(coarse / fine)
    const words = `${name}, Bi ${Bi}: ${coarse.toFixed(2)} °C at 12 mm, ${fine.toFixed(2)} at 6, order ${order.toFixed(2)}`
    return { name, Bi, fine, order, words }
  }),
)
describe('3-D run: the centre against the product of the series', () => {
  it.each(CENTRES.map((c) => [c.words, c] as const))('%s', (_, { fine }) => expect(fine).toBeLessThanOrEqual(0.5))
  it.each(CENTRES.map((c) => [c.words, c] as const))(
    'falls at order 1.7 or better from 12 to 6 mm: %s',
    (_, { order }) => expect(order).toBeGreaterThanOrEqual(1.7),
  )
})
