import { lightBands, type Place, sunAltitude } from '../day/sun'
import { type Instant, instant } from '../units'
import type { HeatFacts, LightPart } from './heat-line-facts'

const MINUTE = 60_000
const EVERY = 10 * MINUTE

/** The sun and the parts of the light in a span. */
export function daylight(place: Place, from: Instant, to: Instant): Pick<HeatFacts, 'sun' | 'light'> {
  const count = Math.ceil((to - from) / EVERY)
  const times = Array.from({ length: count + 1 }, (_, i) => instant(Math.min(from + i * EVERY, to)))
  return {
    sun: times.map((at) => ({ at, deg: Math.round(sunAltitude(at, place) * 10) / 10 })),
    light: lightParts(place, from, to),
  }
}

/** When it is dark next, where that is near. */
export function darkNear(place: Place, last: number): Instant | null {
  const bands = lightBands(place, instant(last - 60 * MINUTE), instant(last + 90 * MINUTE))
  return bands.find((band) => band.light === 'night' && band.start > last - 59 * MINUTE)?.start ?? null
}

/** Golden hour while the sun is under 6°, twilight to −6°, dark. */
export function lightParts(place: Place, from: Instant, to: Instant): LightPart[] {
  const bands = lightBands(place, from, to)
  const days = bands.filter((b) => b.light === 'daylight')
  const parts = bands.flatMap((band): LightPart[] => {
    const { light, start, end } = band
    if (light === 'twilight') {
      const evening = sunAltitude(start, place) > sunAltitude(end, place)
      return [{ light, name: evening ? 'sunset' : 'first light', start, end }]
    }
    if (light === 'night') return [{ light: 'dark', name: 'dark', start, end }]
    const day = days.find((d) => d.start < end && start < d.end)
    if (light === 'daylight' || !day) return []
    const name = light === 'golden-hour' ? 'golden hour' : 'sunrise'
    const inDay = { start: instant(Math.max(start, day.start)), end: instant(Math.min(end, day.end)) }
    return [{ light: 'golden', name, ...inDay }]
  })
  const whole = (at: Instant) => instant(Math.round(at / 1000) * 1000)
  return parts.map((part) => ({ ...part, start: whole(part.start), end: whole(part.end) }))
}
