import { fromIso } from '../plan/clock'
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
export const x = (frame: Frame, iso: string) => Math.min(frame.right, Math.max(frame.left, frame.axis(fromIso(iso))))

/** Boxes of shots minutes apart would touch: each begins just so far right that it stands clear of the one before. */
export function spread(boxes: readonly Box[]): Box[] {
  const out: Box[] = []
  for (const box of boxes) {
    const x1 = Math.max(box.x1, (out.at(-1)?.x2 ?? 0) + BOX.gap)
    out.push({ ...box, x1, x2: Math.max(box.x2, x1 + BOX.least) })
  }
  return out
}
