import type { Layout } from '../day/layout'
import type { Spread } from '../model/forecast'
import { boilingC, pressureAtPa } from '../model/vapour'
import { formatDate } from '../plan/clock'
import { surroundingsOf } from '../plan/cook-plan'
import type { Cook, Shoot } from '../plan/shoot'
import { celsius, formatMass, formatTemp, type Kilograms, kilograms, type UnitSystem } from '../units'
import { hearthOf } from './hearth'
import { type AheadLine, aheadOf, roastName } from './prep-ahead'
import { cameraKit, cookKit, type ShotKit, shotKit } from './prep-kit'

export interface PrepInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly units: UnitSystem
  readonly revision: number
  /** Fuel by cook over its members; without it the list says nothing of amounts. */
  readonly fuel?: ReadonlyMap<string, Spread<Kilograms>>
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

/** On top of what nearly every cook burns: a wet sack, wind, a fire lit twice; common practice, no source. */
const RESERVE = 0.25
/** Nobody weighs charcoal finer than this, kg. */
const STEP_KG = 0.1

function fuelLines({ shoot, fuel, units }: PrepInput): string[] {
  return shoot.cooks.flatMap((cook) => {
    const burnt = fuel?.get(cook.id)
    if (!burnt) return []
    const up = (kg: number) => formatMass(kilograms(Math.ceil(kg / STEP_KG - 1e-9) * STEP_KG), units)
    const name = fuelName(cook)
    return [
      `${name} for ${shoot.cooks.length > 1 ? cook.id : 'the cook'}: ${up(burnt.likely)} likely, ${up(burnt.high)} in the hungriest of twenty cooks. Bring ${up(burnt.high * (1 + RESERVE))}, reserve included.`,
    ]
  })
}
const fuelName = (cook: Cook) => {
  const { heat } = hearthOf(cook.cooker.kind)
  return heat === 'charcoal'
    ? 'Charcoal'
    : heat === 'wood'
      ? cook.cooker.kind === 'pellet'
        ? 'Pellets'
        : 'Wood'
      : 'Gas'
}

/** The roasts, then the recipe's ingredients as its author wrote them. */
function shoppingOf({ shoot, units }: PrepInput): PrepList['shopping'] {
  const roasts = shoot.cooks.map((cook) => ({
    what: `${roastName(cook)}${cook.roast.frozen ? ', frozen' : ''}`,
    much: formatMass(cook.roast.mass, units),
  }))
  return [...roasts, ...(shoot.card?.ingredients ?? []).filter(({ what }) => what.trim() !== '')]
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
