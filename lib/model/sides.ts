/** How thick, wide and long is it, from its mass and what was measured of it, and how sure is the thickness? */
import type { Metres } from '../units'
import type { Solid } from './calibrate-3d'
import type { Cut } from './cut'

export interface Measured {
  readonly thickness?: Metres
  readonly width?: Metres
  readonly length?: Metres
}
export interface Sides {
  /** Half sides, m, that hold the volume. */
  readonly half: Solid['half']
  /** Log standard deviation of the thickness. */
  readonly spread: number
}

/** [estimate] a tape over soft meat: ± 5 % of a side. */
export const RULER_SPREAD = 0.05
/** [estimate] how far a roast fills its box otherwise than its cut's solid does: ± 10 %. */
const FILL_SPREAD = 0.1

/** Thickness as a cut of this mass usually lies. */
export const typicalThicknessM = (cut: Cut, massKg: number) => cut.thicknessM * (massKg / cut.atMassKg) ** cut.growth

const square = (x: number) => x * x
/**
 * Mass is weighed far better than sides are measured, so the sides always hold it. One or two measured sides stand as they
 * are and the others give way, the length first. Width and length together tell the thickness, weighed against the typical
 * one by their errors. Three are one too many: each gives way by its share of the error, the rest is the form's own, which
 * the length takes (a roast tapers along it).
 */
export function sidesOf(cut: Cut, volumeM3: number, boxShare: number, massKg: number, measured: Measured): Sides {
  const { thickness, width, length } = measured
  /** Product of the half sides. */
  const box = volumeM3 / boxShare / 8
  const [b, c] = [width && width / 2, length && length / 2]
  const typical = typicalThicknessM(cut, massKg) / 2
  const withLength = (a: number, b: number, spread: number): Sides => ({ half: [a, b, box / (a * b)], spread })
  if (thickness === undefined) {
    if (b !== undefined && c !== undefined) {
      const told = 2 * square(RULER_SPREAD) + square(FILL_SPREAD)
      const { value, spread } = between(
        Math.log(typical),
        cut.thicknessSpread,
        Math.log(box / (b * c)),
        Math.sqrt(told),
      )
      return withLength(Math.exp(value), b, spread)
    }
    if (c !== undefined) return { half: [typical, box / (typical * c), c], spread: cut.thicknessSpread }
    return withLength(typical, b ?? typical * cut.widthPerThickness, cut.thicknessSpread)
  }
  const a = thickness / 2
  if (b !== undefined && c !== undefined) {
    const told = Math.sqrt(2 * square(RULER_SPREAD) + square(FILL_SPREAD))
    const { value, spread } = between(Math.log(a), RULER_SPREAD, Math.log(box / (b * c)), told)
    // what the thickness gives way by, the width does too: the same ruler
    return withLength(Math.exp(value), (b * Math.exp(value)) / a, spread)
  }
  if (c !== undefined) return { half: [a, box / (a * c), c], spread: RULER_SPREAD }
  return withLength(a, b ?? a * cut.widthPerThickness, RULER_SPREAD)
}

/** Two tellings of one number, each with its standard deviation, into one. */
function between(x: number, sdX: number, y: number, sdY: number) {
  const weight = square(sdY) / (square(sdX) + square(sdY))
  return { value: weight * x + (1 - weight) * y, spread: sdX * Math.sqrt(weight) }
}
