/**
 * The outline of a slice and of what lies within it. Our own drawing: the solid's own section, thicker at one end, turned
 * and flattened by family. Thickness and width are the roast's, the rest is the typical cut's.
 */
import { boneBody } from '../model/bone'
import type { Cut } from '../model/cut'
import { contour, RAYS, type Section, skinPoint } from '../model/section'
import { tenth } from './drawing'

export type CutFamily = 'leg' | 'section' | 'rib' | 'shoulder' | 'breast' | 'side'
interface Outline {
  /** How much thicker the left end is than the right. */
  readonly egg: number
  readonly turnDeg: number
  /** How much the lower side is flattened. */
  readonly flat: number
}
const OUTLINES: Readonly<Record<CutFamily, Outline>> = {
  leg: { egg: 0.2, turnDeg: 9, flat: 0.06 },
  section: { egg: 0.06, turnDeg: 0, flat: 0.08 },
  rib: { egg: 0.16, turnDeg: -4, flat: 0.1 },
  shoulder: { egg: 0.1, turnDeg: 4, flat: 0.12 },
  breast: { egg: 0.24, turnDeg: 8, flat: 0.16 },
  side: { egg: 0.3, turnDeg: 0, flat: 0.24 },
}

export function cutFamily({ animal, build, bone }: Pick<Cut, 'animal' | 'build' | 'bone'>): CutFamily {
  if (animal === 'salmon') return 'side'
  if (build === 'bird' || bone?.place === 'frame') return 'breast'
  if (bone?.place === 'ribs') return 'rib'
  if (build === 'joint') return 'leg'
  return build === 'block' || build === 'flat' ? 'shoulder' : 'section'
}

export type Point = readonly [x: number, y: number]
/** From the solid's section to the family's shape: x and y as shares of the half width and half thickness, y downwards. */
export type Placer = (across: number, down: number) => Point

export function placer(family: CutFamily, halfWidth: number, halfThickness: number): Placer {
  const { egg, flat, turnDeg } = OUTLINES[family]
  const turn = (turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return (across, down) => {
    const taller = 1 - (egg * across) / 2
    const lower = down > 0 ? 1 - flat : 1 + 0.3 * flat
    const [x, y] = [halfWidth * across, halfThickness * down * taller * lower]
    return [x * cos - y * sin, x * sin + y * cos]
  }
}

/** A line once round the slice at a share of the way out on each ray of the quarter, as points from the top rightwards. */
export function ring(section: Section, shares: readonly number[], place: Placer): Point[] {
  const at = (ray: number, right: 1 | -1, down: 1 | -1) => {
    const [y, x] = skinPoint(section, ray / (RAYS - 1))
    const share = shares[ray] as number
    return place((right * share * x) / section.halfWidthM, (down * share * y) / section.halfThicknessM)
  }
  const out = Array.from({ length: RAYS }, (_, ray) => ray)
  const back = [...out].reverse().slice(1)
  return [
    ...out.map((ray) => at(ray, 1, -1)),
    ...back.map((ray) => at(ray, 1, 1)),
    ...out.slice(1).map((ray) => at(ray, -1, 1)),
    ...back.slice(0, -1).map((ray) => at(ray, -1, -1)),
  ]
}
export const isotherm = (section: Section, levelC: number, place: Placer): Point[] =>
  ring(section, contour(section, 'peakC', levelC), place)

export const closedPath = (points: readonly Point[]) =>
  `${points.map(([x, y], i) => `${i ? 'L' : 'M'}${tenth(x)} ${tenth(y)}`).join('')}Z`

/** The fat over the upper side: as thick as it is in the middle there, running out toward the ends. */
export function fatCap(section: Section, thickness: number, place: Placer): Point[] {
  const shares = Array.from(
    { length: RAYS },
    (_, ray) => 1 - thickness * Math.max(0, 1 - (ray / (RAYS - 1) / 0.92) ** 2),
  )
  const top = (points: readonly Point[]) => [...points.slice(3 * (RAYS - 1)), ...points.slice(0, RAYS)]
  const skin = top(
    ring(
      section,
      shares.map(() => 1),
      place,
    ),
  )
  return [...skin, ...top(ring(section, shares, place)).reverse()]
}

/** An ellipse in shares of the slice's half sides, as points. */
function ellipse(place: Placer, [x, y]: Point, across: number, down: number): Point[] {
  return Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI
    return place(x + across * Math.cos(angle), y + down * Math.sin(angle))
  })
}
/**
 * The bone in the slice, each piece with its marrow, where bone.ts has it; ribs are drawn apart.
 * In the thickest slice it is thinner than at its ends, which hold most of its share. [estimate]
 */
export function boneShapes(
  cut: Pick<Cut, 'bone' | 'exponents'>,
  section: Section,
  place: Placer,
): readonly { bone: Point[]; marrow: Point[] }[] {
  const body = boneBody(cut, [section.halfThicknessM, section.halfWidthM, section.halfWidthM])
  if (!body) return []
  const one = (at: Point, across: number, down: number) => ({
    bone: ellipse(place, at, across, down),
    marrow: ellipse(place, at, across * 0.5, down * 0.46),
  })
  // x of a body is up, of a picture across
  if (body.kind === 'rod') return [one([body.y, -body.x], Math.min(0.17, body.ry), Math.min(0.2, body.rx))]
  const thick = Math.min(0.1, (body.to - body.from) / 2)
  if (cut.bone?.place === 'blade') return [one([0, -(body.from + body.to) / 2], Math.min(0.4, body.toY), thick)]
  if (cut.bone?.place === 'ribs') return [one([-0.4, 0.74], 0.2, 0.11), one([0.16, 0.8], 0.19, 0.1)]
  return [one([-0.02, 0.82], 0.34, 0.09)]
}
