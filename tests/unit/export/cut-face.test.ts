import { describe, expect, test } from 'vitest'
import { cutFaceSentence, drawCutFace, SLICE_WIDTH, tonesOf } from '../../../lib/export/cut-face'
import { closedPath, cutFamily, isotherm, placer } from '../../../lib/export/cut-outline'
import type { CircleMark, PathMark, TextMark } from '../../../lib/export/drawing'
import { lookScale, SHADES, shadeColour, shadeLevels } from '../../../lib/export/tones'
import { CUTS, cutById } from '../../../lib/model/cuts'
import type { Forecast } from '../../../lib/model/forecast'
import { metres } from '../../../lib/units'
import { madeUpSlice } from '../made-up-slice'
import { COOK, syntheticForecast } from './synthetic'

const BASE = syntheticForecast()
const ofCut = (cut: string): Forecast => ({ ...BASE, cook: { ...COOK, roast: { ...COOK.roast, cut } } })
const withPeaks = (peakC: readonly number[], cut = 'lamb-leg-bone-in'): Forecast => {
  const forecast = ofCut(cut)
  const depthM = peakC.map((_, i) => (i / (peakC.length - 1)) * 0.06)
  const cutFace = { ...forecast.cutFace, thickness: metres(0.12), depthM, peakC }
  return { ...forecast, cutFace, slice: madeUpSlice(cutFace) }
}
const words = (forecast: Forecast) =>
  drawCutFace(forecast)
    .marks.filter((mark): mark is TextMark => mark.kind === 'text')
    .map((mark) => mark.text)
const fills = (forecast: Forecast) =>
  drawCutFace(forecast).marks.flatMap((mark) => (mark.kind === 'path' && mark.fill ? [mark.fill] : []))

describe('cut face', () => {
  test('each isotherm is named with its depth at the thin side, the inner one first', () => {
    expect(words(withPeaks([80, 70, 60, 50]))).toEqual([
      '55 °C',
      '50 mm in',
      '60 °C',
      '40 mm in',
      '65 °C',
      '30 mm in',
      '70 °C',
      '20 mm in',
    ])
  })
  test('picture, table and sentence give one depth', () => {
    const forecast = withPeaks([80, 70, 60, 50])
    const row = drawCutFace(forecast).tables[0]?.rows.find(([level]) => level === '65 °C')
    expect(row?.[1]).toBe('30 mm')
    expect(words(forecast)).toContain('30 mm in')
    expect(cutFaceSentence(forecast, 'metric')).toContain('30 mm deep at the thin side')
  })
  test('each lead begins on the line whose temperature it names', () => {
    const { marks } = drawCutFace(withPeaks([80, 70, 60, 50]))
    const lines = marks.filter((m): m is PathMark => m.kind === 'path' && m.stroke === 'seam' && m.fill === undefined)
    const starts = marks.filter((m): m is CircleMark => m.kind === 'circle')
    expect(starts).toHaveLength(lines.length)
    starts.forEach(({ cx, cy }, i) => {
      expect(lines[i]?.d).toContain(`${cx} ${cy}`)
    })
  })
  test('a face that is hot right through has no inner shade and says so, one that stays cool no outer one', () => {
    expect(fills(withPeaks([90, 85, 80, 75]))).not.toContain('red-0')
    expect(words(withPeaks([90, 85, 80, 75]))).toEqual(['above 70 °C', 'right through'])
    expect(words(withPeaks([48, 46, 44, 42]))).toEqual(['below 50 °C', 'right through'])
    expect(fills(withPeaks([48, 46, 44, 42])).filter((fill) => fill.startsWith('red'))).toEqual(['red-0'])
  })
  test.each(CUTS.map((cut) => [cut.id]))('%s is drawn inside its picture', (cut) => {
    const drawing = drawCutFace(ofCut(cut))
    const points = drawing.marks
      .filter((m): m is PathMark => m.kind === 'path' && m.stroke !== 'ink-2' && m.stroke !== 'paper')
      .flatMap((mark) =>
        [...mark.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
      )
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    expect(Math.min(...xs, ...ys)).toBeGreaterThan(3)
    expect(Math.max(...xs)).toBeLessThan(SLICE_WIDTH)
    expect(Math.max(...ys)).toBeLessThan(drawing.height - 3)
  })
  test('a bone and a fat cap are drawn where the catalogue has them', () => {
    for (const cut of CUTS) {
      const drawn = fills(ofCut(cut.id))
      expect(drawn.includes('bone'), cut.id).toBe(cut.bone !== undefined)
      expect(drawn.includes('fat'), cut.id).toBe(cut.fatCap > 0)
    }
  })
  test('the sentence in either unit, and where the whole face is hotter', () => {
    expect(cutFaceSentence(BASE, 'metric')).toMatch(/^About 43 % of the face stays below 65 °C \(37 to 49 %\)/)
    expect(cutFaceSentence(BASE, 'us')).toContain('below 149 °F')
    const forecast = withPeaks([90, 85, 80, 75])
    const none = { ...forecast.cutFace, areaBelow: [] }
    expect(cutFaceSentence({ ...forecast, cutFace: none }, 'metric')).toBe('All of the face has been above 65 °C.')
  })
})

describe('what the shades mean', () => {
  test('the states of red meat are told by the highest temperatures of this slice', () => {
    // the made-up slice greys evenly from 55 to 70 °C
    expect(tonesOf(withPeaks([80, 70, 60, 50]), 'metric').map((tone) => tone.range)).toEqual([
      'below 56 °C',
      '56 to 60',
      '60 to 65',
      '65 to 69',
      'above 69 °C',
    ])
  })
  test('a state that the slice does not have says so', () => {
    const tones = tonesOf(withPeaks([90, 85, 80, 75]), 'metric')
    expect(tones.map((tone) => tone.range)).toEqual([
      'none here',
      'none here',
      'none here',
      'none here',
      'right through',
    ])
  })
  test('poultry and fish have words of their own', () => {
    const said = (cut: string) => tonesOf(ofCut(cut), 'metric').map((tone) => tone.words)
    expect(said('turkey-whole')).toContain('just set')
    expect(said('salmon-side')).toContain('just flaking')
    for (const cut of ['turkey-whole', 'salmon-side']) expect(said(cut).join()).not.toContain('rosy')
  })
  test.each(CUTS.map(({ animal }) => animal).filter((animal, i, all) => all.indexOf(animal) === i))(
    'shades of %s grow lighter outward, so that they read without hue',
    (animal) => {
      const scale = lookScale(animal)
      const light = Array.from({ length: SHADES }, (_, i) => {
        const [r, g, b] = [1, 3, 5].map((at) =>
          Number.parseInt(shadeColour(`${scale.palette}-${i}`).slice(at, at + 2), 16),
        )
        return 0.2126 * (r as number) + 0.7152 * (g as number) + 0.0722 * (b as number)
      })
      light.slice(1).forEach((value, i) => {
        expect(value).toBeGreaterThan(light[i] as number)
      })
      const levels = shadeLevels(scale)
      expect(levels).toHaveLength(SHADES - 1)
      for (const bound of scale.bounds) expect(levels.some((level) => Math.abs(level - bound) < 1e-9)).toBe(true)
      levels.slice(1).forEach((value, i) => {
        expect(value).toBeGreaterThan(levels[i] as number)
      })
    },
  )
})

describe('cut outline', () => {
  test('a hotter line lies outside a cooler one, for every cut', () => {
    for (const cut of CUTS) {
      const { section } = ofCut(cut.id).slice
      const place = placer(cutFamily(cut), 100, 60)
      const reach = (level: number) => isotherm(section, level, place).map(([x, y]) => Math.hypot(x, y))
      const [outer, inner] = [reach(70), reach(60)]
      inner.forEach((r, i) => {
        expect(r).toBeLessThanOrEqual((outer[i] as number) + 1e-9)
      })
    }
  })
  test('the drawn thickness is within a tenth of the roast’s', () => {
    const place = placer('section', 120, 80)
    const height = (place(0, 1)[1] as number) - (place(0, -1)[1] as number)
    expect(height).toBeGreaterThan(160 * 0.9)
    expect(height).toBeLessThan(160 * 1.1)
  })
  test('a line closes on itself', () => {
    expect(
      closedPath([
        [0, 0],
        [1, 0],
        [1, 1],
      ]),
    ).toBe('M0 0L1 0L1 1Z')
  })
  test('every family has its cuts', () => {
    const family = (id: string) => {
      const cut = cutById(id)
      return cut && cutFamily(cut)
    }
    expect(family('lamb-leg-bone-in')).toBe('leg')
    expect(family('pork-loin-bone-in')).toBe('rib')
    expect(family('pork-loin-boneless')).toBe('section')
    expect(family('turkey-whole')).toBe('breast')
    expect(family('salmon-side')).toBe('side')
    expect(family('pork-shoulder-bone-in')).toBe('shoulder')
  })
})
