import 'server-only'
import { blobsIn, putBlob, readBlob, removeBlobs, removeOlderBlobs } from '../blobs'
import { BorderError } from '../border-error'
import { notTaken } from '../not-taken'
import { queued } from '../turns'

/** A shoot's photographs have at most 1 GB, its texts far less. */
const MOST_BYTES = 1_200_000_000
/** What goes through the server at once; larger bodies would be held in its memory. */
export const LARGEST_PIECE = 8_000_000
const UPLOAD = /^[A-Za-z0-9_-]{8,64}$/
const DAY_MS = 86_400_000

const INCOMING = 'incoming'
function folderOf(upload: string): string {
  if (UPLOAD.test(upload)) return `${INCOMING}/${upload}`
  throw refused('/upload', 'An upload has a name of 8 to 64 letters, digits, "-" or "_", made by the sender.')
}
const refused = (pointer: string, sentence: string) =>
  new BorderError('archive-invalid', { sentence, problems: [{ pointer, sentence }] })

/** A piece is named by where in the archive it stands: "0000004000000-0000008000000". */
interface Piece {
  readonly from: number
  readonly to: number
}
const PIECE = /^(\d{13})-(\d{13})$/
const nameOf = ({ from, to }: Piece) => [from, to].map((at) => String(at).padStart(13, '0')).join('-')
async function piecesOf(folder: string): Promise<readonly Piece[]> {
  const names = await blobsIn(folder)
  return names.flatMap((name) => {
    const [, from, to] = PIECE.exec(name) ?? []
    return from && to ? [{ from: Number(from), to: Number(to) }] : []
  })
}

/**
 * Adds a piece that begins `from` bytes into the archive; the same piece again does it once, and what stood behind it goes.
 * Each piece may reach another process. Answers how much is here.
 */
export async function addPiece(upload: string, from: number, bytes: Uint8Array): Promise<number> {
  const folder = folderOf(upload)
  if (from + bytes.byteLength > MOST_BYTES)
    throw new BorderError('too-large', { sentence: 'The archive of a shoot has at most 1.2 GB.' })
  if (from === 0) await removeOlderBlobs(INCOMING, Date.now() - DAY_MS)
  // One that begins again must not take the folder from under another.
  return queued(folder, () => putPiece(folder, from, bytes))
}

async function putPiece(folder: string, from: number, bytes: Uint8Array): Promise<number> {
  const to = from + bytes.byteLength
  const pieces = await piecesOf(folder)
  const here = pieces.filter((one) => one.to <= from).at(-1)?.to ?? 0
  if (here !== from) throw refused('/from', `${here} bytes of this archive are here; go on from there.`)
  const former = from === 0 ? undefined : pieces.filter((one) => one.to > from).map(nameOf)
  await removeBlobs(folder, former)
    .then(() => putBlob(folder, nameOf({ from, to }), bytes))
    .catch(notTaken((why) => `The disk did not take the archive (${why}).`))
  return to
}

/** An archive whose pieces are here. */
export interface Uploaded {
  readonly size: number
  bytes(from?: number, to?: number): AsyncGenerator<Uint8Array>
}
export async function uploaded(upload: string): Promise<Uploaded> {
  const folder = folderOf(upload)
  const pieces = await piecesOf(folder)
  if (pieces.length === 0) throw refused('/upload', 'Nothing of this archive is here yet. Send its pieces first.')
  const size = pieces.at(-1)?.to ?? 0
  // It is read from front to back, a little at a time: the piece that was read last is the likeliest to be asked for.
  let last: { readonly piece: Piece; readonly bytes: Buffer } | undefined
  const read = async (piece: Piece) => {
    if (last?.piece !== piece) {
      const bytes = await readBlob(folder, nameOf(piece))
      if (!bytes) throw refused('/upload', 'A piece of this archive is gone. Send it again.')
      last = { piece, bytes }
    }
    return last.bytes
  }
  async function* bytes(from = 0, to = size) {
    for (const piece of pieces)
      if (piece.to > from && piece.from < to)
        yield (await read(piece)).subarray(Math.max(0, from - piece.from), Math.min(piece.to, to) - piece.from)
  }
  return { size, bytes }
}

/** What was taken in once stays known for a day under its upload: whoever did not hear the answer asks again. */
const takenName = (copy: boolean) => (copy ? 'taken-as-copy' : 'taken')
export async function forgetPieces(upload: string, id: string, copy: boolean): Promise<void> {
  const folder = folderOf(upload)
  await queued(folder, async () => {
    await putBlob(folder, takenName(copy), Buffer.from(id))
    await removeBlobs(folder, (await piecesOf(folder)).map(nameOf))
  })
}
export const takenUnder = async (upload: string, copy: boolean): Promise<string | null> =>
  (await readBlob(folderOf(upload), takenName(copy)))?.toString() ?? null
