import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cutFaceSentence, depthOfPeak, drawCutFace, tonesOf } from '../../../lib/export/cut-face'
import { type CutFamily, cutFamily, lineAtDepth } from '../../../lib/export/cut-outline'
import type { PathMark, TextMark } from '../../../lib/export/drawing'
import { CUTS } from '../../../lib/model/cuts'
import type { Forecast } from '../../../lib/model/forecast'
import { COOK, syntheticForecast } from './synthetic'

const ofCut = (cut: string): Forecast => syntheticForecast({}, { ...COOK, roast: { ...COOK.roast, cut } })
const withPeaks = (peakC: readonly number[]): Forecast => {
  const forecast = syntheticForecast()
  const depthM = peakC.map((_, i) => (i / (peakC.length - 1)) * 0.06)
  return { ...forecast, cutFace: { ...forecast.cutFace, depthM, peakC } }
}
const words = (forecast: Forecast) =>
  drawCutFace(forecast)
    .marks.filter((mark): mark is TextMark => mark.kind === 'text')
    .map((mark) => mark.text)

describe('cut face', () => {
  test('depth of a peak is read between the nodes', () => {
    const { cutFace } = withPeaks([80, 70, 60, 50])
    expect(depthOfPeak(cutFace, 65)).toBeCloseTo(0.03, 9)
    expect(depthOfPeak(cutFace, 60)).toBeCloseTo(0.04, 9)
    expect(depthOfPeak(cutFace, 90)).toBe(0)
    expect(depthOfPeak(cutFace, 40)).toBeNull()
  })
  test('each edge is named with its depth, the inner one first', () => {
    expect(words(withPeaks([80, 70, 60, 50]))).toEqual([
      '58 °C',
      '44 mm in',
      '60 °C',
      '40 mm in',
      '65 °C',
      '30 mm in',
      '70 °C',
      '20 mm in',
    ])
  })
  test('a face that is hot right through has no inner tone, one that stays cool no outer one', () => {
    const fills = (forecast: Forecast) =>
      drawCutFace(forecast).marks.flatMap((mark) => (mark.kind === 'path' && mark.fill ? [mark.fill] : []))
    expect(fills(withPeaks([90, 85, 80, 75]))).not.toContain('tone-1')
    expect(words(withPeaks([90, 85, 80, 75]))).toEqual(['above 70 °C', 'right through'])
    expect(words(withPeaks([57, 55, 53, 50]))).toEqual(['below 58 °C', 'right through'])
    expect(
      fills(withPeaks([57, 55, 53, 50]))
        .filter((fill) => fill.startsWith('tone'))
        .at(-1),
    ).toBe('tone-1')
  })
  test.each(CUTS.map((cut) => [cut.id]))('%s is drawn inside its picture', (cut) => {
    const drawing = drawCutFace(ofCut(cut))
    for (const mark of drawing.marks.filter((m): m is PathMark => m.kind === 'path' && m.stroke === 'crust'))
      for (const [, x, y] of mark.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        expect(Number(x)).toBeGreaterThan(3)
        expect(Number(x)).toBeLessThan(356)
        expect(Number(y)).toBeGreaterThan(3)
        expect(Number(y)).toBeLessThan(drawing.height - 3)
      }
  })
  test('a bone is drawn only where there is one', () => {
    const bones = (cut: string) => drawCutFace(ofCut(cut)).marks.filter((m) => m.kind === 'path' && m.fill === 'bone')
    expect(bones('lamb-leg-bone-in')).toHaveLength(1)
    expect(bones('lamb-leg-boneless')).toHaveLength(0)
  })
  test('the sentence and the tones in either unit', () => {
    expect(cutFaceSentence(syntheticForecast(), 'metric')).toBe(
      'About 43 % of the face stays below 65 °C; 46 % has been above 70 °C.',
    )
    expect(cutFaceSentence(syntheticForecast(), 'us')).toContain('below 149 °F')
    expect(tonesOf('lamb-leg-bone-in', 'metric').map((tone) => tone.range)).toEqual([
      'below 58 °C',
      '58 to 60',
      '60 to 65',
      '65 to 70',
      'above 70 °C',
    ])
  })
})

test('cut outline: a deeper line lies inside a shallower one, for every family', () => {
  const families: CutFamily[] = ['leg', 'section', 'rib', 'shoulder', 'breast', 'side']
  const size = { half: fc.double({ min: 30, max: 140, noNaN: true }), wide: fc.double({ min: 1, max: 3, noNaN: true }) }
  fc.assert(
    fc.property(
      fc.constantFrom(...families),
      size.half,
      size.wide,
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      (family, half, wide, share) => {
        const outer = lineAtDepth(family, half * wide, half, share * half)
        const inner = lineAtDepth(family, half * wide, half, (share + 0.1) * half)
        const reach = (points: readonly (readonly [number, number])[], k: 0 | 1) =>
          Math.max(...points.map((p) => Math.abs(p[k])))
        expect(reach(inner, 0)).toBeLessThanOrEqual(reach(outer, 0) + 1e-9)
        expect(reach(inner, 1)).toBeLessThanOrEqual(reach(outer, 1) + 1e-9)
      },
    ),
  )
})
test('cut outline: the drawn thickness is the measured one', () => {
  const points = lineAtDepth('section', 120, 80, 0)
  const ys = points.map(([, y]) => y)
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(160 * 0.9)
  expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(160 * 1.1)
})
test('cut family: every cut of the catalogue has one', () => {
  expect(cutFamily('lamb-leg-bone-in')).toBe('leg')
  expect(cutFamily('pork-loin-bone-in')).toBe('rib')
  expect(cutFamily('pork-loin-boneless')).toBe('section')
  expect(cutFamily('turkey-whole')).toBe('breast')
  expect(cutFamily('salmon-side')).toBe('side')
})
