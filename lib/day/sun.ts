import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import { type Instant, instant } from '../units'

/** Degrees, north and east positive. */
export type Place = { readonly lat: number; readonly lon: number }
export type Light = 'daylight' | 'golden-hour' | 'golden-hour-morning' | 'twilight' | 'night'
export interface LightBand {
  readonly light: Light
  readonly start: Instant
  readonly end: Instant
}
/** What the sun does in a span: `never` says why a time is missing. */
export interface SunTimes {
  readonly sunrise: Instant | null
  readonly sunset: Instant | null
  /** The sun stays up ("sets") or down ("rises") for the whole span. */
  readonly never: 'rises' | 'sets' | null
}

/** Upper limb on the horizon: 34' of refraction and 16' of semidiameter, zenith 90°50' (US Naval Observatory). */
export const SUNRISE_DEG = -50 / 60
/** End of civil twilight (US Naval Observatory). */
const CIVIL_DEG = -6
/** Photographers' convention; common practice, no source. */
const GOLDEN_DEG = { low: -4, high: 6 }

type Range = { readonly low: number; readonly high: number; readonly when: 'any' | 'rising' | 'setting' }
const RANGES: readonly (readonly [Light, Range])[] = [
  ['daylight', { low: SUNRISE_DEG, high: 90, when: 'any' }],
  ['golden-hour', { ...GOLDEN_DEG, when: 'setting' }],
  ['golden-hour-morning', { ...GOLDEN_DEG, when: 'rising' }],
  ['twilight', { low: CIVIL_DEG, high: SUNRISE_DEG, when: 'any' }],
  ['night', { low: -90, high: CIVIL_DEG, when: 'any' }],
]

/** Geometric altitude of the sun's centre above the horizon, degrees; no refraction. */
export function sunAltitude(at: Instant, place: Place): number {
  const observer = new Observer(place.lat, place.lon, 0)
  const date = new Date(at)
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true)
  return Horizon(date, observer, ra, dec).altitude
}

/**
 * Every spell of each light within a span, by start. Lights overlap: golden hour reaches into daylight and twilight.
 * A light that does not come has no band; one that fills the span has one band as long as the span.
 */
export function lightBands(place: Place, from: Instant, to: Instant): LightBand[] {
  const pieces = monotonePieces(place, from, to)
  const bands = RANGES.flatMap(([light, range]) =>
    joined(
      pieces.flatMap((p) => partWithin(place, p, range)),
      light,
    ),
  )
  return bands.sort((a, b) => a.start - b.start || a.end - b.end)
}

/** First apparent sunrise and first apparent sunset within a span; give a span of a day. */
export function sunTimes(place: Place, from: Instant, to: Instant): SunTimes {
  const days = lightBands(place, from, to).filter((b) => b.light === 'daylight')
  const sunrise = days.find((b) => b.start > from)?.start ?? null
  const sunset = days.find((b) => b.end < to)?.end ?? null
  const never = sunrise !== null || sunset !== null ? null : days.length > 0 ? 'sets' : 'rises'
  return { sunrise, sunset, never }
}

interface Piece {
  readonly start: number
  readonly end: number
  readonly startDeg: number
  readonly endDeg: number
}
const SAMPLE_MS = 30 * 60_000

/** Cuts the span at the sun's highest and lowest points: between two cuts the altitude only rises or only falls. */
function monotonePieces(place: Place, from: Instant, to: Instant): Piece[] {
  const altitude = (ms: number) => sunAltitude(instant(ms), place)
  const cuts: number[] = [from]
  for (let a = from as number; a < to; a += SAMPLE_MS) {
    const b = Math.min(a + SAMPLE_MS, to)
    const turns = slope(altitude, a) > 0 !== slope(altitude, b) > 0
    if (turns) cuts.push(bisect((ms) => slope(altitude, ms), a, b))
  }
  cuts.push(to)
  return cuts.slice(1).map((end, i) => {
    const start = cuts[i] as number
    return { start, end, startDeg: altitude(start), endDeg: altitude(end) }
  })
}

const slope = (altitude: (ms: number) => number, ms: number) => altitude(ms + 30_000) - altitude(ms - 30_000)

/** Where a function of one sign at `a` and the other at `b` changes sign, to 0.1 s. */
function bisect(f: (ms: number) => number, a: number, b: number): number {
  const atStart = f(a) > 0
  let [low, high] = [a, b]
  while (high - low > 100) {
    const middle = (low + high) / 2
    if (f(middle) > 0 === atStart) low = middle
    else high = middle
  }
  return (low + high) / 2
}

type Span = { readonly start: number; readonly end: number }
function partWithin(place: Place, piece: Piece, range: Range): Span[] {
  const rising = piece.endDeg > piece.startDeg
  if (range.when !== 'any' && (range.when === 'rising') !== rising) return []
  const lowest = Math.min(piece.startDeg, piece.endDeg)
  const highest = Math.max(piece.startDeg, piece.endDeg)
  if (highest <= range.low || lowest >= range.high) return []
  const crossing = (deg: number) => bisect((ms) => sunAltitude(instant(ms), place) - deg, piece.start, piece.end)
  const atLow = lowest >= range.low ? (rising ? piece.start : piece.end) : crossing(range.low)
  const atHigh = highest <= range.high ? (rising ? piece.end : piece.start) : crossing(range.high)
  return [rising ? { start: atLow, end: atHigh } : { start: atHigh, end: atLow }]
}

function joined(spans: readonly Span[], light: Light): LightBand[] {
  const bands: { start: number; end: number }[] = []
  for (const span of spans) {
    const last = bands.at(-1)
    if (last && span.start - last.end < 1) last.end = span.end
    else bands.push({ ...span })
  }
  return bands.map((b) => ({ light, start: instant(Math.round(b.start)), end: instant(Math.round(b.end)) }))
}
