import { describe, expect, it } from 'vitest'
import { type Light, lightBands, sunAltitude, sunTimes } from '../../../lib/day/sun'
import { type Instant, instant } from '../../../lib/units'

const at = (iso: string): Instant => instant(Date.parse(iso))
const DUBLIN = { lat: 53.35, lon: -6.26 }
const TROMSO = { lat: 69.6492, lon: 18.9553 }
const day = (date: string) => [at(`${date}T00:00:00Z`), instant(at(`${date}T00:00:00Z`) + 86_400_000)] as const
const bandsOf = (light: Light, place: { lat: number; lon: number }, date: string) =>
  lightBands(place, ...day(date)).filter((b) => b.light === light)

describe('the sun over a place', () => {
  it('stands overhead on the equator at an equinox noon and below the horizon at midnight', () => {
    expect(sunAltitude(at('2027-03-20T12:07:00Z'), { lat: 0, lon: 0 })).toBeGreaterThan(89)
    expect(sunAltitude(at('2027-03-20T00:07:00Z'), { lat: 0, lon: 0 })).toBeLessThan(-89)
  })
  it('gives the evening golden hour from +6 to -4 degrees, falling', () => {
    const [band, ...more] = bandsOf('golden-hour', DUBLIN, '2027-05-15')
    if (!band) throw new Error('no golden hour')
    expect(more).toEqual([])
    expect(sunAltitude(band.start, DUBLIN)).toBeCloseTo(6, 3)
    expect(sunAltitude(band.end, DUBLIN)).toBeCloseTo(-4, 3)
    expect(band.start).toBeGreaterThan(at('2027-05-15T18:00:00Z'))
  })
  it('gives the morning golden hour from -4 to +6 degrees, rising', () => {
    const [band] = bandsOf('golden-hour-morning', DUBLIN, '2027-05-15')
    if (!band) throw new Error('no golden hour')
    expect(sunAltitude(band.start, DUBLIN)).toBeCloseTo(-4, 3)
    expect(sunAltitude(band.end, DUBLIN)).toBeCloseTo(6, 3)
  })
  it('fills a day with daylight, twilight and night, without gap or overlap', () => {
    for (const place of [DUBLIN, TROMSO, { lat: -33.9, lon: 151.2 }])
      for (const date of ['2027-01-10', '2027-05-15', '2026-11-26']) {
        const bands = lightBands(place, ...day(date)).filter((b) => !b.light.startsWith('golden'))
        const [from, to] = day(date)
        expect(bands[0]?.start).toBe(from)
        expect(bands.at(-1)?.end).toBe(to)
        for (const [i, b] of bands.slice(1).entries())
          expect(Math.abs(b.start - (bands[i]?.end ?? 0))).toBeLessThan(300)
      }
  })
  it('answers that the sun never sets, and splits the polar golden night at its lowest point', () => {
    expect(sunTimes(TROMSO, ...day('2026-06-21'))).toEqual({ sunrise: null, sunset: null, never: 'sets' })
    expect(bandsOf('daylight', TROMSO, '2026-06-21')).toHaveLength(1)
    const [evening] = bandsOf('golden-hour', TROMSO, '2026-06-21')
    expect(sunAltitude(evening?.start ?? at('2026-06-21T12:00:00Z'), TROMSO)).toBeCloseTo(6, 3)
    const [morning] = bandsOf('golden-hour-morning', TROMSO, '2026-06-21')
    expect(sunAltitude(morning?.end ?? at('2026-06-21T12:00:00Z'), TROMSO)).toBeCloseTo(6, 3)
  })
  it('answers that the sun never rises, and still finds the twilight of a polar noon', () => {
    expect(sunTimes(TROMSO, ...day('2026-12-21'))).toEqual({ sunrise: null, sunset: null, never: 'rises' })
    expect(bandsOf('daylight', TROMSO, '2026-12-21')).toEqual([])
    expect(bandsOf('twilight', TROMSO, '2026-12-21')).toHaveLength(1)
  })
  it('finds a day of a few minutes that a coarse scan would step over', () => {
    const latitudes = Array.from({ length: 40 }, (_, i) => 67.2 + i * 0.01)
    const days = latitudes.flatMap((lat) => bandsOf('daylight', { lat, lon: 20 }, '2026-12-21'))
    const shortest = Math.min(...days.map((b) => b.end - b.start))
    expect(days.length).toBeLessThan(latitudes.length)
    expect(shortest).toBeLessThan(25 * 60_000)
  })
})
