/**
 * The outline of a slice and of what lies at one depth under it. Our own drawing: superellipses, some thicker at one end,
 * turned and flattened by family; the measured thickness and width are kept, the rest is the typical cut's.
 */
export type CutFamily = 'leg' | 'section' | 'rib' | 'shoulder' | 'breast' | 'side'
interface Outline {
  /** Of the superellipse; 2 is an ellipse, higher is squarer. */
  readonly exponent: number
  /** How much thicker the left end is than the right. */
  readonly egg: number
  readonly turnDeg: number
  /** How much the lower side is flattened. */
  readonly flat: number
}
const OUTLINES: Readonly<Record<CutFamily, Outline>> = {
  leg: { exponent: 2.1, egg: 0.2, turnDeg: 9, flat: 0.06 },
  section: { exponent: 2.4, egg: 0.06, turnDeg: 0, flat: 0.08 },
  rib: { exponent: 2.5, egg: 0.16, turnDeg: -4, flat: 0.1 },
  shoulder: { exponent: 2.6, egg: 0.1, turnDeg: 4, flat: 0.12 },
  breast: { exponent: 2, egg: 0.3, turnDeg: 12, flat: 0.2 },
  side: { exponent: 2.2, egg: 0.35, turnDeg: 0, flat: 0.3 },
}

export function cutFamily(cut: string): CutFamily {
  if (/whole|breast/.test(cut)) return 'breast'
  if (/leg|haunch/.test(cut)) return 'leg'
  if (/rib|rack/.test(cut) || (/loin/.test(cut) && cut.endsWith('bone-in'))) return 'rib'
  if (/shoulder|chuck|brisket/.test(cut)) return 'shoulder'
  return /side/.test(cut) ? 'side' : 'section'
}

export type Point = readonly [x: number, y: number]
const POINTS = 90

/**
 * Points of the line that lies `depth` under the surface, about the middle of the slice, y downwards.
 * Near the surface it keeps its distance everywhere; toward the middle it takes the proportions of the whole, as
 * isotherms do.
 */
export function lineAtDepth(family: CutFamily, halfWidth: number, halfThickness: number, depth: number): Point[] {
  const inward = Math.min(1, depth / halfThickness)
  const across = (1 - inward) * (halfWidth - depth + inward * halfWidth)
  const down = halfThickness - depth
  return Array.from({ length: POINTS }, (_, i) => {
    const angle = (i / POINTS) * 2 * Math.PI
    return place(OUTLINES[family], angle, Math.max(0, across), Math.max(0, down), inward)
  })
}

function place(outline: Outline, angle: number, across: number, down: number, inward: number): Point {
  const exponent = outline.exponent + (2 - outline.exponent) * inward
  const power = (n: number) => Math.sign(n) * Math.abs(n) ** (2 / exponent)
  const u = power(Math.cos(angle))
  const v = power(Math.sin(angle))
  const egg = 1 - outline.egg * (1 - inward) * u
  const flat = v > 0 ? 1 - outline.flat * (1 - inward) : 1 + outline.flat * 0.3 * (1 - inward)
  const [x, y] = [across * u, down * v * flat * (0.5 + egg / 2)]
  const turn = (outline.turnDeg * Math.PI) / 180
  return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]
}

export const closedPath = (points: readonly Point[]) =>
  `${points.map(([x, y], i) => `${i ? 'L' : 'M'}${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`).join('')}Z`

/** An ellipse as points, for bones. */
export const ellipse = (cx: number, cy: number, rx: number, ry: number, turnDeg: number): Point[] =>
  Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI
    const turn = (turnDeg * Math.PI) / 180
    const [x, y] = [rx * Math.cos(angle), ry * Math.sin(angle)]
    return [cx + x * Math.cos(turn) - y * Math.sin(turn), cy + x * Math.sin(turn) + y * Math.cos(turn)]
  })
