import { inflateSync } from 'node:zlib'
import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { captionsOf } from '../../../lib/export/captions'
import { clipsInDay } from '../../../lib/export/clip-times'
import { type FilmFacts, filmFacts } from '../../../lib/export/film-facts'
import { type OverlayStyle, overlaySvg } from '../../../lib/export/overlay'
import { framesOf, overlayFault, overlayRuns } from '../../../lib/export/overlay-frames'
import { webVtt } from '../../../lib/export/webvtt'
import { rasteriser } from '../../../lib/print/overlay-png'
import { zipOfFrames } from '../../../lib/print/overlay-zip'
import { seconds } from '../../../lib/units'
import { at } from '../log/lines'
import { CLOCKS, clip, filmed, withClips } from './filmed-day'
import { cuesOf } from './strict-webvtt'

const STYLE: OverlayStyle = { width: 640, height: 360, units: 'metric', invented: false }
const day = filmed(...CLOCKS)
const facts = filmFacts(withClips(), day, 'hero') as FilmFacts
const laid = (rest: object) => {
  const [one] = clipsInDay(withClips(clip('a1', '14:40:30:00', rest)), day)
  if (!one) throw new Error('no clip')
  return one
}
const wordsOf = (svg: string) => [...svg.matchAll(/>([^<]+)<\/text>/g)].map(([, words]) => words)

/** Red, green, blue and alpha of an 8-bit RGBA PNG. [PNG, third edition, 9.2: filter types 0 to 4] */
function pixelsOf(png: Uint8Array): { width: number; at: (x: number, y: number) => readonly number[] } {
  const view = Buffer.from(png)
  const [width, height] = [view.readUInt32BE(16), view.readUInt32BE(20)]
  const packed: Buffer[] = []
  for (let i = 8; i < view.length; i += 12 + view.readUInt32BE(i))
    if (view.toString('latin1', i + 4, i + 8) === 'IDAT')
      packed.push(view.subarray(i + 8, i + 8 + view.readUInt32BE(i)))
  const raw = inflateSync(Buffer.concat(packed))
  const row = 4 * width
  const out = new Uint8Array(row * height)
  const paeth = (a: number, b: number, c: number) => {
    const [pa, pb, pc] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)]
    return pa <= pb && pa <= pc ? a : pb <= pc ? b : c
  }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < row; x++) {
      const [a, b, c] = [
        x < 4 ? 0 : out[y * row + x - 4],
        y === 0 ? 0 : out[(y - 1) * row + x],
        x < 4 || y === 0 ? 0 : out[(y - 1) * row + x - 4],
      ] as [number, number, number]
      const by = [0, a, b, (a + b) >> 1, paeth(a, b, c)][raw[y * (row + 1)] as number] as number
      out[y * row + x] = (raw[y * (row + 1) + 1 + x] as number) + by
    }
  return { width, at: (x, y) => [...out.subarray(y * row + 4 * x, y * row + 4 * x + 4)] }
}

describe('the overlay', () => {
  it('says what the probe reads, how long the meat has been on, and in what state it is', () => {
    const words = (minute: number) => wordsOf(overlaySvg(facts, seconds(60 * minute), STYLE))
    expect(words(-5)).toEqual([])
    expect(words(30)).toEqual(['30 min, cooking'])
    expect(words(101)).toEqual(['40 °C', '1 h 41 min, cooking'])
    expect(words(131)).toEqual(['2 h 11 min, resting'])
    expect(wordsOf(overlaySvg(facts, seconds(60 * 101), { ...STYLE, units: 'us', invented: true }))).toEqual([
      '104 °F',
      '1 h 41 min, cooking',
      'invented readings',
    ])
  })
  it('is clear where nothing stands, and its letters show on white and on black', async () => {
    const draw = await rasteriser()
    const picture = pixelsOf(draw(overlaySvg(facts, seconds(60 * 101), STYLE)))
    expect(picture.width).toBe(640)
    for (const [x, y] of [
      [0, 0],
      [639, 0],
      [0, 359],
      [639, 359],
      [320, 100],
    ] as const)
      expect(picture.at(x, y)[3]).toBe(0)
    const solid = Array.from({ length: 200 * 100 }, (_, i) =>
      picture.at(32 + (i % 200), 250 + Math.floor(i / 200)),
    ).filter(([, , , alpha]) => alpha === 255)
    const lightness = solid.map(([r = 0, g = 0, b = 0]) => (r + g + b) / 3)
    expect(Math.max(...lightness)).toBeGreaterThan(240)
    expect(Math.min(...lightness)).toBeLessThan(40)
    expect(lightness.filter((l) => l > 200).length).toBeGreaterThan(300)
    expect(lightness.filter((l) => l < 60).length).toBeGreaterThan(300)
  })
  it.each([
    ['25', 4500],
    ['23.976', 4315],
    ['29.97 drop', 5394],
    ['59.94', 10_789],
  ] as const)('has the frames of its clip at %s', (rate, count) => {
    const one = laid({ rate, start: '14:40:30:00', length: '3 min' })
    const runs = [...overlayRuns(facts, one, STYLE)]
    expect(framesOf(one)).toBe(count)
    expect(runs.reduce((sum, run) => sum + run.count, 0)).toBe(count)
    expect(new Set(runs.map(({ svg }) => svg)).size).toBe(runs.length)
    expect(runs.length).toBeLessThan(12)
  })
  it('as a zip opens again, a file a frame; equal frames are the same bytes, drawn once', async () => {
    let drawn = 0
    const draw = await rasteriser()
    const counted = async (svgs: readonly string[]) => {
      drawn += svgs.length
      return svgs.map(draw)
    }
    const one = laid({ length: '40 s', rate: '24' })
    const runs = overlayRuns(facts, one, STYLE)
    const pieces: Uint8Array[] = []
    for await (const piece of zipOfFrames(counted, { name: 'A 001', runs, about: 'about', at: at(0) }))
      pieces.push(piece)
    const files = unzipSync(Buffer.concat(pieces))
    const names = Object.keys(files).filter((name) => name.endsWith('.png'))
    expect([names.length, names[0], names.at(-1)]).toEqual([960, 'A-001_000000.png', 'A-001_000959.png'])
    expect(drawn).toBeLessThan(5)
    expect(files['A-001_000000.png']).toEqual(files['A-001_000001.png'])
    expect(pixelsOf(files['A-001_000959.png'] as Uint8Array).at(0, 0)[3]).toBe(0)
  })
  it('of a long clip is drawn in lots, no more than two ahead of what was taken', async () => {
    const lots: number[] = []
    const runs = Array.from({ length: 100 }, (_, i) => ({ svg: `${i}`, count: 2 }))
    const draw = async (svgs: readonly string[]) => {
      lots.push(svgs.length)
      return svgs.map((svg) => Uint8Array.from(Buffer.from(svg)))
    }
    const pieces: Uint8Array[] = []
    const zip = zipOfFrames(draw, { name: 'long', runs, about: 'about', at: at(0) })
    pieces.push((await zip.next()).value as Uint8Array)
    expect(lots.length).toBeLessThanOrEqual(2)
    for await (const piece of zip) pieces.push(piece)
    expect(lots.reduce((sum, one) => sum + one, 0)).toBe(100)
    const { 'about.txt': _, ...files } = unzipSync(Buffer.concat(pieces))
    expect(Object.values(files).map((bytes) => Buffer.from(bytes).toString())).toEqual(
      runs.flatMap(({ svg, count }) => Array<string>(count).fill(svg)),
    )
  })
  it('is refused in a sentence where there is nothing to show or too much', () => {
    expect(overlayFault(laid({ start: '12:45:00:00', length: '5 min' }), facts)).toMatch(/before the meat went on/)
    expect(overlayFault(laid({ length: '2 h' }), facts)).toMatch(/180000 frames; one file takes 60000, 40 min at 25/)
    expect(overlayFault(laid({}), null)).toMatch(/Nobody marked/)
    expect(overlayFault(laid({}), facts)).toBeNull()
  })
})

describe('captions of facts', () => {
  it('change by the minute, stand in the video where the clip does, and pass a strict parser', () => {
    const shoot = withClips(clip('a1', '14:40:30:00', { length: '90 s', in: '10 s' }))
    const cues = captionsOf(shoot, day, 'metric')
    expect(cues).toEqual([
      { startS: 10, endS: 40, text: 'Probe 40 °C, 1 h 40 min after the meat went on. Cooking.' },
      { startS: 40, endS: 100, text: 'Probe 40 °C, 1 h 41 min after the meat went on. Cooking.' },
    ])
    expect(cuesOf(webVtt(cues)).map(({ startTime, endTime }) => [startTime, endTime])).toEqual([
      [10, 40],
      [40, 100],
    ])
  })
  it('of takes count from the first slate, and say nothing before the meat went on', () => {
    const cues = captionsOf(withClips(), day, 'us')
    expect(cues[0]).toEqual({ startS: 600, endS: 660, text: 'The meat has just gone on. Cooking.' })
    expect(cues.at(-1)?.text).toBe('2 h 33 min after the meat went on. Sliced.')
  })
})
