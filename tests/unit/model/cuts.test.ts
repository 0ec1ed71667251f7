import { describe, expect, it } from 'vitest'
import { CUSTOM_SHAPES, cutOf } from '../../../lib/model/custom-cut'
import { BUILDS, THICKNESS_SPREAD } from '../../../lib/model/cut'
import { CUTS, cutById } from '../../../lib/model/cuts'
import { COMPONENTS } from '../../../lib/model/materials'
import { geometryOf, typicalThicknessM } from '../../../lib/model/shape'
import { RULER_SPREAD } from '../../../lib/model/sides'
import { SOURCES } from '../../../lib/model/sources'
import { frac, kilograms, metres } from '../../../lib/units'
import table from '../../fixtures/published/cut-dimensions.json'

const ASKED =
  'beef-rib-bone-in beef-rib-boneless beef-strip-boneless beef-tenderloin beef-tri-tip beef-eye-round beef-top-round beef-round-tip beef-chuck-boneless beef-brisket pork-loin-bone-in pork-loin-boneless pork-shoulder-bone-in pork-shoulder-boneless pork-leg-bone-in lamb-leg-bone-in lamb-leg-boneless lamb-rack lamb-shoulder-bone-in veal-leg-boneless veal-loin-bone-in venison-haunch-boneless turkey-whole turkey-breast-bone-in chicken-whole duck-whole goose-whole salmon-side'

describe('the catalogue', () => {
  it('has every cut that the shoot file promises, and no other', () =>
    expect(CUTS.map((cut) => cut.id)).toEqual(ASKED.split(' ')))
  it.each(Object.entries(table.cuts))('%s is as thick as the table says, within 12 %', (id, row) => {
    const cut = cutById(id)
    if (!cut) throw new RangeError(id)
    const ratio = (typicalThicknessM(cut, row.at_mass_kg) * 1000) / row.thickness_mm
    expect(Math.abs(ratio - 1)).toBeLessThanOrEqual(0.12)
  })
  it('says where the bone lies of every cut that has one, and of no other', () => {
    for (const cut of CUTS) {
      expect(cut.bone !== undefined, cut.id).toBe(/bone-in|whole|lamb-rack/.test(cut.id))
      expect(cut.boneShare).toBe(cut.bone?.share ?? 0)
      expect(cut.boneSource in SOURCES).toBe(true)
    }
  })
  it('is surer of rolled and round cuts than of flat and tapering ones, and surest of what was measured', () => {
    const spread = (id: string) => cutById(id)?.thicknessSpread as number
    expect(spread('lamb-leg-boneless')).toBeLessThan(spread('lamb-leg-bone-in'))
    expect(spread('lamb-leg-bone-in')).toBeLessThan(spread('beef-tenderloin'))
    expect(spread('beef-tenderloin')).toBeLessThan(spread('beef-brisket'))
    for (const build of BUILDS) expect(THICKNESS_SPREAD[build]).toBeGreaterThan(RULER_SPREAD)
  })
})

describe('sides that were measured', () => {
  const leg = cutOf({ cut: 'lamb-leg-bone-in' })
  if (!leg) throw new RangeError('no leg')
  const sized = (cm: { a?: number; b?: number; c?: number }) =>
    geometryOf(leg, kilograms(3), {
      ...(cm.a ? { thickness: metres(cm.a / 100) } : {}),
      ...(cm.b ? { width: metres(cm.b / 100) } : {}),
      ...(cm.c ? { length: metres(cm.c / 100) } : {}),
    })
  const typical = sized({})
  const [b, c] = [100 * typical.widthM, 100 * typical.lengthM]
  it('width and length together say something of the thickness at this mass; either alone does not', () => {
    expect(typical.thicknessSpread).toBe(leg.thicknessSpread)
    expect(sized({ b }).thicknessSpread).toBe(leg.thicknessSpread)
    expect(sized({ b, c }).thicknessSpread).toBeLessThan(0.8 * leg.thicknessSpread)
    expect(sized({ b, c }).thicknessM).toBeCloseTo(typical.thicknessM, 4)
    expect(sized({ b: 0.9 * b, c: 0.9 * c }).thicknessM).toBeGreaterThan(1.05 * typical.thicknessM)
  })
  it('a measured thickness is surer, and surest with the two other sides', () => {
    expect(sized({ a: 11 }).thicknessSpread).toBe(RULER_SPREAD)
    expect(sized({ a: 11, b, c }).thicknessSpread).toBeLessThan(RULER_SPREAD)
  })
  it('three sides that would weigh too much give way a little, and the mass stays', () => {
    const big = sized({ a: 12, b: 1.1 * b, c: 1.1 * c })
    expect(big.thicknessM).toBeLessThan(0.12)
    expect(big.thicknessM).toBeGreaterThan(0.11)
    expect(big.lengthM).toBeLessThan(0.011 * c)
    expect(big.volumeM3).toBe(typical.volumeM3)
  })
})

describe('a cut of one’s own', () => {
  const own = (shape: (typeof CUSTOM_SHAPES)[number], more = {}) =>
    cutOf({ cut: 'custom', custom: { name: 'saddle of hogget', animal: 'lamb', shape, ...more } })
  it.each(CUSTOM_SHAPES)('%s: has a composition, a solid, and is not surer than the catalogue', (shape) => {
    const cut = own(shape, { fat: frac(0.2), bone: frac(0.15) })
    if (!cut) throw new RangeError(shape)
    expect(cut.name).toBe('saddle of hogget')
    expect(COMPONENTS.reduce((sum, part) => sum + cut.composition[part], 0)).toBeCloseTo(1, 9)
    expect(cut.composition.fat).toBeCloseTo(0.2, 9)
    expect(cut.bone?.share).toBe(0.15)
    const g = geometryOf(cut, kilograms(2.4), { thickness: metres(0.09) })
    expect(g.thicknessM).toBe(0.09)
    expect(g.thicknessSpread).toBe(RULER_SPREAD)
    expect(g.shapeExponent).toBeGreaterThan(0.1)
    expect(g.shapeExponent).toBeLessThan(2.1)
  })
  it('is lean and boneless where nothing else is said', () => {
    expect(own('round')?.bone).toBeUndefined()
    expect(own('round')?.composition.fat).toBeLessThan(0.1)
  })
  it('is none without its description, and an unknown id is none either', () => {
    expect(cutOf({ cut: 'custom' })).toBeUndefined()
    expect(cutOf({ cut: 'unicorn' })).toBeUndefined()
  })
})
