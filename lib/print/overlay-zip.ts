import { strToU8, Zip, ZipPassThrough } from 'fflate'
import type { OverlayRun } from '../export/overlay-frames'
import type { Instant } from '../units'

/** Draws some pictures, in order. */
export type DrawEach = (svgs: readonly string[]) => Promise<readonly Uint8Array[]>

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

/** Drawn together in about a second at full size; no more than two such lots are held. [measured] */
const DRAWN_AT_ONCE = 8

/**
 * The frames of an overlay as a zip, a piece at a time, so that however long a clip is only a few pictures are held.
 * PNG is packed already: the files are stored as they are.
 */
export async function* zipOfFrames(
  draw: DrawEach,
  { name, runs, about, at }: ZipOfFrames,
): AsyncGenerator<Uint8Array, void> {
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
  for await (const { png, count } of drawn(draw, runs)) {
    for (let i = 0; i < count; i++) {
      add(frameName(name, frame++), png)
      yield* taken()
    }
  }
  zip.end()
  yield* taken()
}

/** Each run's picture, in order; while one lot is taken up the next is being drawn. */
async function* drawn(draw: DrawEach, runs: Iterable<OverlayRun>) {
  const lots = lotsOf(runs)
  const next = () => {
    const { value: lot } = lots.next()
    if (!lot) return null
    const pictures = draw(lot.map(({ svg }) => svg))
    // Whoever stops taking does not hear what becomes of it.
    pictures.catch(() => undefined)
    return { lot, pictures }
  }
  for (let now = next(); now; ) {
    const ahead = next()
    const pictures = await now.pictures
    for (const [i, { count }] of now.lot.entries()) yield { png: pictures[i] as Uint8Array, count }
    now = ahead
  }
}

function* lotsOf(runs: Iterable<OverlayRun>): Generator<OverlayRun[], undefined> {
  let lot: OverlayRun[] = []
  for (const run of runs) {
    lot.push(run)
    if (lot.length < DRAWN_AT_ONCE) continue
    yield lot
    lot = []
  }
  if (lot.length > 0) yield lot
}
