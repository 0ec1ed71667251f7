/** Cut and mass, or measured sizes, to the solid that is heated and its 1-D stand-in. */
import type { Kilograms } from '../units'
import { type Calibration, calibrate, type Solid } from './calibrate-3d'
import type { Cut } from './cut'
import { BONE, MEAT_RHO_KGPM3 } from './materials'
import { type Measured, sidesOf } from './sides'

export { type Measured, typicalThicknessM } from './sides'
/** The 1-D radial model that warms like the solid: layers of area ~ r^exponent, r from 0 at the core to radiusM at the skin. */
export interface Radial {
  readonly radiusM: number
  readonly exponent: number
}
/**
 * The solid, and the 1-D model for it. `radiusM` is some 5 to 40 % more than half the thickness (heat comes from six sides):
 * a depth d of the 1-D model stands for d · (thicknessM / 2) / radiusM in the cut.
 * `radialAt(f)` is the model of the same mass at f times the thickness (the width with it, the length giving way):
 * an ensemble that varies the thickness must use it, for at fixed mass a compact roast hardly follows its thickness.
 */
export interface Geometry {
  readonly thicknessM: number
  readonly widthM: number
  readonly lengthM: number
  readonly volumeM3: number
  readonly areaM2: number
  readonly radiusM: number
  readonly shapeExponent: number
  readonly radialAt: (thicknessFactor: number) => Radial
  /** Whether the thickness was measured. */
  readonly measured: boolean
  /** Log standard deviation of the thickness, less the more was measured. */
  readonly thicknessSpread: number
}

const LANCZOS = [
  676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
]
/** Γ(1 + x) for 0 <= x <= 3, Lanczos with g = 7. */
function gammaOnePlus(x: number) {
  const t = x + 7.5
  const sum = LANCZOS.reduce((s, c, i) => s + c / (x + i + 1), 0.9999999999998099)
  return Math.sqrt(2 * Math.PI) * t ** (x + 0.5) * Math.exp(-t) * sum
}
/** Volume of |x|^p0 + |y|^p1 + |z|^p2 <= 1 over that of its box (Dirichlet's integral). */
export function boxShare([p, q, r]: Cut['exponents']) {
  return (gammaOnePlus(1 / p) * gammaOnePlus(1 / q) * gammaOnePlus(1 / r)) / gammaOnePlus(1 / p + 1 / q + 1 / r)
}

/** Volume of the part that warms as one solid, meat and bone at their own densities. */
export const solidVolumeM3 = (cut: Cut, massKg: number) =>
  cut.massShare * massKg * ((1 - cut.boneShare) / MEAT_RHO_KGPM3 + cut.boneShare / BONE.rho_KgpM3)

/** The same mass at another thickness, the width in proportion. */
const thicker = ([a, b, c]: Solid['half'], f: number): Solid['half'] => [a * f, b * f, c / (f * f)]

/**
 * Geometry of a roast: its sides by sides.ts, its 1-D stand-in by five runs in 3-D.
 * Valid: superellipsoids; a hollow or folded roast is taken for a solid one.
 */
export function geometryOf(cut: Cut, mass: Kilograms, measured: Measured = {}): Geometry {
  if (!(mass > 0)) throw new RangeError(`mass must be above 0 kg, got ${mass}`)
  const volumeM3 = solidVolumeM3(cut, mass)
  const { half, spread } = sidesOf(cut, volumeM3, boxShare(cut.exponents), mass, measured)
  const runs = FACTORS.map((f) => calibrate({ half: thicker(half, f), exponents: cut.exponents }))
  const typical = runs[2] as Calibration
  const lnRadius = runs.map((r) => Math.log(r.radiusM))
  const exponents = runs.map((r) => r.exponent)
  return {
    thicknessM: 2 * half[0],
    widthM: 2 * half[1],
    lengthM: 2 * half[2],
    volumeM3,
    areaM2: typical.areaM2,
    radiusM: typical.radiusM,
    shapeExponent: typical.exponent,
    radialAt: (f) => {
      const steps = Math.log(f) / Math.log(STEP)
      return { radiusM: Math.exp(between(lnRadius, steps)), exponent: Math.max(0, between(exponents, steps)) }
    },
    measured: measured.thickness !== undefined,
    thicknessSpread: spread,
  }
}

/** Thickness factors that are run in 3-D; between them the radial model is read off in ln f. */
const STEP = 1.2
const FACTORS = [STEP ** -2, 1 / STEP, 1, STEP, STEP ** 2]
/**
 * A parabola through the middle three of five values at -2 to 2, straight lines outside them, held beyond the ends: a
 * parabola followed to the ends would make a slab of a roast whose thickness is a third off.
 */
function between(values: readonly number[], x: number) {
  const [least, low, mid, high, most] = values as [number, number, number, number, number]
  if (x < -1) return low + (Math.max(-2, x) + 1) * (low - least)
  if (x > 1) return high + (Math.min(2, x) - 1) * (most - high)
  return mid + (x * (high - low)) / 2 + (x * x * (high + low - 2 * mid)) / 2
}
