import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { anotherHeat } from '../../lib/model/another-heat'
import { cookCells } from '../../lib/model/cook-cells'
import { cutCells, type Solid } from '../../lib/model/cut-cells'
import type { Forecast } from '../../lib/model/forecast'
import { forecastCook } from '../../lib/model/forecast-cook'
import { matterOf } from '../../lib/model/meat'
import { myoglobinLossPerS, RARE_DENATURED, WELL_DENATURED } from '../../lib/model/myoglobin'
import { contour, depthOf, FIELDS, LAYERS, RAYS, sectionOf, shareWithin } from '../../lib/model/section'
import { toCookPlan } from '../../lib/plan/cook-plan'
import { parseShootText } from '../../lib/plan/parse'
import { celsius } from '../../lib/units'

const FOLDER = 'tests/fixtures/shoots'
const FILES = ['prisma/demo/leg-of-lamb.json', ...readdirSync(FOLDER).map((name) => `${FOLDER}/${name}`)]
const cooksIn = (file: string) => {
  const read = parseShootText(readFileSync(file, 'utf8'))
  if (!read.ok) throw new Error(`${file}: ${read.problems[0]?.sentence}`)
  return read.value.cooks.map((cook) => toCookPlan(read.value, cook))
}
const MEMBERS = 64
const demo = () => forecastCook(cooksIn(FILES[0] as string)[0] as never, { seed: 1, members: MEMBERS })

/** A ball of even stuff, driven for an hour: no juice, no kill, so that it must stay round. */
const BALL: Solid = { half: [0.05, 0.05, 0.05], exponents: [2, 2, 2] }
function ball() {
  const flat = (value: number) => new Float64Array(166).fill(value)
  const matter = matterOf({
    fromC: -5,
    k_WpMK: flat(0.45),
    rhoCp_JpM3K: flat(3.6e6),
    rhoKgpM3: 1050,
    water: 0,
    fat: 0,
    boneShare: 0,
    lethalityPerS: () => 0,
  })
  const cells = cutCells(BALL, 0.00625)
  const minutes = new Float64Array(61)
  const history = { driveC: minutes.map(() => 100), coreC: minutes, minuteS: 60, endS: 3600 }
  const told = cookCells(cells, matter, history, { startC: 5, boilingC: 100, speed: 1 })
  return sectionOf(BALL, cells, told, 1)
}

describe('a ball', () => {
  const section = ball()
  /** Two cells beneath the skin. Nearer to it the cut cells themselves scatter, by how deep each one's middle lies. */
  const BENEATH = 19
  test('is symmetric: along every ray the same temperatures, within 1 °C two cells beneath the skin, 3 °C at it', () => {
    const apart = Array.from({ length: LAYERS }, (_, layer) => {
      const row = Array.from({ length: RAYS }, (_, ray) => section.peakC[ray * LAYERS + layer] as number)
      return Math.max(...row) - Math.min(...row)
    })
    const [inside, atSkin] = [Math.max(...apart.slice(0, BENEATH)), Math.max(...apart)]
    console.info(`ball: rays apart by ${inside.toFixed(2)} K inside, ${atSkin.toFixed(2)} K at the skin`)
    expect(inside).toBeLessThan(1)
    expect(atSkin).toBeLessThan(3)
  })
  test('has been hotter further out, on every ray', () => {
    for (const field of FIELDS)
      for (let ray = 0; ray < RAYS; ray++)
        for (let layer = 1; layer < LAYERS; layer++) {
          const at = ray * LAYERS + layer
          expect(section[field][at] as number).toBeGreaterThanOrEqual((section[field][at - 1] as number) - 0.05)
        }
  })
  test('has a circle for a contour, within half a millimetre', () => {
    const shares = contour(section, 'peakC', 60)
    const radii = shares.map((share) => share * 50)
    console.info(`ball, 60 °C: ${Math.min(...radii).toFixed(2)} to ${Math.max(...radii).toFixed(2)} mm from the middle`)
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(0.5)
    expect(Math.min(...radii)).toBeGreaterThan(5)
    expect(Math.max(...radii)).toBeLessThan(45)
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length
    expect(shareWithin(section, shares)).toBeCloseTo(mean ** 2, 2)
  })
})

describe('the slice of a cook', () => {
  test.each(FILES.flatMap((file) => cooksIn(file).map((plan) => [file.split('/').at(-1), plan.id, plan] as const)))(
    '%s, %s: the 3-D core follows the 1-D core within 1 °C, the least harmed point is the middle',
    (name, id, plan) => {
      const { slice, cutFace } = forecastCook(plan, { seed: 1, members: MEMBERS })
      const { coldest, coreMissK } = slice
      const log = (value: number) => value.toFixed(2)
      console.info(
        `${name} ${id}: core off by ${coreMissK.toFixed(2)} K at most; log reduction 3-D ${log(coldest.cellsLog)}, 1-D ${log(coldest.likelyLog)}, difference ${log(coldest.cellsLog - coldest.likelyLog)}`,
      )
      expect(coreMissK).toBeLessThan(1)
      expect(coldest.inTheMiddle).toBe(true)
      expect(coldest.lethalityLog).toBe(Math.min(coldest.cellsLog, coldest.likelyLog))
      for (const { limitC, share } of cutFace.shareAbove) {
        expect(share.low).toBeLessThanOrEqual(share.likely)
        expect(share.likely).toBeLessThanOrEqual(share.high)
        // the likely figure is the picture's own
        expect(share.likely).toBeCloseTo(1 - shareWithin(slice.section, contour(slice.section, 'peakC', limitC)), 9)
      }
      for (const { limitC, depthM } of cutFace.bandDepth) {
        expect(depthM.likely).toBeCloseTo(depthOf(slice.section, 'peakC', limitC).thinM, 9)
        expect(depthM.low).toBeLessThanOrEqual(depthM.high)
        expect(depthM.high).toBeLessThanOrEqual(cutFace.thickness / 2 + 1e-9)
      }
    },
  )

  test('at one middle when sliced, 120 °C leaves a thinner band than 150, and 220 one no thinner', () => {
    const plan = demo()
    const at = (heatC: number): Forecast => {
      const found = anotherHeat(plan, celsius(heatC))
      if (!found) throw new Error(`${heatC} °C never gets there`)
      return found.forecast
    }
    const [cool, hot] = [at(120), at(220)]
    const band = (forecast: Forecast) => 1000 * depthOf(forecast.slice.section, 'peakC', 65).thinM
    const middle = (forecast: Forecast) => forecast.slice.section.slicedC[0] as number
    const words = [cool, plan, hot].map(
      (forecast) => `${band(forecast).toFixed(1)} mm at ${middle(forecast).toFixed(1)} °C`,
    )
    console.info(`band above 65 °C at 120, 150 and 220 °C: ${words.join(', ')}`)
    for (const other of [cool, hot]) expect(Math.abs(middle(other) - middle(plan))).toBeLessThan(0.6)
    expect(band(cool)).toBeLessThan(band(plan) - 1)
    expect(band(plan)).toBeLessThanOrEqual(band(hot) + 1)
  })
})

describe('myoglobin', () => {
  test('denatures as the source prints it', () => {
    const minutesTo = (share: number, tempC: number) => -Math.log(1 - share) / myoglobinLossPerS(tempC) / 60
    for (const [tempC, minutes] of [
      [55, 12.276],
      [60, 2.49],
      [63, 0.978],
      [65, 0.529],
    ] as const)
      expect(minutesTo(RARE_DENATURED, tempC) / minutes).toBeCloseTo(1, 2)
    for (const [tempC, minutes] of [
      [60, 98.52],
      [65, 20.95],
      [70, 4.66],
    ] as const)
      expect(minutesTo(WELL_DENATURED, tempC) / minutes).toBeCloseTo(1, 2)
  })
})
