import type { CardModel } from '../export/card'
import type { Face, Weight } from '../export/drawing'
import { textWidth } from '../export/text-width'
import { MARGIN, type Paper, SIZES } from './sheet'

/** Left column's share of the sheet, the gap between the columns, what foot and margins take. */
export const LEFT = 0.325
export const GAP = 24
export const FOOT = 60
const STEP_NUMBER = 22
const CAUTION_MARK = 18

interface Type {
  readonly face: Face
  readonly weight: Weight
  readonly size: number
}
const SERIF: Type = { face: 'serif', weight: 400, size: 11.4 }
const SANS: Type = { face: 'sans', weight: 400, size: 9.8 }
const CAUTION: Type = { face: 'sans', weight: 400, size: 9.4 }
const TITLE: Type = { face: 'serif', weight: 600, size: 35 }
/** Lines break at words, so a line holds a little less than its width. */
const FILLED = 0.95

function lines(words: string, room: number, type: Type, scale: number): number {
  return Math.max(1, Math.ceil(textWidth(words, { ...type, size: type.size * scale }) / (room * FILLED)))
}
const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0)

function cautionsHeight(sentences: readonly string[], room: number, scale: number): number {
  return sum(sentences.map((s) => (lines(s, room - CAUTION_MARK, CAUTION, scale) * 12.2 + 5) * scale))
}
function leftHeight(model: CardModel, room: number, scale: number): number {
  const rows = model.ingredients.map((r) => {
    const what = lines(r.what, room * 0.7, SANS, scale)
    return (Math.max(what, r.other === '' ? 1 : 2) * 11.8 + 7) * scale
  })
  const notes = model.notes.map((n) => (lines(n, room, SANS, scale) * 13.2 + 6) * scale)
  return 22 * scale + sum(rows) + sum(notes) + cautionsHeight(model.housekeeping, room, scale)
}
function rightHeight(model: CardModel, room: number, scale: number): number {
  const steps = model.steps.map((s) => {
    const words = s.runs.map((r) => r.text).join('')
    return (lines(words, room - STEP_NUMBER * scale, SERIF, scale) * 15.8 + 7) * scale
  })
  const table = (31 + 17 * (model.doneness.length + 1)) * scale
  return sum(steps) + table + cautionsHeight(model.cautions, room, scale)
}

/**
 * About how tall the card's contents are at a scale, points, and how tall they may be. It says where to begin trying:
 * the printer has the last word. Off by up to 5 % either way.
 */
export function cardHeight(model: CardModel, paper: Paper, scale: number): { takes: number; room: number } {
  const { width, height } = SIZES[paper]
  const inner = width - 2 * MARGIN
  const words = inner - 24 - 185 * scale
  const title = lines(model.title, words, TITLE, scale) * 36.5 * scale
  const head = Math.max(150 * scale, title + lines(model.intro, words, SANS, scale) * 14 * scale + 12)
  const columns = Math.max(leftHeight(model, inner * LEFT, scale), rightHeight(model, inner * (1 - LEFT) - GAP, scale))
  return { takes: head + 85 * scale + columns, room: height - MARGIN - FOOT }
}
