import 'server-only'
import { PHOTO_NAME, photoName, photoTypeOf } from '../log/photo-name'
import { tellsPlace } from '../log/photo-place'
import { blobsIn, putBlob, readBlob, removeBlobs, sizeOfBlobs } from './blobs'
import { BorderError } from './border-error'
import { databaseUrl } from './env'
import { requireShoot } from './load-log'
import { notTaken } from './not-taken'

const folderOf = (shootId: string) => `photos/${shootId}`

/** So much of one shoot: some thousand photographs as a phone sends them. One link must not fill the disk. */
const MOST_BYTES = 1_000_000_000
const fullWords = (bytes: number, folder: string) => {
  const where = databaseUrl() === null ? `under ${folder} in the data folder` : `in the table Blob, folder ${folder}`
  return `The photographs of this shoot fill the ${Math.round(bytes / 1e6)} MB that are kept of one. This one stays on the phone; the owner can make room ${where}.`
}

interface KeptPhoto {
  readonly name: string
  readonly became: 'kept' | 'known'
}

/** Keeps a photograph under the name of its content; it is kept for good before the name is told. */
export async function keepPhoto(shootId: string, bytes: Uint8Array, most = MOST_BYTES): Promise<KeptPhoto> {
  await requireShoot(shootId)
  const type = photoTypeOf(bytes)
  if (type === null) throw new BorderError('photo-unknown')
  // The board draws its pictures anew; what others send is named by its bytes, so it is refused and not changed.
  if (tellsPlace(bytes)) throw new BorderError('photo-place')
  return putPhoto(shootId, photoName(bytes, type), bytes, most)
}

/** The same for one whose name is known to be its own, of a shoot that may be on its way in. */
export async function putPhoto(
  shootId: string,
  name: string,
  bytes: Uint8Array,
  most = MOST_BYTES,
): Promise<KeptPhoto> {
  const folder = folderOf(shootId)
  // What comes at the same moment is not counted yet: a few too many do no harm.
  if ((await sizeOfBlobs(folder)) + bytes.length > most && !(await photosOf(shootId)).includes(name))
    throw new BorderError('photos-full', { sentence: fullWords(most, folder) })
  const became = await putBlob(folder, name, bytes).catch(
    notTaken((why) => `The disk did not take the photograph (${why}); it was not kept.`),
  )
  return { name, became }
}

/** The names of all, in order. */
export const photosOf = async (shootId: string): Promise<readonly string[]> =>
  (await blobsIn(folderOf(shootId))).filter((name) => PHOTO_NAME.test(name))

export async function readPhoto(shootId: string, name: string): Promise<Buffer> {
  await requireShoot(shootId)
  const found = PHOTO_NAME.test(name) ? await readBlob(folderOf(shootId), name) : null
  if (found) return found
  throw new BorderError('photo-not-found')
}

/** A note that names one then says that it is gone. */
export const removePhotos = (shootId: string, names: readonly string[]) => removeBlobs(folderOf(shootId), names)
