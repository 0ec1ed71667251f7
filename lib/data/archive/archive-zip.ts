import 'server-only'
import { Readable } from 'node:stream'
import { type Entry, fromRandomAccessReaderPromise, RandomAccessReader, type ZipFile } from 'yauzl'
import { PHOTO_NAME } from '../../log/photo-name'
import type { Problem } from '../../refusals'
import { BorderError } from '../border-error'
import { PARTS, PHOTOS } from './archive'
import type { Uploaded } from './archive-upload'

const MOST_PARTS = 20_000

export const refuse = (sentence: string, problems: readonly Problem[] = [{ pointer: '', sentence }]) =>
  new BorderError('archive-invalid', { sentence, problems })

class Pieces extends RandomAccessReader {
  readonly #uploaded: Uploaded

  constructor(uploaded: Uploaded) {
    super()
    this.#uploaded = uploaded
  }
  override _readStreamForRange(start: number, end: number): Readable {
    return Readable.from(this.#uploaded.bytes(start, end), { objectMode: false })
  }
}

/** The zip that an upload's pieces are. */
export const openZip = (uploaded: Uploaded): Promise<ZipFile> =>
  fromRandomAccessReaderPromise(new Pieces(uploaded), uploaded.size, { autoClose: false }).catch((fault: Error) => {
    throw refuse(`This is no whole archive (${fault.message}). Save the shoot's archive again and take that file in.`)
  })

/** The parts of the archive by name; those that no archive of a shoot has are refused. */
export async function entriesOf(zip: ZipFile): Promise<Map<string, Entry>> {
  const entries = new Map<string, Entry>()
  if (zip.entryCount > MOST_PARTS)
    throw refuse(`This file has ${zip.entryCount} parts; the archive of a shoot has fewer.`)
  try {
    for await (const entry of zip.eachEntry()) entries.set(entry.fileName, entry)
  } catch (fault) {
    throw refuse(`This is no whole archive (${fault instanceof Error ? fault.message : fault}). Save it again.`)
  }
  const known: readonly string[] = Object.values(PARTS)
  const lacking = known.find((name) => !entries.has(name))
  if (lacking) throw refuse(`This is no archive of a shoot: it has no ${lacking}.`)
  const strange = [...entries.keys()].find(
    (name) => !known.includes(name) && !(name.startsWith(PHOTOS) && PHOTO_NAME.test(name.slice(PHOTOS.length))),
  )
  if (strange) throw refuse(`The archive has a part “${strange.slice(0, 80)}” that no archive of a shoot has.`)
  return entries
}

/** One part, whole; at most so many bytes of it. */
export async function bytesOf(zip: ZipFile, entry: Entry, most: number): Promise<Buffer> {
  const pieces: Buffer[] = []
  let size = 0
  const tooMuch = () => refuse(`${entry.fileName} is larger than ${(most / 1e6).toLocaleString('en-GB')} MB.`)
  if (entry.uncompressedSize > most) throw tooMuch()
  try {
    const stream: Readable = await zip.openReadStreamPromise(entry)
    for await (const piece of stream) {
      size += piece.length
      if (size > most) throw tooMuch()
      pieces.push(piece)
    }
  } catch (fault) {
    if (fault instanceof BorderError) throw fault
    throw refuse(
      `${entry.fileName} does not read (${fault instanceof Error ? fault.message : fault}). Save the archive again.`,
    )
  }
  return Buffer.concat(pieces)
}
