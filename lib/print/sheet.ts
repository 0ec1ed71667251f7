/** Paper and ember on paper: grey print, no ember. Lengths in points. */
export type Paper = 'A4' | 'Letter'
/** The card has a small form besides, A6 lying: it stands by the cooker. */
export type CardPaper = Paper | 'small'
export const SIZES: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  A4: { width: 595.28, height: 841.89 },
  Letter: { width: 612, height: 792 },
}
export const PRINT = {
  ink: '#1D1814',
  second: '#333333',
  rule: '#BDBDBD',
  white: '#FFFFFF',
} as const
export const MARGIN = 40
