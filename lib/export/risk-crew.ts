import type { Layout } from '../day/layout'
import { lightBands } from '../day/sun'
import { formatClock, fromIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { formatTemp, type Instant } from '../units'
import { heatedBy, isOutdoors } from './hearth'
import type { RiskInput, RiskLine, WhoOf } from './risk-sheet'

const HOUR_MS = 3_600_000
/** Hours of sun from which shade is planned, and air that is hot or cold to stand in; [estimate] */
const SUNNY_H = 2
const HOT_C = 27
const COLD_C = 8

/** What standing there all day brings: cables, weather, dark, the night, people and animals who wander in. */
export function crewRisks(input: RiskInput, who: WhoOf): RiskLine[] {
  const { shoot, layout } = input
  return [
    {
      hazard: 'Cables and stands',
      does: 'Cables along edges, taped or under mats where people walk; none across the way from cooker to table. Stands weighted. The way out is free.',
      who: who('camera', 'sound'),
    },
    {
      hazard: 'Children, pets, passers-by',
      does: `A line that nobody crosses around ${heatedBy(shoot, 'charcoal', 'wood', 'gas') ? 'the fire' : 'the oven and the knives'}, two long steps wide; somebody minds it whenever the lid is open.`,
      who: '',
    },
    ...(isOutdoors(shoot) ? [...rain(input, who), ...sun(input), ...heat(input), ...cold(input), ...dark(input)] : []),
    ...overnight(layout, shoot, who),
    ...alone(shoot),
  ]
}

/** Spells of daylight within the crew's day. */
function daylight({ shoot, layout }: RiskInput): { readonly hours: number; readonly darkFrom: Instant | null } {
  const [call, wrap] = [fromIso(layout.crewCall), fromIso(layout.wrap)]
  const bands = lightBands(shoot.place, call, wrap)
  const day = bands.filter(({ light }) => light === 'daylight')
  const hours = day.reduce((sum, band) => sum + (band.end - band.start) / HOUR_MS, 0)
  return { hours, darkFrom: bands.find(({ light }) => light === 'night')?.start ?? null }
}

function sun(input: RiskInput): RiskLine[] {
  const { hours } = daylight(input)
  if (hours < SUNNY_H) return []
  return [
    {
      hazard: 'Sun on the crew',
      does: `${Math.round(hours)} hours of daylight between call and wrap: shade over the cameras and a place to sit in it, hats, sun cream, water for everybody.`,
      who: '',
    },
  ]
}

/** Told where rain is planned for; common practice. */
function rain({ shoot }: RiskInput, who: WhoOf): RiskLine[] {
  const falls = shoot.weather?.rain
  if (falls === undefined) return []
  return [
    {
      hazard: 'Rain',
      does: `The plan counts on ${falls} rain. Plugs, joints and chargers under a roof and off the ground, behind a protective switch; cameras covered; mats where the ground gets slippery. No tent, parasol or awning over a burning fire: it catches, and it holds carbon monoxide. At thunder everybody goes inside.`,
      who: who('camera', 'sound'),
    },
  ]
}

function heat({ shoot, units }: RiskInput): RiskLine[] {
  const air = shoot.weather?.air
  if (air === undefined || air < HOT_C) return []
  return [
    {
      hazard: 'Heat',
      does: `${formatTemp(air, units)} in the air and a fire beside it: whoever works at the cooker is relieved in turns, drinks, and stops at the first headache.`,
      who: '',
    },
  ]
}

function cold({ shoot, units }: RiskInput): RiskLine[] {
  const air = shoot.weather?.air
  if (air === undefined || air > COLD_C) return []
  return [
    {
      hazard: 'Cold',
      does: `${formatTemp(air, units)}: warm clothes, hot drinks and a warm place to go to. Nobody warms up over charcoal in a tent or a van.`,
      who: '',
    },
  ]
}

function dark(input: RiskInput): RiskLine[] {
  const { darkFrom } = daylight(input)
  if (darkFrom === null) return []
  return [
    {
      hazard: 'Dark',
      does: `Dark from ${formatClock(darkFrom, input.shoot.zone)}: ground between cooker, table and vans lit, a lamp for everybody, edges and steps marked.`,
      who: '',
    },
  ]
}

/** Hours of the night in which nobody is at their best. */
const SMALL_HOURS = { from: 1, to: 5 }

function overnight(layout: Layout, shoot: Shoot, who: WhoOf): RiskLine[] {
  const spans = [...layout.tasks, { start: layout.crewCall, end: layout.wrap }].map(
    ({ start, end }) => [fromIso(start), fromIso(end)] as const,
  )
  const hourOf = (at: number) => Number(formatClock(at as Instant, shoot.zone).slice(0, 2))
  const through = spans.some(([from, to]) => {
    for (let at: number = from; at < to; at += HOUR_MS / 2)
      if (hourOf(at) >= SMALL_HOURS.from && hourOf(at) < SMALL_HOURS.to) return true
    return false
  })
  if (!through) return []
  return [
    {
      hazard: 'Night',
      does: 'Nobody watches a fire alone through the night: two, one of them awake, who hand over by word of mouth. Nobody drives home tired; a bed or a lift is arranged.',
      who: who('cook'),
    },
  ]
}

const alone = (shoot: Shoot): RiskLine[] =>
  (shoot.people ?? []).length === 1
    ? [
        {
          hazard: 'Working alone',
          does: 'Somebody elsewhere knows the place and the wrap, and is telephoned when the fire is lit and when it is out.',
          who: '',
        },
      ]
    : []
