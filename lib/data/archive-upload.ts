import 'server-only'
import { access, mkdir, open, readdir, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { BorderError } from './border-error'
import { dataFolder } from './env'

/** A shoot's photographs have at most 1 GB, its texts far less. */
const MOST_BYTES = 1_200_000_000
/** What goes through the server at once; larger bodies would be held in its memory. */
export const LARGEST_PIECE = 8_000_000
const UPLOAD = /^[A-Za-z0-9_-]{8,64}$/
const DAY_MS = 86_400_000

const folder = () => path.join(dataFolder(), 'incoming')
function fileOf(upload: string): string {
  if (UPLOAD.test(upload)) return path.join(folder(), `${upload}.zip`)
  const sentence = 'An upload has a name of 8 to 64 letters, digits, "-" or "_", made by the sender.'
  throw new BorderError('archive-invalid', { sentence, problems: [{ pointer: '/upload', sentence }] })
}

/** Adds a piece that begins `from` bytes into the archive; the same piece again does it once. Answers how much is here. */
export async function addPiece(upload: string, from: number, piece: Uint8Array): Promise<number> {
  const file = fileOf(upload)
  if (from === 0) await makeRoom()
  if (from + piece.byteLength > MOST_BYTES)
    throw new BorderError('too-large', { sentence: 'The archive of a shoot has at most 1.2 GB.' })
  try {
    const handle = await open(file, from === 0 ? 'w+' : 'r+')
    try {
      const { size } = await handle.stat()
      if (from > size) throw gap(size)
      await handle.truncate(from)
      await handle.write(piece, 0, piece.byteLength, from)
    } finally {
      await handle.close()
    }
  } catch (fault) {
    if (fault instanceof BorderError) throw fault
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') throw gap(0)
    const sentence = `The disk did not take the archive (${(fault as Error).message}). Free some room, then try again.`
    throw new BorderError('disk-refused', { sentence })
  }
  return from + piece.byteLength
}
const gap = (size: number) => {
  const sentence = `${size} bytes of this archive are here; go on from there.`
  return new BorderError('archive-invalid', { sentence, problems: [{ pointer: '/from', sentence }] })
}

/** What was begun and left lying makes room. */
async function makeRoom(): Promise<void> {
  await mkdir(folder(), { recursive: true })
  for (const name of await readdir(folder())) {
    const file = path.join(folder(), name)
    const { mtimeMs } = await stat(file).catch(() => ({ mtimeMs: Date.now() }))
    if (mtimeMs < Date.now() - DAY_MS) await rm(file, { force: true })
  }
}

/** Where an upload lies. */
export async function uploaded(upload: string): Promise<string> {
  const file = fileOf(upload)
  await access(file).catch(() => {
    const sentence = 'Nothing of this archive is here yet. Send its pieces first.'
    throw new BorderError('archive-invalid', { sentence, problems: [{ pointer: '/upload', sentence }] })
  })
  return file
}
