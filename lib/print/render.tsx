import { type DocumentProps, renderToBuffer } from '@react-pdf/renderer'
import type { ReactElement } from 'react'
import type { CardModel } from '../export/card'
import { qrOf } from '../export/qr'
import { CardSheet } from './card'
import { waysToLay } from './card-fit'
import { registerFonts } from './fonts'
import type { CardPaper } from './sheet'
import { SmallCard } from './small-card'

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

/**
 * The recipe card as PDF: on one side where it stands there in good type, else with a second side. A recipe too long for
 * that flows on: nothing is left out and nothing gets tiny.
 */
export async function printCard(model: CardModel, paper: CardPaper): Promise<Uint8Array> {
  const code = model.published.at === null ? null : qrOf(model.published.at)
  if (paper === 'small') return printDocument(<SmallCard model={model} code={code} date={NO_DATE} />)
  let printed: Uint8Array = new Uint8Array()
  for (const sides of waysToLay(model, code, paper)) {
    printed = await printDocument(<CardSheet model={model} paper={paper} sides={sides} code={code} date={NO_DATE} />)
    if (sheetsIn(printed) === (sides.back === null ? 1 : 2)) break
  }
  return printed
}
