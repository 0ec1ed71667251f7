/**
 * What the skin takes from its surroundings: convection and radiation in, evaporation out. Where more water has evaporated
 * than the juices brought, a dry layer, the crust, lies over the wet front; it holds back vapour and heat in proportion:
 *
 *   h (Ta - To) + eσ (Tr⁴ - To⁴) = (To - Ts) / (a D)           To: outside of the crust, Ts: wet front, D: kg/m² dried out
 *   evaporation = (1 - D/M) ln((P - pv) / (P - ps(Ts))) / (1/β + b D),   β = h · 0.622 · 1.10 / cp_air
 *
 * The logarithm (Stefan flow) runs off at the boiling point; one degree below it the law goes on along its tangent.
 */
import { boilingC, saturationPa, saturationSlopePerK } from './vapour'

export const STEFAN_BOLTZMANN = 5.670374e-8
export const KELVIN = 273.15
/** Mass over heat transfer: ratio of molar masses times the Lewis factor, over the heat capacity of air, kgK/J. */
export const TRANSFER = (0.622 * 1.1) / 1010
/** [own-trial] latent heat with the warming of the vapour left out, J/kg. */
export const LATENT_JPKG = 2.3e6
/** Newton's steps to the outside of the crust, after a chord: within 0.01 K under any crust and fire we know. */
const CRUST_STEPS = 2

/** A member's skin: how it radiates, and what each kg/m² dried out holds back of heat and of vapour. */
export interface Skin {
  readonly emissivity: number
  readonly crustHeat_M4KpWKg: number
  readonly crustVapour_M4SpKg2: number
  /** All that the meat can dry out, kg/m². */
  readonly dryableKgpM2: number
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
/** The surface law at one temperature of the wet front; `slope` is d(net)/dT. */
export interface SkinHeat {
  net_WpM2: number
  slope_WpM2K: number
  water_KgpM2S: number
  /** Outside of the crust. */
  outerC: number
  /** d(net) for warmer air and for warmer walls, with the front as it is. */
  perAir_WpM2K: number
  perRadiant_WpM2K: number
}
export const skinHeat = (): SkinHeat => ({
  net_WpM2: 0,
  slope_WpM2K: 0,
  water_KgpM2S: 0,
  outerC: 0,
  perAir_WpM2K: 0,
  perRadiant_WpM2K: 0,
})

export type SkinLaw = (out: SkinHeat, frontC: number, dryKgpM2: number, around: Around) => void

/** Water that leaves for each unit of the logarithm, kg/m²s, behind what has dried out. */
export const vapourConductance = (skin: Skin, dryKgpM2: number, h_WpM2K: number) =>
  Math.max(0, 1 - dryKgpM2 / skin.dryableKgpM2) / (1 / (h_WpM2K * TRANSFER) + skin.crustVapour_M4SpKg2 * dryKgpM2)

/** Where the law leaves the logarithm for its tangent. */
export function tangentOf(pressurePa: number) {
  const tangentC = boilingC(pressurePa) - 1
  const tangentDeficitPa = pressurePa - saturationPa(tangentC)
  const tangentSlope = (saturationPa(tangentC) * saturationSlopePerK(tangentC)) / tangentDeficitPa
  return { tangentC, tangentDeficitPa, tangentSlope }
}

/** The law of one skin under one air pressure. Below the vapour's dew point water condenses and the term heats. */
export function skinLaw(skin: Skin, pressurePa: number): SkinLaw {
  const { tangentC, tangentDeficitPa, tangentSlope } = tangentOf(pressurePa)
  const radiance = skin.emissivity * STEFAN_BOLTZMANN
  return (out, frontC, dryKgpM2, around) => {
    const saturated = frontC < tangentC ? saturationPa(frontC) : 0
    const deficit = frontC < tangentC ? pressurePa - saturated : tangentDeficitPa
    const slope = frontC < tangentC ? (saturated * saturationSlopePerK(frontC)) / deficit : tangentSlope
    const beyond = frontC < tangentC ? 0 : tangentSlope * (frontC - tangentC)
    const wet = around.sealed ? 0 : vapourConductance(skin, dryKgpM2, around.h_WpM2K)
    const water = wet * (Math.log((pressurePa - around.vapourPa) / deficit) + beyond)
    takeUp(out, frontC, skin.crustHeat_M4KpWKg * dryKgpM2, around, radiance)
    out.water_KgpM2S = water
    out.net_WpM2 -= LATENT_JPKG * water
    out.slope_WpM2K -= LATENT_JPKG * wet * slope
  }
}

/** Dry heat through the crust into the front, with its slope, and the temperature of the crust's outside. */
function takeUp(out: SkinHeat, frontC: number, crust_M2KpW: number, around: Around, radiance: number) {
  const { airC, h_WpM2K } = around
  const r = around.radiantC + KELVIN
  const r2 = r * r
  const s = frontC + KELVIN
  const chord = radiance * (r2 + s * s) * (r + s)
  const toward = h_WpM2K * airC + chord * around.radiantC
  let outerC = (frontC + crust_M2KpW * toward) / (1 + crust_M2KpW * (h_WpM2K + chord))
  for (let n = 0; n < CRUST_STEPS; n++) {
    const o = outerC + KELVIN
    const o2 = o * o
    const into = h_WpM2K * (airC - outerC) + radiance * (r2 * r2 - o2 * o2)
    outerC += (frontC - outerC + crust_M2KpW * into) / (1 + crust_M2KpW * (h_WpM2K + 4 * radiance * o2 * o))
  }
  const o = outerC + KELVIN
  const o2 = o * o
  const perK = h_WpM2K + 4 * radiance * o2 * o
  out.outerC = outerC
  out.net_WpM2 = h_WpM2K * (airC - outerC) + radiance * (r2 * r2 - o2 * o2)
  const passes = 1 / (1 + crust_M2KpW * perK)
  out.slope_WpM2K = -perK * passes
  out.perAir_WpM2K = h_WpM2K * passes
  out.perRadiant_WpM2K = 4 * radiance * r2 * r * passes
}
