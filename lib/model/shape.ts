/** Cut and mass, or measured sizes, to the solid that is heated and its 1-D stand-in. */
import type { Kilograms, Metres } from '../units'
import { type Calibration, calibrate, type Solid } from './calibrate-3d'
import type { Cut } from './cuts'
import { BONE, MEAT_RHO_KGPM3 } from './materials'

export interface Measured {
  readonly thickness?: Metres
  readonly width?: Metres
  readonly length?: Metres
}
/**
 * The solid and the 1-D radial model that warms like it: layers of area ~ r^shapeExponent, r from 0 to half the thickness.
 * `shapeExponentAt(f)` is the exponent of the same mass at f times the thickness (the width with it, the length giving way):
 * an ensemble that varies the thickness must use it, for at fixed mass a compact roast hardly follows its thickness.
 */
export interface Geometry {
  readonly halfThicknessM: number
  readonly thicknessM: number
  readonly widthM: number
  readonly lengthM: number
  readonly volumeM3: number
  readonly areaM2: number
  readonly shapeExponent: number
  readonly shapeExponentAt: (thicknessFactor: number) => number
  /** Whether the thickness was measured; then its spread is small. */
  readonly measured: boolean
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

/** Thickness as a cut of this mass usually lies. */
export const typicalThicknessM = (cut: Cut, massKg: number) => cut.thicknessM * (massKg / cut.atMassKg) ** cut.growth

/** Half sides: the mass is kept, so of the sides not measured the length gives way first, then the width, then the thickness. */
function halfSides(cut: Cut, volumeM3: number, massKg: number, sides: Measured): Solid['half'] {
  const box = volumeM3 / boxShare(cut.exponents) / 8
  if (sides.thickness === undefined && sides.width !== undefined && sides.length !== undefined)
    return [box / ((sides.width / 2) * (sides.length / 2)), sides.width / 2, sides.length / 2]
  const a = (sides.thickness ?? typicalThicknessM(cut, massKg)) / 2
  if (sides.width !== undefined) return [a, sides.width / 2, box / (a * (sides.width / 2))]
  if (sides.length !== undefined) return [a, box / (a * (sides.length / 2)), sides.length / 2]
  const b = a * cut.widthPerThickness
  return [a, b, box / (a * b)]
}

/** The same mass at another thickness, the width in proportion. */
const thicker = ([a, b, c]: Solid['half'], f: number): Solid['half'] => [a * f, b * f, c / (f * f)]

/**
 * Geometry of a roast. Measured sizes are taken as they are while they leave a side free; the mass is kept and the length follows.
 * Where all three are measured the length still follows from the mass, which scales know better than rulers.
 * Valid: superellipsoids; a hollow or folded roast is taken for a solid one.
 */
export function geometryOf(cut: Cut, mass: Kilograms, measured: Measured = {}): Geometry {
  if (!(mass > 0)) throw new RangeError(`mass must be above 0 kg, got ${mass}`)
  const volumeM3 = solidVolumeM3(cut, mass)
  const half = halfSides(cut, volumeM3, mass, measured)
  const calibrations: Calibration[] = FACTORS.map((f) =>
    calibrate({ half: thicker(half, f), exponents: cut.exponents }),
  )
  const [thin, typical, thick] = calibrations as [Calibration, Calibration, Calibration]
  return {
    halfThicknessM: half[0],
    thicknessM: 2 * half[0],
    widthM: 2 * half[1],
    lengthM: 2 * half[2],
    volumeM3,
    areaM2: typical.areaM2,
    shapeExponent: typical.exponent,
    shapeExponentAt: (f) => parabola(thin.exponent, typical.exponent, thick.exponent, Math.log(f) / Math.log(STEP)),
    measured: measured.thickness !== undefined,
  }
}

/** Thickness factors that are run in 3-D; between them the exponent is read off a parabola in ln f. */
const STEP = 1.2
const FACTORS = [1 / STEP, 1, STEP]
/** Through (-1, low), (0, mid), (1, high). The ends are held beyond ± 1.5 steps. */
function parabola(low: number, mid: number, high: number, x: number) {
  const u = Math.max(-1.5, Math.min(1.5, x))
  return mid + (u * (high - low)) / 2 + (u * u * (high + low - 2 * mid)) / 2
}
