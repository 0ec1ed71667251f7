import { describe, expect, it } from 'vitest'
import { coreTimes1d } from '../../../lib/model/calibrate-3d'
import { cutCells } from '../../../lib/model/cut-cells'
import { CUTS, type Cut, cutById } from '../../../lib/model/cuts'
import { COMPONENTS } from '../../../lib/model/materials'
import { boxShare, geometryOf, solidVolumeM3 } from '../../../lib/model/shape'
import { kilograms, metres } from '../../../lib/units'

const leg = cutById('lamb-leg-bone-in') as Cut
const at = (cut: Cut, kg: number, measured = {}) => geometryOf(cut, kilograms(kg), measured)

describe('the catalogue', () => {
  it.each(CUTS)('$id has a composition that sums to 1 and a sensible solid', (cut) => {
    expect(COMPONENTS.reduce((sum, c) => sum + cut.composition[c], 0)).toBeCloseTo(1, 9)
    const g = at(cut, cut.atMassKg)
    expect(g.lengthM).toBeGreaterThan(0.5 * g.thicknessM)
    expect(g.lengthM).toBeLessThan(1.1)
    expect(g.measured).toBe(false)
  })
  it('covers beef, pork, lamb, turkey and chicken', () => {
    for (const animal of ['beef', 'pork', 'lamb', 'turkey', 'chicken'])
      expect(CUTS.some((c) => c.animal === animal)).toBe(true)
  })
})

describe('geometry', () => {
  it('knows the box share of an ellipsoid, a brick and a cylinder', () => {
    expect(boxShare([2, 2, 2])).toBeCloseTo(Math.PI / 6, 9)
    expect(boxShare([Infinity, Infinity, Infinity])).toBeCloseTo(1, 9)
    expect(boxShare([2, 2, Infinity])).toBeCloseTo(Math.PI / 4, 9)
  })
  it('keeps the mass whatever is measured, and lets the length follow', () => {
    const volume = (g: ReturnType<typeof at>) =>
      (g.thicknessM * g.widthM * g.lengthM * boxShare(leg.exponents)) / solidVolumeM3(leg, 3)
    const typical = at(leg, 3)
    const thick = at(leg, 3, { thickness: metres(0.14) })
    expect(volume(typical)).toBeCloseTo(1, 9)
    expect(volume(thick)).toBeCloseTo(1, 9)
    expect(volume(at(leg, 3, { width: metres(0.15), length: metres(0.3) }))).toBeCloseTo(1, 9)
    expect(thick.lengthM).toBeLessThan(typical.lengthM)
    expect(thick.measured).toBe(true)
  })
  it('takes a measured thickness as it is', () => expect(at(leg, 3, { thickness: metres(0.12) }).thicknessM).toBe(0.12))
  it('grows in every side with the mass, by its cube root', () => {
    expect(at(leg, 4).thicknessM / at(leg, 2).thicknessM).toBeCloseTo(2 ** (1 / 3), 9)
  })
  it('refuses no mass at all', () => expect(() => at(leg, 0)).toThrow(RangeError))
  it('gives the same radial model at factor 1, and one with the same mass at others', () => {
    const g = at(leg, 3)
    expect(g.radialAt(1).radiusM).toBeCloseTo(g.radiusM, 9)
    expect(g.radialAt(1).exponent).toBeCloseTo(g.shapeExponent, 9)
    const thick = at(leg, 3, { thickness: metres(1.1 * g.thicknessM), width: metres(1.1 * g.widthM) })
    const read = g.radialAt(1.1)
    const time = (r: number, n: number) => coreTimes1d(r, n, 0.015, [0.4])[0] as number
    expect(time(read.radiusM, read.exponent) / time(thick.radiusM, thick.shapeExponent)).toBeCloseTo(1, 1)
  })
})

describe('cut cells', () => {
  it.each([
    ['sphere', [0.06, 0.06, 0.06], [2, 2, 2], (4 / 3) * Math.PI * 0.06 ** 3, 4 * Math.PI * 0.06 ** 2],
    ['cylinder', [0.05, 0.05, 0.1], [2, 2, Infinity], Math.PI * 0.05 ** 2 * 0.2, 2 * Math.PI * 0.05 * 0.25],
    ['brick', [0.05, 0.06, 0.1], [Infinity, Infinity, Infinity], 0.1 * 0.12 * 0.2, 2 * (0.012 + 0.02 + 0.024)],
  ] as const)('measure volume and skin of a %s', (_, half, exponents, volume, area) => {
    const cells = cutCells({ half, exponents }, 0.008)
    expect((8 * cells.volumeM3.reduce((a, b) => a + b, 0)) / volume).toBeCloseTo(1, 2)
    expect(cells.areaM2 / area).toBeCloseTo(1, 2)
  })
  it('merge small cells: none is below half a full one', () => {
    const cells = cutCells({ half: [0.06, 0.07, 0.11], exponents: [2.2, 2.2, 2.2] }, 0.009)
    const full = (0.06 / 7) * (0.07 / 8) * (0.11 / 12)
    for (const v of cells.volumeM3) expect(v).toBeGreaterThanOrEqual(0.5 * full)
  })
})

describe('the radial model over an ensemble of thicknesses', () => {
  it.each(CUTS.map((cut) => cut.id))('%s: from a slab to a sphere, never past either', (id) => {
    const cut = CUTS.find((each) => each.id === id) as (typeof CUTS)[number]
    const { radialAt } = geometryOf(cut, kilograms(cut.atMassKg))
    const found = [0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.6].map(radialAt)
    for (const { exponent } of found) {
      expect(exponent).toBeGreaterThan(0.1)
      expect(exponent).toBeLessThan(2.1)
    }
  })
  it('it is continuous where its pieces meet', () => {
    const { radialAt } = geometryOf(CUTS[0] as (typeof CUTS)[number], kilograms(3.2))
    for (const f of [1 / 1.44, 1 / 1.2, 1.2, 1.44]) {
      const [below, above] = [radialAt(f * (1 - 1e-9)), radialAt(f * (1 + 1e-9))]
      expect(below.radiusM).toBeCloseTo(above.radiusM, 7)
      expect(below.exponent).toBeCloseTo(above.exponent, 7)
    }
  })
})
