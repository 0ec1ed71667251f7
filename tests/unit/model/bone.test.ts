import { describe, expect, it } from 'vitest'
import { boneBody, isBone } from '../../../lib/model/bone'
import { CUTS } from '../../../lib/model/cuts'
import { BONE, MEAT_RHO_KGPM3 } from '../../../lib/model/materials'
import { chanceOf } from '../../../lib/model/random'
import { geometryOf } from '../../../lib/model/shape'
import { kilograms } from '../../../lib/units'

const WITH_BONE = CUTS.filter((cut) => cut.bone)

describe('the place of the bone', () => {
  it.each(WITH_BONE.map((cut) => [cut.id, cut] as const))(
    '%s: fills its share of the mass, inside the roast',
    (_, cut) => {
      const g = geometryOf(cut, kilograms(cut.atMassKg))
      const body = boneBody(cut, [g.thicknessM / 2, g.widthM / 2, g.lengthM / 2])
      if (!body) throw new RangeError(cut.id)
      const chance = chanceOf(1, 1, 1)
      const [p, q, r] = cut.exponents
      let [solid, bone] = [0, 0]
      while (solid < 20_000) {
        const [x, y, z] = [0, 0, 0].map(() => 2 * chance.uniform() - 1) as [number, number, number]
        if (Math.abs(x) ** p + Math.abs(y) ** q + Math.abs(z) ** r > 1) continue
        solid++
        if (isBone(body, x, y, z)) bone++
      }
      const boneKg = (bone / solid) * BONE.rho_KgpM3
      const share = boneKg / (boneKg + (1 - bone / solid) * MEAT_RHO_KGPM3)
      expect(Math.abs(share - cut.boneShare)).toBeLessThan(0.015)
    },
  )
  it('ribs lie on the under side, a thigh bone near the middle, and a boneless roast has none', () => {
    const half = [0.05, 0.07, 0.1] as const
    const exponents = [2.2, 2.2, 2.2] as const
    const at = (place: 'ribs' | 'shaft') => boneBody({ bone: { place, share: 0.17 }, exponents }, half)
    const [ribs, shaft] = [at('ribs'), at('shaft')]
    if (!ribs || !shaft) throw new Error('no bone')
    expect(isBone(ribs, -0.95, 0, 0)).toBe(true)
    expect(isBone(ribs, 0.2, 0, 0)).toBe(false)
    expect(isBone(shaft, -0.12, 0.12, 0)).toBe(true)
    expect(isBone(shaft, -0.95, 0, 0)).toBe(false)
    expect(boneBody({ exponents }, half)).toBeUndefined()
  })
})
