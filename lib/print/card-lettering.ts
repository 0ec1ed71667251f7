import type { Face, Weight } from '../export/drawing'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'
import { lineCount } from './line-count'
import { PRINT } from './sheet'

/** Type and space of a side times this; 1 is the look's own size. */
export type Scale = { readonly scale: number }

/** A lettering of the card: what it is set in, and how far its lines lie apart. */
export interface Lettering {
  readonly face: Face
  readonly weight: Weight
  readonly size: number
  readonly lineHeight: number
}
const lettering = (face: Face, size: number, lineHeight: number, weight: Weight = 400): Lettering => ({
  face,
  weight,
  size,
  lineHeight,
})
export const TITLE = lettering('serif', 35, 1.04, 600)
export const INTRO = lettering('sans', 10.5, 1.35)
export const HEADING = lettering('serif', 14, 1.2, 600)
export const NUMBER = lettering('serif', 14.5, 1.12, 600)
export const STEP = lettering('serif', 11.4, 1.38)
export const CELL = lettering('sans', 9.6, 1.2)
export const FIGURE = lettering('condensed', 9.6, 1.2, 700)
/** In the weight of a table's figures: each cut of a face that a sheet uses is cut down and packed anew. */
export const SECOND = lettering('condensed', 9.4, 1.2, 500)
export const NOTE = lettering('sans', 9.8, 1.35)
export const CAUTION = lettering('sans', 9.4, 1.3)
export const FOOT = lettering('sans', 8.4, 1.25)

const FAMILIES: Readonly<Record<Face, string[]>> = { serif: SERIF, sans: SANS, condensed: CONDENSED }
/** As the printer wants it. */
export const set = ({ face, weight, size, lineHeight }: Lettering, scale = 1) => ({
  fontFamily: FAMILIES[face],
  fontSize: size * scale,
  fontWeight: weight,
  lineHeight,
  fontFeatureSettings: FIGURES,
})

/** How tall words stand in a column, points. */
export const tall = (words: string, roomPt: number, of: Lettering, scale: number): number =>
  lineCount(words, roomPt, { ...of, size: of.size * scale }) * of.size * scale * of.lineHeight

export const under = (width: number, color: string = PRINT.ink) => ({
  borderBottomWidth: width,
  borderBottomColor: color,
})
