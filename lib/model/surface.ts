/**
 * What the skin takes from its surroundings: convection and radiation in, evaporation out, the last limited by the water
 * that is there. The wet share of the skin falls from 1 (a film that dries in minutes) to a floor fed by the juices, and
 * the floor itself is used up ("law D" of our trial of four laws on the open roasting timetables):
 *
 *   w = f max(0, 1 - m/M) + (1 - f) exp(-m/m0)        m: water evaporated so far, kg/m²
 *   evaporation = w h (0.622 · 1.10 / cp_air) ln((P - pv) / (P - ps(T)))
 *
 * The logarithm (Stefan flow) runs off at the boiling point; one degree below it the law goes on along its tangent.
 */
import { boilingC, saturationPa, saturationSlopePerK } from './vapour'

const STEFAN_BOLTZMANN = 5.670374e-8
const KELVIN = 273.15
/** Mass over heat transfer: ratio of molar masses times the Lewis factor, over the heat capacity of air, kgK/J. */
const TRANSFER = (0.622 * 1.1) / 1010
/** [own-trial] latent heat with the warming of the vapour left out, J/kg. */
export const LATENT_JPKG = 2.3e6

/** A member's skin: how it wets and radiates. */
export interface Skin {
  readonly emissivity: number
  readonly wetFloor: number
  readonly filmKgpM2: number
  readonly waterKgpM2: number
}
/** What stands around the meat at an instant. */
export interface Around {
  airC: number
  /** Mean radiant temperature that the skin sees. */
  radiantC: number
  h_WpM2K: number
  vapourPa: number
  /** Nothing evaporates: wrapped, or in a bag. */
  sealed: boolean
}
/** The surface law at one skin temperature; `slope` is d(net)/dT. */
export interface SkinHeat {
  net_WpM2: number
  slope_WpM2K: number
  water_KgpM2S: number
}

export type SkinLaw = (out: SkinHeat, skinC: number, evaporatedKgpM2: number, around: Around) => void

/** The wet share of the skin after `m` kg/m² have evaporated. */
export const wetShare = (skin: Skin, m: number) =>
  skin.wetFloor * Math.max(0, 1 - m / skin.waterKgpM2) + (1 - skin.wetFloor) * Math.exp(-m / skin.filmKgpM2)

/** The law of one skin under one air pressure. Below the vapour's dew point water condenses and the term heats. */
export function skinLaw(skin: Skin, pressurePa: number): SkinLaw {
  const tangentC = boilingC(pressurePa) - 1
  const tangentDeficitPa = pressurePa - saturationPa(tangentC)
  const tangentSlope = (saturationPa(tangentC) * saturationSlopePerK(tangentC)) / tangentDeficitPa
  const radiance = skin.emissivity * STEFAN_BOLTZMANN
  return (out, skinC, evaporatedKgpM2, around) => {
    const saturated = skinC < tangentC ? saturationPa(skinC) : 0
    const deficit = skinC < tangentC ? pressurePa - saturated : tangentDeficitPa
    const slope = skinC < tangentC ? (saturated * saturationSlopePerK(skinC)) / deficit : tangentSlope
    const beyond = skinC < tangentC ? 0 : tangentSlope * (skinC - tangentC)
    const wet = around.sealed ? 0 : wetShare(skin, evaporatedKgpM2) * around.h_WpM2K * TRANSFER
    const water = wet * (Math.log((pressurePa - around.vapourPa) / deficit) + beyond)
    const s = skinC + KELVIN
    const s2 = s * s
    const r = around.radiantC + KELVIN
    const r2 = r * r
    out.water_KgpM2S = water
    out.net_WpM2 = around.h_WpM2K * (around.airC - skinC) + radiance * (r2 * r2 - s2 * s2) - LATENT_JPKG * water
    out.slope_WpM2K = -around.h_WpM2K - 4 * radiance * s2 * s - LATENT_JPKG * wet * slope
  }
}
