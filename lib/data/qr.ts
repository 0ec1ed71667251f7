import { encode } from 'uqr'

/** A QR code as a drawing: a square of `size` modules with its quiet zone, and the path of the dark ones. */
export interface QrDrawing {
  readonly size: number
  readonly path: string
}

const QUIET = 4

export function qrOf(text: string): QrDrawing {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET })
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')
  return { size, path }
}
