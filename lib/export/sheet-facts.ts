import { formatClock, fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { formatTemp, instant, later, seconds } from '../units'
import { clockOf, type Sheet } from './call-words'
import { heatedBy, searsHot } from './hearth'
import { lightParts } from './heat-line-light'

/** The lines at the head of a call sheet, each as the plan or the producer has it. */

/** "Walled kitchen garden; 53.35° N, 6.26° W". */
export function placeWords({ place }: Shoot): string {
  const degrees = (n: number, plus: string, minus: string) => `${Math.abs(n).toFixed(2)}° ${n < 0 ? minus : plus}`
  const point = `${degrees(place.lat, 'N', 'S')}, ${degrees(place.lon, 'E', 'W')}`
  return place.name === undefined ? point : `${place.name}; ${point}`
}

/** "Golden hour from 20:26, sunset 21:18, dark 22:03." */
export function lightWords({ shoot, layout }: Sheet): string {
  const call = fromIso(layout.crewCall)
  const times = lightParts(shoot.place, call, later(call, seconds(20 * 3600)))
    .filter((part) => part.start > call + 60_000 && part.name !== 'first light')
    .map(
      (part) =>
        `${part.name === 'golden hour' ? 'golden hour from' : part.name} ${formatClock(part.start, shoot.zone)}`,
    )
  return sentence([...new Set(times)].slice(0, 3))
}

/** "14 °C, wind 3 m/s, humidity 65 %." */
export function weatherWords({ shoot, units }: Sheet): string {
  const { air, wind, humidity, rain } = shoot.weather ?? {}
  return sentence(
    [
      air === undefined ? '' : formatTemp(air, units),
      wind === undefined
        ? ''
        : units === 'us'
          ? `wind ${Math.round(wind / 0.44704)} mph`
          : `wind ${Math.round(wind)} m/s`,
      humidity === undefined ? '' : `humidity ${Math.round(humidity * 100)} %`,
      rain === undefined ? '' : `${rain} rain`,
    ].filter(Boolean),
  )
}
const sentence = (words: readonly string[]) => (words.length > 0 ? `${capital(words.join(', '))}.` : '')
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

export const fireStands = (shoot: Shoot) =>
  heatedBy(shoot, 'charcoal', 'wood', 'gas')
    ? 'Water and extinguisher stand by the cooker.'
    : 'A fire blanket hangs by the oven.'

/** What the plan itself asks for; common practice, no source. */
export function kitWords(shoot: Shoot): string {
  const cameras = shoot.cameras?.length ?? 0
  const items = [
    cameras > 0 ? `${cameras} ${cameras === 1 ? 'camera' : 'cameras'}` : '',
    'probe and a spare',
    heatedBy(shoot, 'charcoal', 'wood') ? 'fuel with a reserve, lighter, metal bin with a lid for the ash' : '',
    searsHot(shoot) ? 'heat gloves, long tongs' : 'oven gloves',
    'board and carving knife',
  ]
  return sentence(items.filter(Boolean))
}

/** "about 21:40, 22:18 at the late end": later by what the last calls may be late. */
export function wrapWords(sheet: Sheet): string {
  const { layout } = sheet
  const ends = layout.shots.map(({ end }) => fromIso(end))
  const late = layout.calls.flatMap((call) => {
    const placed = layout.shots.find(({ id }) => id === call.for)
    if (!placed || call.window.late === null || call.window.likely === null) return []
    return [fromIso(placed.end) + fromIso(call.window.late) - fromIso(call.window.likely)]
  })
  const over = Math.max(0, ...late) - Math.max(...ends)
  const about = `about ${clockOf(sheet, layout.wrap)}`
  if (ends.length === 0 || over < 5 * 60_000) return about
  return `${about}, ${formatClock(instant(fromIso(layout.wrap) + over), sheet.shoot.zone)} at the late end`
}
