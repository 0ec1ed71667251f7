import type { Layout } from '../day/layout'
import { fuelName } from '../model/fuel'
import type { FuelSummary } from '../model/fuel-need'
import { boilingC, pressureAtPa } from '../model/vapour'
import { formatDate } from '../plan/clock'
import { surroundingsOf } from '../plan/cook-plan'
import type { Shoot } from '../plan/shoot'
import { celsius, formatMass, formatShare, formatTemp, type Kilograms, type UnitSystem } from '../units'
import { type AheadLine, aheadOf, roastName } from './prep-ahead'
import { cameraKit, cookKit, type ShotKit, shotKit } from './prep-kit'

export interface PrepInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly units: UnitSystem
  readonly revision: number
  /** What each cook burns; none where it burns nothing. */
  readonly fuel?: ReadonlyMap<string, FuelSummary>
}
export interface PrepList {
  readonly title: string
  readonly day: string
  readonly revision: string
  readonly ahead: readonly AheadLine[]
  readonly fuel: readonly string[]
  readonly shopping: readonly { readonly what: string; readonly much: string }[]
  readonly thermometers: readonly string[]
  readonly kit: readonly string[]
  readonly shots: readonly ShotKit[]
}

/** What has to be there before the day begins, worked out from the plan. */
export function prepListOf(input: PrepInput): PrepList {
  const { shoot, layout } = input
  return {
    title: shoot.title,
    day: formatDate(shoot),
    revision: `Revision ${input.revision}`,
    ahead: aheadOf(input),
    fuel: fuelLines(input),
    shopping: shoppingOf(input),
    thermometers: thermometerCheck(input),
    kit: [...cameraKit(shoot, layout), ...cookKit(shoot)],
    shots: shotKit(shoot, layout),
  }
}

/** What to bring has its reserve in it. */
function fuelLines({ shoot, fuel, units }: PrepInput): string[] {
  return shoot.cooks.flatMap(({ id }) => {
    const need = fuel?.get(id)
    if (!need) return []
    const mass = (kg: Kilograms) => formatMass(kg, units)
    const { low, likely, high } = need.needed
    const whose = shoot.cooks.length > 1 ? ` for ${id}` : ''
    return [
      `${capital(fuelName(need.kind))}${whose}: bring ${mass(need.take)}, a reserve of ${formatShare(need.reserveShare)} included. The cook likely burns ${mass(likely)}, from ${mass(low)} to ${mass(high)}.`,
    ]
  })
}
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

/** The roasts, then the recipe's ingredients as its author wrote them; a roast that stands among these is bought once. */
function shoppingOf({ shoot, units }: PrepInput): PrepList['shopping'] {
  const ingredients = (shoot.card?.ingredients ?? []).filter(({ what }) => what.trim() !== '')
  const roasts = shoot.cooks.flatMap((cook, i) => {
    const name = roastName(cook)
    const listed = i === 0 && ingredients.some(({ what }) => what.toLowerCase().includes(name.toLowerCase()))
    return listed
      ? []
      : [{ what: `${name}${cook.roast.frozen ? ', frozen' : ''}`, much: formatMass(cook.roast.mass, units) }]
  })
  // How much of it the plan does not know: it is written in by hand.
  const sides = (shoot.sides ?? [])
    .filter(({ title }) => !ingredients.some(({ what }) => isDish(title, what)))
    .map(({ title }) => ({ what: title, much: '____' }))
  return [...roasts, ...sides, ...ingredients]
}

/** "Potatoes under the roast" is bought with "800 g small potatoes"; better twice on the list than not at all. */
function isDish(title: string, ingredient: string): boolean {
  const [dish = ''] = title.toLowerCase().split(/ (?:under|beside|with|in|on|from|for) /)
  const words = ingredient.toLowerCase().split(/[^\p{L}]+/u)
  return dish.split(' ').every((word) => words.includes(word))
}

const NO_BREAK = '\u00a0'
/** What a thermometer may be off; common practice, no source. */
const MAY_BE_OFF_K = 1

/** Ice point and boiling point at the shoot's altitude. [antoine-water] [standard-atmosphere] */
function thermometerCheck({ shoot, units }: PrepInput): string[] {
  const { altitude } = surroundingsOf(shoot)
  const pressurePa = pressureAtPa(altitude)
  const boils = formatTemp(celsius(boilingC(pressurePa)), units, 1)
  const height = units === 'us' ? `${Math.round(altitude / 0.3048)} ft` : `${Math.round(altitude)} m`
  const off = units === 'us' ? `${Math.round(MAY_BE_OFF_K * 1.8)} °F` : `${MAY_BE_OFF_K} °C`
  return [
    `In crushed ice just covered with water, stirred: ${formatTemp(celsius(0), units)}.`,
    `In water at a full boil, here at ${height}${shoot.place.altitude === undefined ? ' (assumed)' : ''} and about ${Math.round(pressurePa / 100)} hPa: ${boils}.`,
    `One that is off by more than ${off} at either stays at home. Write down what each one reads, ice / boiling: ${['probe 1', 'probe 2', 'by hand'].map((each) => `${each} ____ / ____`.replaceAll(' ', NO_BREAK)).join('   ')}`,
  ]
}
