import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { radialMesh } from '../../lib/model/conduction'
import { MEATS, propertyTable } from '../../lib/model/materials'
import { Meat, matterOf } from '../../lib/model/meat'
import { type Around, LATENT_JPKG, type SkinHeat, skinLaw, wetShare } from '../../lib/model/surface'
import { boilingC, pressureAtPa } from '../../lib/model/vapour'

const SKIN = { emissivity: 0.87, wetFloor: 0.035, filmKgpM2: 0.018, waterKgpM2: 10.5 }
const AIR_PA = pressureAtPa(0)
const LAW = skinLaw(SKIN, AIR_PA)
const RADIUS_M = 0.06
const COMPOSITION = MEATS['lamb leg, lean']
/** A material that keeps its juice and cannot boil, so that all heat is either stored or evaporates at the skin. */
const TABLE = propertyTable(COMPOSITION)
const DRY_INSIDE = matterOf({ ...TABLE, rhoKgpM3: 1050, water: 0, boneShare: 0, lethalityPerS: () => 0 })

/** Heat stored since `fromC`, J per m² of skin, from the table of ρc by the trapezoid rule in temperature. */
function storedJpM2(meat: Meat, fromC: number) {
  const heatTo = (tempC: number) => {
    let sum = 0
    const pace = (tempC - fromC) / 200
    for (let i = 0; i < 200; i++) {
      const at = fromC + (i + 0.5) * pace - TABLE.fromC
      const row = Math.min(TABLE.rhoCp_JpM3K.length - 2, Math.floor(at))
      const [a, b] = [TABLE.rhoCp_JpM3K[row] as number, TABLE.rhoCp_JpM3K[row + 1] as number]
      sum += pace * (a + (at - row) * (b - a))
    }
    return sum
  }
  return meat.nodesC.reduce((sum, temp, i) => sum + heatTo(temp) * (meat.mesh.cell[i] as number) * RADIUS_M, 0)
}

test('energy: heat into the skin is heat stored, within 0.5 %, for any shape, oven and wetness', () => {
  const oven = fc.record({
    exponent: fc.double({ min: 0, max: 2, noNaN: true }),
    airC: fc.integer({ min: 90, max: 200 }),
    h: fc.integer({ min: 5, max: 25 }),
    startC: fc.integer({ min: 0, max: 20 }),
  })
  fc.assert(
    fc.property(oven, ({ exponent, airC, h, startC }) => {
      const scale = { k: 1, c: 1, boilingC: boilingC(AIR_PA) }
      const meat = new Meat(DRY_INSIDE, radialMesh(exponent), RADIUS_M, startC, LAW, scale)
      const around: Around = { airC, radiantC: airC, h_WpM2K: h, vapourPa: 6300, sealed: false }
      const out: SkinHeat = { net_WpM2: 0, slope_WpM2K: 0, water_KgpM2S: 0 }
      const skinHeat = () => {
        LAW(out, meat.nodesC.at(-1) as number, meat.evaporatedKgpM2, around)
        return out.net_WpM2
      }
      let heat = 0
      for (let s = 0; s < 7200; s += 5) {
        const before = skinHeat()
        meat.try(5, around, around)
        meat.accept()
        if (s >= 60) heat += 2.5 * (before + skinHeat())
        else heat = storedJpM2(meat, startC) // the film dries within a minute, faster than the trapezoid can see
      }
      expect(heat / storedJpM2(meat, startC)).toBeCloseTo(1, 2)
      expect(Math.abs(heat / storedJpM2(meat, startC) - 1)).toBeLessThan(0.005)
    }),
    { numRuns: 20, seed: 1 },
  )
})

describe('skin law', () => {
  const at = (skinC: number, m = 0, air: Partial<Around> = {}) => {
    const out: SkinHeat = { net_WpM2: 0, slope_WpM2K: 0, water_KgpM2S: 0 }
    LAW(out, skinC, m, { airC: 150, radiantC: 150, h_WpM2K: 11, vapourPa: 6300, sealed: false, ...air })
    return out
  }
  test('its slope is the derivative of its heat, on both sides of the tangent near boiling', () => {
    for (const skinC of [5, 40, 70, 90, 97, 98.5, 99.5, 102, 120])
      for (const m of [0, 0.05, 1, 12]) {
        const difference = (at(skinC + 1e-4, m).net_WpM2 - at(skinC - 1e-4, m).net_WpM2) / 2e-4
        expect(at(skinC, m).slope_WpM2K / difference).toBeCloseTo(1, 3)
      }
  })
  test('a skin whose water is used up is heated by air and walls alone', () => {
    const dry = at(80, 20)
    expect(dry.water_KgpM2S).toBe(0)
    expect(dry.net_WpM2).toBeCloseTo(11 * 70 + 0.87 * 5.670374e-8 * (423.15 ** 4 - 353.15 ** 4), 6)
  })
  test('vapour condenses on cold meat and heats it', () => {
    expect(at(4).water_KgpM2S).toBeLessThan(0)
    expect(at(4).net_WpM2).toBeGreaterThan(at(4, 20).net_WpM2)
  })
  test('what evaporates takes its latent heat from the skin', () => {
    const [wet, dry] = [at(90, 0), at(90, 20)]
    expect(dry.net_WpM2 - wet.net_WpM2).toBeCloseTo(LATENT_JPKG * wet.water_KgpM2S, 6)
  })
  test('the wet share falls from 1 to nothing and never rises', () => {
    const shares = Array.from({ length: 60 }, (_, i) => wetShare(SKIN, i / 5))
    expect(shares[0]).toBe(1)
    expect(shares).toEqual(shares.toSorted((a, b) => b - a))
    expect(wetShare(SKIN, 10.5)).toBeCloseTo(0, 12)
  })
})
