/** What stands around the meat in each stage: the cooker, another heat, an insulated box, a board under a tent. */
import type { Stage } from './cook'
import type { Elsewhere } from './cooker-path'
import type { CourseStage } from './course'
import type { Setting } from './simulate'
import { type Member, PRIORS } from './spread'
import { saturationPa } from './vapour'

/** A lane of a kernel needs these four for as long as the stage lasts; the temperatures are in the cooker's knots. */
export interface Stand {
  readonly h_WpM2K: number
  readonly vapourPa: number
  readonly sealed: boolean
  /** Where the meat is when it is not in the cooker. */
  readonly elsewhere: Elsewhere | undefined
}

/** Still air about a resting roast, W/m²K, and what a m/s of wind adds at a sheltered table. [estimate] */
const REST_H_WPM2K = 6
const REST_H_PER_MPS = 1
/** A board keeps the film from a quarter of the skin, the under side. [estimate] */
const BOARD_SHARE = 0.75
/** Radiation from a skin at 60 °C toward something at 40 °C, W/m²K: 4 ε σ T³ with ε 0.87. */
const RADIANT_WPM2K = 6.7
/** Under a tent of foil: film inside, tent over skin in area, and air as damp as this. [estimate] */
const TENT = { h_WpM2K: 3, areaRatio: 1.5, humidity: 0.7 }
/**
 * An insulated box of 40 l, 30 mm of foam, lid shut, meat wrapped: 0.8 m² · 0.035 W/mK / 0.03 m, W/K, and the film inside.
 * [estimate]
 */
const BOX = { loss_WpK: 0.93, h_WpM2K: 4 }
/** Heat capacity of cooked meat, J/kgK. [estimate] */
const CP_JPKGK = 3300
/** A constant temperature decays to itself. */
const steady = (tempC: number): Elsewhere => ({ nowC: tempC, goalC: tempC, timeConstantS: 3600 })

/** The roast as an enclosure sees it. */
export interface Warm {
  readonly meanC: number
  readonly massKg: number
  readonly areaM2: number
}
type Sear = Extract<Stage, { do: 'sear' }>
type Hold = Extract<Stage, { do: 'hold' }>
type Rest = Extract<Stage, { do: 'rest' }>

const isMoved = (stage: CourseStage): stage is Sear => stage.do === 'sear' && stage.over === 'direct'

export function standOf(stage: CourseStage, setting: Setting, member: Member, warm: () => Warm): Stand {
  if (stage.do === 'rest') return restStand(stage, setting, member, warm())
  if (stage.do === 'hold' && stage.in === 'box') return boxStand(setting, member, warm())
  if ((stage.do === 'hold' && stage.in === 'oven') || isMoved(stage)) return otherHeat(stage, member)
  return {
    h_WpM2K: member.h_WpM2K,
    vapourPa: member.vapourPa,
    sealed: setting.habits.sealed,
    elsewhere: undefined,
  }
}

/** A still oven, a pan, bare coals: the heat of the plan all around, with the film and the air of a still oven. */
const otherHeat = (stage: Sear | Hold, member: Member): Stand => ({
  h_WpM2K: PRIORS.h.centre * member.hFactor,
  vapourPa: member.vapourPa,
  sealed: false,
  elsewhere: steady(stage.at ?? 0),
})

function restStand(stage: Rest, { rest }: Setting, member: Member, warm: Warm): Stand {
  const airC = rest.airC + member.restAirK
  const outside_WpM2K = REST_H_WPM2K + REST_H_PER_MPS * rest.windMpS
  const under = stage.on === 'board' ? BOARD_SHARE : 1
  if (stage.cover !== 'tent')
    return {
      h_WpM2K: outside_WpM2K * under * member.hFactor,
      vapourPa: rest.humidity * saturationPa(rest.airC),
      sealed: false,
      elsewhere: steady(airC),
    }
  const elsewhere = enclosure(TENT.h_WpM2K, TENT.areaRatio * outside_WpM2K, airC, warm)
  return {
    h_WpM2K: TENT.h_WpM2K * under * member.hFactor,
    vapourPa: TENT.humidity * saturationPa(elsewhere.nowC),
    sealed: false,
    elsewhere,
  }
}

const boxStand = ({ rest }: Setting, member: Member, warm: Warm): Stand => ({
  h_WpM2K: BOX.h_WpM2K * member.hFactor,
  vapourPa: 0,
  sealed: true,
  elsewhere: enclosure(BOX.h_WpM2K, BOX.loss_WpK / warm.areaM2, rest.airC + member.restAirK, warm),
})

/**
 * The air between the meat and a wall that lets heat through: at once between the two by their conductances, then falling
 * with what the meat loses through both, in the time constant of the whole roast.
 */
function enclosure(film_WpM2K: number, wall_WpM2K: number, airC: number, warm: Warm): Elsewhere {
  const inside = film_WpM2K + RADIANT_WPM2K
  const share = inside / (inside + wall_WpM2K)
  return {
    nowC: airC + share * (warm.meanC - airC),
    goalC: airC,
    timeConstantS: (warm.massKg * CP_JPKGK) / (share * wall_WpM2K * warm.areaM2),
  }
}
