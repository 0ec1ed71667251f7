import { Document, Page, View } from '@react-pdf/renderer'
import type { CardModel } from '../export/card'
import type { QrDrawing } from '../export/qr'
import { Back } from './card-back'
import { Front } from './card-front'
import { aboutCard, Foot } from './card-parts'
import { MARGIN, type Paper, PRINT, SIZES } from './sheet'

/** What foot and margins take at the bottom. */
export const FOOT_ROOM = 60
export const innerWidth = (paper: Paper) => SIZES[paper].width - 2 * MARGIN
export const innerHeight = (paper: Paper) => SIZES[paper].height - MARGIN - FOOT_ROOM

/** How the card lies on paper: all on one side, or the recipe on the front and the rest overleaf, each at its own size. */
export interface CardSides {
  readonly front: number
  /** Null: it stands under the front. */
  readonly back: number | null
}
const PAGE = { padding: MARGIN, paddingBottom: FOOT_ROOM, color: PRINT.ink } as const

/** A recipe too long for its side flows on to another; nothing of it is left out. */
export function CardSheet({
  model,
  paper,
  sides,
  code,
  date,
}: {
  model: CardModel
  paper: Paper
  sides: CardSides
  code: QrDrawing | null
  date: Date
}) {
  const size = paper === 'A4' ? 'A4' : 'LETTER'
  const width = innerWidth(paper)
  const overleaf = sides.back !== null
  return (
    <Document {...aboutCard(model, date)}>
      <Page size={size} style={PAGE}>
        <Front model={model} width={width} scale={sides.front} code={code} />
        {!overleaf && (
          <View style={{ marginTop: 10 }}>
            <Back model={model} width={width} scale={sides.front} first={false} />
          </View>
        )}
        <Foot words={model.foot} stamp={model.stamp} />
      </Page>
      {sides.back !== null && (
        <Page size={size} style={PAGE}>
          <Back model={model} width={width} scale={sides.back} first />
          <Foot words={model.title} stamp={model.stamp} />
        </Page>
      )}
    </Document>
  )
}
