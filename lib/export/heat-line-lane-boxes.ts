import { inPlot } from './heat-line-axis'
import type { Frame } from './heat-line-frame'

export const CAMERA_LANE = 37
export const BOX = { height: 17, least: 16, gap: 6 }

export interface Bar {
  readonly x1: number
  readonly x2: number
  readonly live: boolean
}
export interface Box extends Bar {
  readonly id: string
  readonly number: string
  /** Only free shots have one beneath: the pole names the others. */
  readonly name: string | null
  /** Done already, on a day that runs. */
  readonly past: boolean
}
export interface Lane {
  readonly name: string
  /** Who is fed when this lane's meal box stands over it. */
  readonly person: string | null
  readonly top: number
  readonly height: number
  readonly boxes: readonly Box[]
  readonly bars: readonly Bar[]
}
export const x = (frame: Frame, at: number) => inPlot(frame.axis, at)
/** Whether a span of time is in the picture at all. */
export const isShown = ({ axis }: Frame, from: number, to: number) => to > axis.domain[0] && from < axis.domain[1]

/** Boxes of shots minutes apart would touch: each begins just so far right that it stands clear of the one before, and none runs over `right`. */
export function spread<B extends Box>(boxes: readonly B[], right = Number.POSITIVE_INFINITY): B[] {
  const out: B[] = []
  for (const box of boxes) {
    const x1 = Math.max(box.x1, (out.at(-1)?.x2 ?? Number.NEGATIVE_INFINITY) + BOX.gap)
    out.push({ ...box, x1, x2: Math.max(box.x2, x1 + BOX.least) })
  }
  let edge = right
  for (let i = out.length - 1; i >= 0 && (out[i] as B).x2 > edge; i--) {
    const box = out[i] as B
    const wide = Math.max(BOX.least, Math.min(box.x2, edge) - box.x1)
    out[i] = { ...box, x1: edge - wide, x2: edge }
    edge -= wide + BOX.gap
  }
  return out
}
