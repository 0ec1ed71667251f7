/** How a slice looks by what its meat has been through: five states, each in three shades, lightness rising outward. */
import type { Animal } from '../model/cut'
import { RARE_DENATURED, WELL_DENATURED } from '../model/myoglobin'
import type { Field } from '../model/section'

export const PALETTES = ['red', 'pale', 'fish'] as const
export type Palette = (typeof PALETTES)[number]
export const SHADES = 15
export const STATES = 5
/** A role of a drawing: the palette and how far outward, 0 to 14. */
export type Shade = `${Palette}-${number}`

/** Middle to skin. Red meat loses its red, white meat and fish their glassiness. */
const ANCHORS: Readonly<Record<Palette, readonly string[]>> = {
  red: ['#84282A', '#AD4C47', '#CC8474', '#DDB59C', '#EDDFC9'],
  pale: ['#B0665F', '#CB8D80', '#DDB3A0', '#EAD3BD', '#F5E9D6'],
  fish: ['#B4482C', '#CD6E4B', '#DF9672', '#EBBD9F', '#F6DEC8'],
}
const channels = (hex: string) => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16))
/** Straight between the palette's five colours. */
export function shadeColour(shade: Shade): string {
  const [palette, step] = shade.split('-') as [Palette, string]
  const at = (Number(step) / (SHADES - 1)) * (STATES - 1)
  const low = Math.min(STATES - 2, Math.floor(at))
  const anchors = ANCHORS[palette]
  const [a, b] = [channels(anchors[low] as string), channels(anchors[low + 1] as string)]
  const mixed = a.map((value, i) => Math.round(value + (at - low) * ((b[i] as number) - value)))
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`.toUpperCase()
}
export const isShade = (role: string): role is Shade => /^(red|pale|fish)-\d+$/.test(role)

/** What decides the look, where the five states meet, and between which values the shades run. */
export interface LookScale {
  readonly palette: Palette
  readonly field: Field
  readonly bounds: readonly [number, number, number, number]
  readonly ends: readonly [number, number]
  readonly words: readonly [string, string, string, string, string]
  /** Highest temperatures that are drawn as lines where the slice has them, and the one told as the band, °C. */
  readonly linesC: readonly number[]
  readonly bandC: 60 | 65 | 70
}
/**
 * Red meat: the share of myoglobin denatured. Rare and well done are where [geileskey-1998] has them; the two bounds between
 * are ours, even in shade [estimate].
 */
const RED: LookScale = {
  palette: 'red',
  field: 'greyed',
  bounds: [RARE_DENATURED, 0.35, 0.65, WELL_DENATURED],
  ends: [0, 1],
  words: ['red, raw-looking', 'rosy', 'pink, fading', 'tan', 'grey-brown'],
  linesC: [50, 55, 60, 65, 70],
  bandC: 65,
}
/** Pork and veal hold less of the same pigment: one scale, paler. */
const PALE_RED: LookScale = {
  ...RED,
  palette: 'pale',
  words: ['pink, raw-looking', 'rosy', 'pale pink', 'cream', 'pale grey'],
}
/** Poultry has little myoglobin: the highest temperature alone. Common practice, no source. */
const PALE: LookScale = {
  palette: 'pale',
  field: 'peakC',
  bounds: [57, 63, 68, 75],
  ends: [45, 88],
  words: ['raw-looking', 'glassy', 'just set', 'set, juicy', 'firm'],
  linesC: [60, 65, 70, 75, 80],
  bandC: 70,
}
const FISH: LookScale = {
  palette: 'fish',
  field: 'peakC',
  bounds: [43, 49, 54, 60],
  ends: [35, 72],
  words: ['raw-looking', 'translucent', 'just flaking', 'flaking', 'firm, dry'],
  linesC: [40, 45, 50, 55, 60],
  bandC: 60,
}
const SCALES: Partial<Record<Animal, LookScale>> = {
  salmon: FISH,
  turkey: PALE,
  chicken: PALE,
  pork: PALE_RED,
  veal: PALE_RED,
}
export const lookScale = (animal: Animal): LookScale => SCALES[animal] ?? RED

/** The values at which one shade gives way to the next. */
export function shadeLevels({ bounds, ends }: LookScale): number[] {
  const stops = [ends[0], ...bounds, ends[1]]
  const perState = SHADES / STATES
  return Array.from({ length: SHADES - 1 }, (_, i) => {
    const at = (i + 1) / perState
    const low = Math.floor(at)
    return (stops[low] as number) + (at - low) * ((stops[Math.min(STATES, low + 1)] as number) - (stops[low] as number))
  })
}
