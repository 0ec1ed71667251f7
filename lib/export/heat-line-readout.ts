import { celsius, formatTemp, instant } from '../units'
import { valueAt } from './heat-line-axis'
import { clockAt } from './heat-line-clock'
import { sunAt } from './heat-line-daylight'
import type { CurvePoint, HeatFacts, ShotFact } from './heat-line-facts'
import { windowWords } from './heat-line-words'

const MINUTE = 60_000
/** A reading stands for the minutes about it. */
const NEAR_MS = 4 * MINUTE

/** "14:35: probe 41 °C, 38 to 44; cooker 150 °C; camera A stands by for Sear". */
export function readoutAt(facts: HeatFacts, at: number): string {
  const told = [...momentsAt(facts, at), probeAt(facts, at), cookerAt(facts, at), ...crewAt(facts, at)].filter(Boolean)
  const parts = [...(told.length > 0 ? told : ['nothing planned']), lightAt(facts, at)].filter(Boolean)
  return `${clockAt(facts.clock, at)}: ${parts.join('; ')}`
}

function momentsAt({ moments, clock }: HeatFacts, at: number): string[] {
  const here = moments.filter(({ likely }) => likely !== null && Math.abs(likely - at) <= MINUTE / 2)
  return here.map((moment) => [moment.name, windowWords(moment, clock)].filter(Boolean).join(', '))
}

function probeAt(facts: HeatFacts, at: number): string {
  const words = (level: number) => formatTemp(celsius(level), facts.units)
  const last = facts.day?.read.at(-1)
  if (last && at <= last.at + MINUTE / 2) {
    const near = [...(facts.day?.read ?? [])].sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0]
    if (near && Math.abs(near.at - at) <= NEAR_MS)
      return `probe read ${words(near.level)} at ${clockAt(facts.clock, near.at)}`
  }
  const point = valueAt([...facts.meat, ...facts.whole.slice(1)], instant(at))
  if (!point) return ''
  return `probe ${words(point.likely)}${bandWords(facts, point)}`
}
/** ", 38 to 44", without the degrees said just before; nothing where both ends read the same. */
function bandWords({ units }: HeatFacts, { low, high }: CurvePoint): string {
  const [from, to] = [low, high].map((level) => formatTemp(celsius(level), units).replace(/ ?°.$/, ''))
  return from === to ? '' : `, ${from} to ${to}`
}

function cookerAt({ cooker, units }: HeatFacts, at: number): string {
  const point = valueAt(cooker, instant(at))
  return point ? `cooker ${formatTemp(celsius(point.likely), units)}` : ''
}

function crewAt({ crew }: HeatFacts, at: number): string[] {
  if (!crew) return []
  const shots = crew.shots.filter(({ setup, end }) => setup <= at && at < end).map((shot) => shotWords(shot, at))
  const meals = crew.meals
    .filter(({ start, end }) => start <= at && at < end)
    .map(({ people }) => {
      const names = people.map((id) => crew.people.find((person) => person.id === id)?.name ?? id)
      return `meal: ${names.join(', ')}`
    })
  return [...shots, ...meals]
}
function shotWords({ cameras, title, start }: ShotFact, at: number): string {
  const who = cameras.length === 0 ? '' : `${cameras.length > 1 ? 'cameras' : 'camera'} ${cameras.join(', ')}`
  if (at >= start) return who ? `${who}: ${title}` : title
  return who ? `${who} ${cameras.length > 1 ? 'stand' : 'stands'} by for ${title}` : `stand by for ${title}`
}

const LIGHTS = { golden: 'golden hour', twilight: 'twilight', dark: 'dark' } as const
function lightAt(facts: HeatFacts, at: number): string {
  const part = facts.light.find(({ start, end }) => start <= at && at < end)
  if (part) return LIGHTS[part.light]
  const deg = sunAt(facts, at)
  return deg === null || deg < 0 ? '' : `sun ${Math.round(deg)}° up`
}

/** The moment before or after an instant; null where there is none. */
export function nextMoment({ moments }: HeatFacts, at: number, step: 1 | -1): number | null {
  const times = moments.flatMap(({ likely }) => (likely === null ? [] : [Math.round(likely / MINUTE) * MINUTE]))
  const there = times.filter((time) => (step > 0 ? time > at : time < at))
  return there.length === 0 ? null : step > 0 ? Math.min(...there) : Math.max(...there)
}
