import { encode } from 'uqr'

/** A QR code as a drawing: a square of `size` modules with its quiet zone, and the path of the dark ones. */
export interface QrDrawing {
  readonly size: number
  /** The modules of the code alone, without the quiet zone. */
  readonly modules: number
  readonly path: string
}

/** Light modules all round [ISO/IEC 18004, 6.3.8]. */
const QUIET = 4

/** Dark modules that lie side by side are one stroke: fewer seams to show on paper. */
function strokesOf(row: readonly boolean[], y: number): string {
  const strokes: string[] = []
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue
    const from = x
    while (row[x + 1]) x++
    strokes.push(`M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`)
  }
  return strokes.join('')
}

export function qrOf(text: string): QrDrawing {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET })
  return { size, modules: size - 2 * QUIET, path: data.map(strokesOf).join('') }
}
