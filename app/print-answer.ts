import type { CallSheetModel } from '@/lib/export/call-sheet'
import type { CardModel } from '@/lib/export/card'
import type { PrepList } from '@/lib/export/prep-list'
import type { RiskSheet } from '@/lib/export/risk-sheet'
import { printCallSheet } from '@/lib/print/call-sheet'
import { rasteriser } from '@/lib/print/overlay-png'
import { printPrepList } from '@/lib/print/prep-list'
import { printCard } from '@/lib/print/render'
import { printRiskSheet } from '@/lib/print/risk-sheet'
import type { CardPaper, Paper } from '@/lib/print/sheet'

/** What is printed or drawn. */
export type Asked = { readonly turn: number } & (
  | { readonly card: CardModel; readonly paper: CardPaper }
  | { readonly callSheet: CallSheetModel; readonly paper: Paper }
  | { readonly riskSheet: RiskSheet; readonly paper: Paper }
  | { readonly prepList: PrepList; readonly paper: Paper }
  /** Frames of an overlay, as SVG. */
  | { readonly frames: readonly string[] }
)
export type Told = { readonly turn: number } & (
  | { readonly pdf: Uint8Array }
  | { readonly pictures: readonly Uint8Array[] }
)

export async function answerTo(asked: Asked): Promise<Told> {
  const { turn } = asked
  if (!('frames' in asked)) return { turn, pdf: await printed(asked) }
  const draw = await rasteriser()
  return { turn, pictures: asked.frames.map(draw) }
}

function printed(asked: Exclude<Asked, { readonly frames: unknown }>): Promise<Uint8Array> {
  if ('card' in asked) return printCard(asked.card, asked.paper)
  if ('callSheet' in asked) return printCallSheet(asked.callSheet, asked.paper)
  if ('riskSheet' in asked) return printRiskSheet(asked.riskSheet, asked.paper)
  return printPrepList(asked.prepList, asked.paper)
}
