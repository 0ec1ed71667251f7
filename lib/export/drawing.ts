import type { Instant } from '../units'
import type { Shade } from './tones'

/**
 * A picture as values: marks that carry roles, not colours, so that one drawing serves the page by day and dusk,
 * grey print and PDF. Lengths are CSS pixels of the picture's own box, y downwards.
 */
export const ROLES = ['paper', 'leaf', 'band', 'ink', 'ink-2', 'ink-3', 'edge', 'rule', 'ember', 'cool'] as const
/** What keeps its own colour by day and dusk: of the predicted slice what is not meat (that is in tones.ts), and the night sky. */
export const PARTS = ['seam', 'crust', 'bone', 'marrow', 'fat', 'night', 'star'] as const
export type PlainRole = (typeof ROLES)[number] | (typeof PARTS)[number]
export type Role = PlainRole | Shade
export type Face = 'condensed' | 'sans' | 'serif'
export type Weight = 400 | 500 | 600 | 700 | 800
export type Anchor = 'start' | 'middle' | 'end'

type Stroke = {
  readonly stroke: Role
  readonly width: number
  readonly dash?: readonly number[]
  readonly round?: boolean
}
type Outline = { readonly fill?: Role } & Partial<Stroke>
export type LineMark = Stroke & { readonly kind: 'line' } & Record<'x1' | 'y1' | 'x2' | 'y2', number>
export type PathMark = Outline & { readonly kind: 'path'; readonly d: string }
export type RectMark = Outline & { readonly kind: 'rect' } & Record<'x' | 'y' | 'w' | 'h', number>
export type CircleMark = Outline & { readonly kind: 'circle' } & Record<'cx' | 'cy' | 'r', number>
export interface TextMark {
  readonly kind: 'text'
  /** Of the anchor, on the baseline. */
  readonly x: number
  readonly y: number
  readonly text: string
  readonly size: number
  readonly weight: Weight
  readonly face: Face
  readonly role: Role
  readonly anchor: Anchor
  /** A paper edge, so that lines do not run through the letters. */
  readonly halo: boolean
}
export type Mark = LineMark | PathMark | RectMark | CircleMark | TextMark

/** The same figures for whoever cannot or need not see the picture. */
export interface DrawingTable {
  readonly caption: string
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}
/** Where time lies in a picture, so that the page can say what stands at a point of it. */
export interface DrawingAxis {
  readonly from: Instant
  readonly to: Instant
  /** px along the axis. */
  readonly start: number
  readonly end: number
  readonly standing: boolean
}
/** Where a shot stands in the picture, px. */
export interface ShotBox {
  readonly id: string
  readonly x1: number
  readonly x2: number
  readonly top: number
  readonly height: number
}
export interface Drawing {
  readonly width: number
  readonly height: number
  /** One sentence that says what the picture says. */
  readonly title: string
  readonly marks: readonly Mark[]
  readonly tables: readonly DrawingTable[]
  readonly axis?: DrawingAxis
  /** From where to where across the axis a line at an instant runs, px. */
  readonly plot?: { readonly top: number; readonly bottom: number }
  /** Each shot that has a box of its own. */
  readonly boxes?: readonly ShotBox[]
}

export const line = (x1: number, y1: number, x2: number, y2: number, stroke: Stroke): LineMark => ({
  kind: 'line',
  x1: tenth(x1),
  y1: tenth(y1),
  x2: tenth(x2),
  y2: tenth(y2),
  ...stroke,
})
export const path = (d: string, outline: Outline): PathMark => ({ kind: 'path', d, ...outline })
export const rect = (x: number, y: number, w: number, h: number, outline: Outline): RectMark => ({
  kind: 'rect',
  x: tenth(x),
  y: tenth(y),
  w: tenth(w),
  h: tenth(h),
  ...outline,
})
export const circle = (cx: number, cy: number, r: number, outline: Outline): CircleMark => ({
  kind: 'circle',
  cx: tenth(cx),
  cy: tenth(cy),
  r,
  ...outline,
})

export type Lettering = Omit<TextMark, 'kind' | 'x' | 'y' | 'text' | 'anchor' | 'halo'>
export const text = (
  x: number,
  y: number,
  words: string,
  lettering: Lettering,
  place: { readonly anchor?: Anchor; readonly halo?: boolean } = {},
): TextMark => ({
  kind: 'text',
  x: tenth(x),
  y: tenth(y),
  text: words,
  ...lettering,
  anchor: place.anchor ?? 'start',
  halo: place.halo ?? true,
})

/** A tenth of a pixel is finer than any printer; more digits only make the page heavy. */
export const tenth = (n: number) => Math.round(n * 10) / 10

/** Slanting lines inside a box, as one path: it prints everywhere, where pattern fills do not. */
export function hatch(x: number, y: number, w: number, h: number, gap: number): string {
  const step = gap * Math.SQRT2
  const parts: string[] = []
  // Each line is x + y = c, cut by the box; counting from zero keeps neighbouring boxes in step.
  for (let c = Math.ceil((x + y) / step) * step; c < x + w + y + h; c += step) {
    const top = Math.max(y, c - x - w)
    const bottom = Math.min(y + h, c - x)
    if (bottom > top) parts.push(`M${tenth(c - top)} ${tenth(top)}L${tenth(c - bottom)} ${tenth(bottom)}`)
  }
  return parts.join('')
}
