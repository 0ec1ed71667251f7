import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { radialMesh } from '../../lib/model/conduction'
import { MEATS, propertyTable } from '../../lib/model/materials'
import { Meat, matterOf } from '../../lib/model/meat'
import { type Around, LATENT_JPKG, skinHeat, skinLaw, vapourConductance } from '../../lib/model/surface'
import { boilingC, pressureAtPa } from '../../lib/model/vapour'

const SKIN = { emissivity: 0.87, crustHeat_M4KpWKg: 0.0244, crustVapour_M4SpKg2: 5700, dryableKgpM2: 10.5 }
const AIR_PA = pressureAtPa(0)
const LAW = skinLaw(SKIN, AIR_PA)
const RADIUS_M = 0.06
const COMPOSITION = MEATS['lamb leg, lean']
/** A material that keeps its juice and cannot boil, so that all heat is either stored or evaporates at the skin. */
const TABLE = propertyTable(COMPOSITION)
const DRY_INSIDE = matterOf({ ...TABLE, rhoKgpM3: 1050, water: 0, fat: 0, boneShare: 0, lethalityPerS: () => 0 })

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
      const scale = { k: 1, c: 1, juice: 1, feed: 0.4, boilingC: boilingC(AIR_PA) }
      const meat = new Meat(DRY_INSIDE, radialMesh(exponent), RADIUS_M, startC, LAW, scale)
      const around: Around = { airC, radiantC: airC, h_WpM2K: h, vapourPa: 6300, sealed: false }
      const out = skinHeat()
      const heatIn = () => {
        LAW(out, meat.nodesC.at(-1) as number, meat.dryKgpM2, around)
        return out.net_WpM2
      }
      let heat = 0
      for (let s = 0; s < 7200; s += 5) {
        const before = heatIn()
        meat.try(5, around, around)
        meat.accept()
        if (s >= 60) heat += 2.5 * (before + heatIn())
        else heat = storedJpM2(meat, startC) // the film dries within a minute, faster than the trapezoid can see
      }
      expect(heat / storedJpM2(meat, startC)).toBeCloseTo(1, 2)
      expect(Math.abs(heat / storedJpM2(meat, startC) - 1)).toBeLessThan(0.005)
    }),
    { numRuns: 20, seed: 1 },
  )
})

describe('skin law', () => {
  const at = (skinC: number, dry = 0, air: Partial<Around> = {}) => {
    const out = skinHeat()
    LAW(out, skinC, dry, { airC: 150, radiantC: 150, h_WpM2K: 11, vapourPa: 6300, sealed: false, ...air })
    return out
  }
  test('its slope is the derivative of its heat, on both sides of the tangent near boiling', () => {
    for (const skinC of [5, 40, 70, 90, 97, 98.5, 99.5, 102, 120])
      for (const m of [0, 0.05, 1, 9]) {
        const difference = (at(skinC + 1e-4, m).net_WpM2 - at(skinC - 1e-4, m).net_WpM2) / 2e-4
        expect(at(skinC, m).slope_WpM2K / difference).toBeCloseTo(1, 3)
      }
  })
  test('a skin whose water is used up is heated by air and walls alone, through its crust', () => {
    const dry = at(80, 10.5)
    const taken = 11 * (150 - dry.outerC) + 0.87 * 5.670374e-8 * (423.15 ** 4 - (dry.outerC + 273.15) ** 4)
    expect(dry.water_KgpM2S).toBe(0)
    expect(dry.net_WpM2).toBeCloseTo(taken, 6)
  })
  test('what the crust takes up it passes on, from a wet skin to a thick crust under the hottest sear', () => {
    for (const airC of [-10, 22, 60, 150, 320, 400])
      for (const dry of [0, 0.01, 0.5, 3, 10])
        for (const frontC of [5, 60, 99, 105]) {
          const { outerC } = at(frontC, dry, { airC, radiantC: airC, h_WpM2K: 25 })
          const taken = 25 * (airC - outerC) + 0.87 * 5.670374e-8 * ((airC + 273.15) ** 4 - (outerC + 273.15) ** 4)
          expect(Math.abs(outerC - frontC - 0.0244 * dry * taken)).toBeLessThan(0.01)
        }
  })
  test('the outside of a crust lies between the front and its surroundings, and hotter the thicker the crust', () => {
    const outside = [0, 0.5, 1, 2, 4, 8].map((dry) => at(99, dry).outerC)
    expect(outside[0]).toBe(99)
    expect(outside).toEqual(outside.toSorted((a, b) => a - b))
    expect(outside.at(-1)).toBeLessThan(150)
  })
  test('nothing evaporates from a sealed skin, and it takes heat as a dry one does', () => {
    const sealed = at(80, 0, { sealed: true })
    expect(sealed.water_KgpM2S).toBe(0)
    expect(sealed.net_WpM2).toBeCloseTo(11 * 70 + 0.87 * 5.670374e-8 * (423.15 ** 4 - 353.15 ** 4), 6)
  })
  test('walls that are hotter than the air heat the skin more', () => {
    expect(at(80, 1, { radiantC: 200 }).net_WpM2).toBeGreaterThan(at(80, 1).net_WpM2 + 300)
  })
  test('vapour condenses on cold meat and heats it', () => {
    expect(at(4).water_KgpM2S).toBeLessThan(0)
    expect(at(4).net_WpM2).toBeGreaterThan(at(4, 10.5).net_WpM2)
  })
  test('what evaporates takes its latent heat from the skin', () => {
    const [open, sealed] = [at(90), at(90, 0, { sealed: true })]
    expect(sealed.net_WpM2 - open.net_WpM2).toBeCloseTo(LATENT_JPKG * open.water_KgpM2S, 6)
  })
  test('the drier the skin the less it lets out, down to nothing', () => {
    const out = Array.from({ length: 60 }, (_, i) => vapourConductance(SKIN, i / 5, 11))
    expect(out).toEqual(out.toSorted((a, b) => b - a))
    expect(vapourConductance(SKIN, 10.5, 11)).toBe(0)
    expect(vapourConductance(SKIN, 0, 22)).toBeCloseTo(2 * vapourConductance(SKIN, 0, 11), 12)
  })
})
