import { type DocumentProps, renderToBuffer } from '@react-pdf/renderer'
import type { ReactElement } from 'react'
import type { CardModel } from '../export/card'
import { CardSheet } from './card'
import { cardHeight } from './card-height'
import { registerFonts } from './fonts'
import type { Paper } from './sheet'

export type PrintedDocument = ReactElement<DocumentProps>

/** Printed bytes depend on what is printed and not on when; the sheet itself carries its day. */
export const NO_DATE = new Date(0)

/** How many sheets a printed document has. */
export const sheetsIn = (bytes: Uint8Array): number =>
  (
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page\b(?!s)/g) ?? []
  ).length

export async function printDocument(document: PrintedDocument): Promise<Uint8Array> {
  registerFonts()
  return new Uint8Array(await renderToBuffer(document))
}

/** Sizes tried, greatest first; the last sets sentences in 8 pt, the least that is read at arm's length. */
const SCALES = [1.1, 1.05, 1, 0.965, 0.93, 0.9, 0.87, 0.84, 0.81, 0.78, 0.75, 0.72, 0.7]

/**
 * Printed at the greatest size at which it stands on one sheet; null where none does. `begin` says which size to try
 * first, so that most take one or two tries; the printer, not the guess, decides.
 */
export async function printOnOneSheet(make: (scale: number) => PrintedDocument, begin = 0): Promise<Uint8Array | null> {
  const fits = async (i: number) => {
    const bytes = await printDocument(make(SCALES[i] as number))
    return sheetsIn(bytes) === 1 ? bytes : null
  }
  let best = await fits(begin)
  if (best) {
    for (let i = begin - 1; i >= 0; i--) {
      const greater = await fits(i)
      if (!greater) return best
      best = greater
    }
    return best
  }
  for (let i = begin + 1; i < SCALES.length; i++) {
    best = await fits(i)
    if (best) return best
  }
  return null
}

/** The first size at which the contents should stand on the sheet; past the least, the least. */
function likelySize(model: CardModel, paper: Paper): { size: number; stands: boolean } {
  const stands = (scale: number) => {
    const { takes, room } = cardHeight(model, paper, scale)
    return takes <= room
  }
  const size = SCALES.findIndex(stands)
  return size < 0 ? { size: SCALES.length - 1, stands: false } : { size, stands: true }
}

/** The card without its last `n` steps, saying so; cautions are never left off. */
function shortened(model: CardModel, n: number): CardModel {
  if (n === 0) return model
  const kept = model.steps.slice(0, model.steps.length - n)
  const rest = `${n} more ${n === 1 ? 'step does' : 'steps do'} not fit on one sheet: read ${n === 1 ? 'it' : 'them'} on the page of this card.`
  return { ...model, steps: [...kept, { no: kept.length + 1, runs: [{ text: rest, strong: true }], own: false }] }
}

/** The recipe card as PDF, one sheet: smaller type first; past the least, the last steps go and a sentence says so. */
export async function printCard(model: CardModel, paper: Paper): Promise<Uint8Array> {
  let n = 0
  while (n < model.steps.length && !likelySize(shortened(model, n), paper).stands) n++
  // The guess may be a step too careful.
  for (n = Math.max(0, n - 1); n < model.steps.length; n++) {
    const short = shortened(model, n)
    const make = (scale: number) => <CardSheet model={short} paper={paper} scale={scale} date={NO_DATE} />
    const bytes = await printOnOneSheet(make, likelySize(short, paper).size)
    if (bytes) return bytes
  }
  const bare = { ...shortened(model, model.steps.length), ingredients: model.ingredients.slice(0, 1), intro: '' }
  return printDocument(<CardSheet model={bare} paper={paper} scale={SCALES.at(-1) ?? 1} date={NO_DATE} />)
}
