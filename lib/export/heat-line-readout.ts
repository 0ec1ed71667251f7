import { fromIso } from '../plan/clock'
import { celsius, fahrenheit, type Instant, instant } from '../units'
import type { DrawingAxis } from './drawing'
import { clockOffset, valueAt } from './heat-line-axis'
import type { HeatFacts, HeatLineInput } from './heat-line-facts'
import type { Readout } from './readout-words'

const MINUTE = 60_000

export function readoutOf(input: HeatLineInput, facts: HeatFacts, axis: DrawingAxis): Readout {
  const count = Math.round((axis.to - axis.from) / MINUTE)
  const times = Array.from({ length: count + 1 }, (_, i) => instant(axis.from + i * MINUTE))
  const degrees = (level: number) => Math.round(input.units === 'us' ? fahrenheit(celsius(level)) : level)
  return {
    minutes: count,
    clock: clockParts(times, input.zone),
    probe: times.map((at) => {
      const point = valueAt(facts.meat, at)
      return point && [degrees(point.low), degrees(point.likely), degrees(point.high)]
    }),
    cooker: times.map((at) => {
      const point = valueAt(facts.cooker, at)
      return point && degrees(point.likely)
    }),
    degrees: input.units === 'us' ? '°F' : '°C',
    spells: spellsOf(input, axis.from),
  }
}

function clockParts(times: readonly Instant[], zone: string): Readout['clock'] {
  const parts: { index: number; minuteOfDay: number; offset: number }[] = []
  times.forEach((at, index) => {
    // A clock changes on a full quarter of an hour; asking at each minute would be slow.
    if (index > 0 && Math.round(at / MINUTE) % 15 !== 0) return
    const offset = clockOffset(at, zone)
    if (parts.at(-1)?.offset !== offset) parts.push({ index, minuteOfDay: minuteOfDay(at, offset), offset })
  })
  return parts.map(({ index, minuteOfDay: minute }) => ({ index, minuteOfDay: minute }))
}
const minuteOfDay = (at: number, offset: number) => {
  const minute = Math.round((at + offset) / MINUTE) % 1440
  return minute < 0 ? minute + 1440 : minute
}

function spellsOf({ layout, shoot }: HeatLineInput, start: Instant): Readout['spells'] {
  const index = (iso: string) => Math.round((fromIso(iso) - start) / MINUTE)
  const shots = (layout?.shots ?? []).map((placed) => {
    const title = shoot?.shots?.find((shot) => shot.id === placed.id)?.title ?? placed.id
    const cameras = placed.camera.length > 1 ? 'cameras' : 'camera'
    const words = placed.camera.length > 0 ? `${cameras} ${placed.camera.join(', ')}: ${title}` : title
    return { from: index(placed.start), to: index(placed.end), words }
  })
  const meals = (layout?.meals ?? []).map((meal) => ({
    from: index(meal.start),
    to: index(meal.end),
    words: `meal: ${meal.people.join(', ')}`,
  }))
  return [...shots, ...meals]
}
