import type { CardModel } from '../export/card'
import type { QrDrawing } from '../export/qr'
import { type CardSides, innerHeight, innerWidth } from './card'
import { backHeight } from './card-back'
import { frontHeight } from './card-front'
import type { Paper } from './sheet'

/** Sizes tried, greatest first; the least sets sentences in 10 pt and tables in 8.6 pt. Smaller is read by nobody at a fire. */
const SCALES = [1.1, 1.05, 1, 0.97, 0.94, 0.9] as const
const LEAST = 0.9
/** Between front and what stands under it. */
const BETWEEN = 12

/** The least is asked first: most cards do not stand on one side, and asking every size takes its time. */
const greatest = (takes: (scale: number) => number, room: number): number | null =>
  takes(LEAST) > room ? null : (SCALES.find((scale) => takes(scale) <= room) ?? LEAST)

/** Ways to lay the card out, the best first: one side, then two, each at the greatest size that should fit; at last the least, which flows on. */
export function waysToLay(model: CardModel, code: QrDrawing | null, paper: Paper): CardSides[] {
  const [width, room] = [innerWidth(paper), innerHeight(paper)]
  const front = (scale: number) => frontHeight({ model, width, scale, code })
  const back = (scale: number) => backHeight({ model, width, scale })
  const together = greatest((scale) => front(scale) + back(scale) + BETWEEN, room)
  if (together !== null) return [...smaller(together).map((scale) => ({ front: scale, back: null })), ...twoSides()]
  return twoSides()

  function twoSides(): CardSides[] {
    const overleaf = greatest(back, room) ?? LEAST
    return smaller(greatest(front, room) ?? LEAST).map((scale) => ({ front: scale, back: Math.min(overleaf, 1) }))
  }
}
/** This size and those under it, in case the guess was too hopeful. */
const smaller = (from: number) => SCALES.filter((scale) => scale <= from)
