/**
 * Another surface law for the twins' truth: a skin that dries by its own water budget, the model's own before its crust law.
 *
 *   w = f max(0, 1 - m/M) + (1 - f) exp(-m/m0)        m: water evaporated so far, kg/m²
 *   evaporation = w h (0.622 · 1.10 / cp_air) ln((P - pv) / (P - ps(T)))
 */
import { KELVIN, LATENT_JPKG, STEFAN_BOLTZMANN, TRANSFER, tangentOf } from '../../lib/model/surface'
import { saturationPa, saturationSlopePerK } from '../../lib/model/vapour'

export interface DryingSkin {
  readonly emissivity: number
  readonly wetFloor: number
  readonly filmKgpM2: number
  readonly waterKgpM2: number
}
export interface Air {
  readonly airC: number
  readonly h_WpM2K: number
  readonly vapourPa: number
}
const NEWTON_STEPS = 6

/** Temperature of a skin with `inward` W/m²K to the meat beneath it at `insideC`, and the water that leaves, kg/m²s. */
export function dryingSkin(skin: DryingSkin, pressurePa: number) {
  const { tangentC, tangentDeficitPa, tangentSlope } = tangentOf(pressurePa)
  const radiance = skin.emissivity * STEFAN_BOLTZMANN
  return (
    fromC: number,
    insideC: number,
    inward_WpM2K: number,
    evaporated: number,
    { airC, h_WpM2K, vapourPa }: Air,
  ) => {
    const share =
      skin.wetFloor * Math.max(0, 1 - evaporated / skin.waterKgpM2) +
      (1 - skin.wetFloor) * Math.exp(-evaporated / skin.filmKgpM2)
    const wet = share * h_WpM2K * TRANSFER
    const a = airC + KELVIN
    let skinC = fromC
    let water = 0
    for (let i = 0; i < NEWTON_STEPS; i++) {
      const below = skinC < tangentC
      const saturated = below ? saturationPa(skinC) : 0
      const deficit = below ? pressurePa - saturated : tangentDeficitPa
      const slope = below ? (saturated * saturationSlopePerK(skinC)) / deficit : tangentSlope
      water = wet * (Math.log((pressurePa - vapourPa) / deficit) + (below ? 0 : tangentSlope * (skinC - tangentC)))
      const s = skinC + KELVIN
      const net =
        h_WpM2K * (airC - skinC) + radiance * (a ** 4 - s ** 4) - LATENT_JPKG * water - inward_WpM2K * (skinC - insideC)
      const perK = -h_WpM2K - 4 * radiance * s ** 3 - LATENT_JPKG * wet * slope - inward_WpM2K
      skinC -= Math.max(-20, Math.min(20, net / perK))
    }
    return { skinC, water }
  }
}
