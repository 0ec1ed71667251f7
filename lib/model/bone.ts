/** Where in a roast is its bone? For the picture of the slice, and for the runs that measure what its place does. */
import type { Cut } from './cut'
import { BONE, MEAT_RHO_KGPM3 } from './materials'

/**
 * The bone as a body in the roast's own measures: x up through the thickness, y across the width, z along the length, each
 * -1 to 1 of the half side. [estimate] from carcass anatomy, of the thickest slice as the roast lies.
 */
export type BoneBody =
  /** A long bone along the roast: an ellipse of half axes `rx`, `ry` about (x, y), to `toZ` both ways. */
  | {
      readonly kind: 'rod'
      readonly x: number
      readonly y: number
      readonly rx: number
      readonly ry: number
      readonly toZ: number
    }
  /** A plate parallel to the wide sides, from x `from` to `to`; at the under side it reaches to the surface. */
  | { readonly kind: 'plate'; readonly from: number; readonly to: number; readonly toY: number; readonly toZ: number }

/** The thigh bone lies a little below the middle and to one side; it runs most of the roast's length. */
const SHAFT = { x: -0.12, y: 0.12, toZ: 0.8 }
/** The shoulder blade lies above the middle and does not reach the edges. */
const BLADE = { middle: 0.15, toY: 0.6, toZ: 0.7 }

/** The bone's body, so thick that it holds its share of the volume; none without a bone. */
export function boneBody(
  cut: Pick<Cut, 'bone' | 'exponents'>,
  half: readonly [number, number, number],
): BoneBody | undefined {
  if (!cut.bone) return undefined
  const { place, share } = cut.bone
  const volumeShare = share / BONE.rho_KgpM3 / (share / BONE.rho_KgpM3 + (1 - share) / MEAT_RHO_KGPM3)
  const [a, b] = half
  const bodyOf = (size: number): BoneBody => {
    if (place === 'shaft') return { kind: 'rod', ...SHAFT, rx: size / a, ry: size / b }
    if (place === 'blade')
      return { kind: 'plate', from: BLADE.middle - size, to: BLADE.middle + size, toY: BLADE.toY, toZ: BLADE.toZ }
    return { kind: 'plate', from: -1, to: -1 + size, toY: 1, toZ: 1 }
  }
  // A body of size 0 holds nothing, one of the half thickness more than any share that is allowed.
  let [low, high] = [0, place === 'shaft' ? a : 1]
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2
    if (shareOf(bodyOf(middle), cut.exponents) < volumeShare) low = middle
    else high = middle
  }
  return bodyOf((low + high) / 2)
}

/** Whether a point, in half sides, lies in the bone. */
export function isBone(body: BoneBody, x: number, y: number, z: number): boolean {
  if (Math.abs(z) > body.toZ) return false
  if (body.kind === 'rod') return ((x - body.x) / body.rx) ** 2 + ((y - body.y) / body.ry) ** 2 <= 1
  return x >= body.from && x <= body.to && Math.abs(y) <= body.toY
}

/** Points along each half side by which a share of the volume is counted. */
const POINTS = 10
/** The plates are thin in x: finer there. */
const FINE = 6
function shareOf(body: BoneBody, exponents: Cut['exponents']): number {
  let [solid, bone] = [0, 0]
  for (let i = -FINE * POINTS; i < FINE * POINTS; i++)
    for (let j = -POINTS; j < POINTS; j++)
      for (let k = 0; k < POINTS; k++) {
        const [x, y, z] = [(i + 0.5) / (FINE * POINTS), (j + 0.5) / POINTS, (k + 0.5) / POINTS]
        const [p, q, r] = exponents
        if (Math.abs(x) ** p + Math.abs(y) ** q + z ** r > 1) continue
        solid++
        if (isBone(body, x, y, z)) bone++
      }
  return bone / solid
}
