/** The law of the skin (surface.ts) for four lanes at once. `at` is the vector's place in a row, 0 or 16. */
import {
  DEFICIT_PA,
  H_WPM2K,
  KELVIN,
  LATENT_JPKG,
  NET_WPM2,
  PER_FILM,
  PER_WATER,
  PRESSURE_PA,
  RADIANCE,
  SATURATION_A,
  SATURATION_B,
  SATURATION_C,
  SATURATION_SLOPE,
  SLOPE_WPM2K,
  TANGENT_C,
  TANGENT_SLOPE_PK,
  TRANSFER,
  WET_FLOOR,
} from '../layout'
import { exp2, ln } from './vector'

/** Writes net heat and slope at a skin temperature; returns the water that leaves, kg/m²s. */
@inline
export function skinLaw(at: i32, skinC: v128, evaporated: v128, airC: v128, radiantC: v128): v128 {
  const one = f32x4.splat(1)
  const tangentC = v128.load32_splat(TANGENT_C)
  const dampC = f32x4.pmin(skinC, tangentC)
  const beyond = f32x4.pmax(f32x4.splat(0), f32x4.sub(skinC, tangentC))
  // saturation at the skin; beyond the tangent point it stays what it is there
  const per = f32x4.div(one, f32x4.add(dampC, v128.load32_splat(SATURATION_C)))
  const power = f32x4.sub(v128.load32_splat(SATURATION_A), f32x4.mul(v128.load32_splat(SATURATION_B), per))
  const saturated = exp2(power)
  const perDeficit = f32x4.div(one, f32x4.sub(v128.load32_splat(PRESSURE_PA), saturated))
  const rise = f32x4.mul(v128.load32_splat(SATURATION_SLOPE), f32x4.mul(per, per))
  const slope = f32x4.mul(f32x4.mul(saturated, perDeficit), rise)
  const stefan = f32x4.add(
    ln(f32x4.mul(v128.load(at + DEFICIT_PA), perDeficit)),
    f32x4.mul(v128.load32_splat(TANGENT_SLOPE_PK), beyond),
  )
  // the wet share
  const floor = v128.load(at + WET_FLOOR)
  const left = f32x4.pmax(f32x4.splat(0), f32x4.sub(one, f32x4.mul(evaporated, v128.load(at + PER_WATER))))
  const film = exp2(f32x4.neg(f32x4.mul(evaporated, v128.load(at + PER_FILM))))
  const share = f32x4.add(f32x4.mul(floor, left), f32x4.mul(f32x4.sub(one, floor), film))
  const wet = f32x4.mul(share, v128.load(at + TRANSFER))
  const water = f32x4.mul(wet, stefan)
  const kelvin = v128.load32_splat(KELVIN)
  const s = f32x4.add(skinC, kelvin)
  const s2 = f32x4.mul(s, s)
  const r = f32x4.add(radiantC, kelvin)
  const r2 = f32x4.mul(r, r)
  const h = v128.load(at + H_WPM2K)
  const radiance = v128.load(at + RADIANCE)
  const latent = v128.load32_splat(LATENT_JPKG)
  const dry = f32x4.add(
    f32x4.mul(h, f32x4.sub(airC, skinC)),
    f32x4.mul(radiance, f32x4.sub(f32x4.mul(r2, r2), f32x4.mul(s2, s2))),
  )
  v128.store(at + NET_WPM2, f32x4.sub(dry, f32x4.mul(latent, water)))
  const drySlope = f32x4.add(h, f32x4.mul(f32x4.mul(f32x4.splat(4), radiance), f32x4.mul(s2, s)))
  v128.store(at + SLOPE_WPM2K, f32x4.neg(f32x4.add(drySlope, f32x4.mul(latent, f32x4.mul(wet, slope)))))
  return water
}
