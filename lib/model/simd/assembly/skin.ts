/** The law of the skin (surface.ts) for four lanes at once. `at` is the vector's place in a row, 0 or 16. */
import {
  CRUST_HEAT,
  CRUST_VAPOUR,
  DEFICIT_PA,
  FILM_HOLDS,
  H_WPM2K,
  KELVIN,
  LATENT_JPKG,
  NET_WPM2,
  ONE,
  OPEN,
  OUTER_C,
  PER_AIR,
  PER_DRYABLE,
  PER_RADIANT,
  PRESSURE_PA,
  RADIANCE,
  SATURATION_A,
  SATURATION_B,
  SATURATION_C,
  SATURATION_SLOPE,
  SLOPE_WPM2K,
  TANGENT_C,
  TANGENT_SLOPE_PK,
} from '../layout'
import { exp2, ln } from './vector'

/** Writes net heat, its slope and the crust's outside at a temperature of the wet front; returns the water that leaves, kg/m²s. */
@inline
export function skinLaw(at: i32, frontC: v128, dry: v128, airC: v128, radiantC: v128): v128 {
  const one = v128.load32_splat(ONE)
  const zero = f32x4.splat(0)
  const tangentC = v128.load32_splat(TANGENT_C)
  const beyond = f32x4.pmax(zero, f32x4.sub(frontC, tangentC))
  // saturation at the front; beyond the tangent point it stays what it is there
  const per = f32x4.div(one, f32x4.add(f32x4.pmin(frontC, tangentC), v128.load32_splat(SATURATION_C)))
  const power = f32x4.sub(v128.load32_splat(SATURATION_A), f32x4.mul(v128.load32_splat(SATURATION_B), per))
  const saturated = exp2(power)
  const perDeficit = f32x4.div(one, f32x4.sub(v128.load32_splat(PRESSURE_PA), saturated))
  const rise = f32x4.mul(v128.load32_splat(SATURATION_SLOPE), f32x4.mul(per, per))
  const slope = f32x4.mul(f32x4.mul(saturated, perDeficit), rise)
  const stefan = f32x4.add(
    ln(f32x4.mul(v128.load(at + DEFICIT_PA), perDeficit)),
    f32x4.mul(v128.load32_splat(TANGENT_SLOPE_PK), beyond),
  )
  const left = f32x4.pmax(zero, f32x4.sub(one, f32x4.mul(dry, v128.load(at + PER_DRYABLE))))
  const holds = f32x4.add(v128.load(at + FILM_HOLDS), f32x4.mul(v128.load(at + CRUST_VAPOUR), dry))
  const wet = f32x4.div(f32x4.mul(v128.load(at + OPEN), left), holds)
  const water = f32x4.mul(wet, stefan)
  takeUp(at, frontC, f32x4.mul(v128.load(at + CRUST_HEAT), dry), airC, radiantC)
  const latent = v128.load32_splat(LATENT_JPKG)
  v128.store(at + NET_WPM2, f32x4.sub(v128.load(at + NET_WPM2), f32x4.mul(latent, water)))
  const wetSlope = f32x4.mul(latent, f32x4.mul(wet, slope))
  v128.store(at + SLOPE_WPM2K, f32x4.sub(v128.load(at + SLOPE_WPM2K), wetSlope))
  return water
}

/** Dry heat through the crust into the front, with its slope: a chord, then two of Newton's steps to the crust's outside. */
@inline
function takeUp(at: i32, frontC: v128, crust: v128, airC: v128, radiantC: v128): void {
  const one = v128.load32_splat(ONE)
  const kelvin = v128.load32_splat(KELVIN)
  const h = v128.load(at + H_WPM2K)
  const radiance = v128.load(at + RADIANCE)
  const r = f32x4.add(radiantC, kelvin)
  const r2 = f32x4.mul(r, r)
  const s = f32x4.add(frontC, kelvin)
  const chord = f32x4.mul(f32x4.mul(radiance, f32x4.add(r2, f32x4.mul(s, s))), f32x4.add(r, s))
  const toward = f32x4.add(f32x4.mul(h, airC), f32x4.mul(chord, radiantC))
  const first = f32x4.add(one, f32x4.mul(crust, f32x4.add(h, chord)))
  const from = f32x4.mul(radiance, f32x4.mul(r2, r2))
  let outerC = f32x4.div(f32x4.add(frontC, f32x4.mul(crust, toward)), first)
  outerC = nearer(outerC, frontC, crust, airC, from, h, radiance, kelvin, one)
  outerC = nearer(outerC, frontC, crust, airC, from, h, radiance, kelvin, one)
  const perK = lossPerK(outerC, h, radiance, kelvin)
  v128.store(at + OUTER_C, outerC)
  v128.store(at + NET_WPM2, into(outerC, airC, from, h, radiance, kelvin))
  const passes = f32x4.div(one, f32x4.add(one, f32x4.mul(crust, perK)))
  v128.store(at + SLOPE_WPM2K, f32x4.neg(f32x4.mul(perK, passes)))
  v128.store(at + PER_AIR, f32x4.mul(h, passes))
  const perRadiant = f32x4.mul(f32x4.mul(f32x4.splat(4), radiance), f32x4.mul(r2, r))
  v128.store(at + PER_RADIANT, f32x4.mul(perRadiant, passes))
}

@inline
function nearer(
  outerC: v128,
  frontC: v128,
  crust: v128,
  airC: v128,
  from: v128,
  h: v128,
  radiance: v128,
  kelvin: v128,
  one: v128,
): v128 {
  const excess = f32x4.add(
    f32x4.sub(frontC, outerC),
    f32x4.mul(crust, into(outerC, airC, from, h, radiance, kelvin)),
  )
  const slope = f32x4.add(one, f32x4.mul(crust, lossPerK(outerC, h, radiance, kelvin)))
  return f32x4.add(outerC, f32x4.div(excess, slope))
}

/** Heat into a surface, W/m². */
@inline
function into(outerC: v128, airC: v128, from: v128, h: v128, radiance: v128, kelvin: v128): v128 {
  const o = f32x4.add(outerC, kelvin)
  const o2 = f32x4.mul(o, o)
  return f32x4.add(f32x4.mul(h, f32x4.sub(airC, outerC)), f32x4.sub(from, f32x4.mul(radiance, f32x4.mul(o2, o2))))
}

/** How much less of it for each K that the surface is warmer. */
@inline
function lossPerK(outerC: v128, h: v128, radiance: v128, kelvin: v128): v128 {
  const o = f32x4.add(outerC, kelvin)
  const o3 = f32x4.mul(f32x4.mul(o, o), o)
  return f32x4.add(h, f32x4.mul(f32x4.mul(f32x4.splat(4), radiance), o3))
}
