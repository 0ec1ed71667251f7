import { strToU8, Zip, ZipPassThrough } from 'fflate'
import type { OverlayRun } from '../export/overlay-frames'
import type { Instant } from '../units'
import type { Rasteriser } from './overlay-png'

export interface ZipOfFrames {
  readonly name: string
  readonly runs: Iterable<OverlayRun>
  /** What whoever opens it should know; stands in it as a file. */
  readonly about: string
  /** The time that its files bear. */
  readonly at: Instant
}

export const frameName = (clip: string, frame: number) =>
  `${clip.replace(/[^\w.-]+/g, '-')}_${String(frame).padStart(6, '0')}.png`

/**
 * The frames of an overlay as a zip, a piece at a time, so that however long a clip is no more than one picture is held.
 * PNG is packed already: the files are stored as they are.
 */
export function* zipOfFrames(draw: Rasteriser, { name, runs, about, at }: ZipOfFrames): Generator<Uint8Array> {
  let pieces: Uint8Array[] = []
  const zip = new Zip((fault, piece) => {
    if (fault) throw fault
    pieces.push(piece)
  })
  const add = (file: string, bytes: Uint8Array) => {
    const entry = new ZipPassThrough(file)
    entry.mtime = at
    zip.add(entry)
    entry.push(bytes, true)
  }
  const taken = () => {
    const all = pieces
    pieces = []
    return all
  }
  add('about.txt', strToU8(about))
  let frame = 0
  for (const { svg, count } of runs) {
    const png = draw(svg)
    for (let i = 0; i < count; i++) {
      add(frameName(name, frame++), png)
      yield* taken()
    }
  }
  zip.end()
  yield* taken()
}
