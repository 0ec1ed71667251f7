import 'server-only'
import { access, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { PHOTO_NAME, photoName, photoTypeOf } from '../log/photo-name'
import { syncFolder } from './append-synced'
import { BorderError } from './border-error'
import { dataFolder } from './env'
import { requireShoot } from './load-log'

export const photoFolder = (shootId: string) => path.join(dataFolder(), 'photos', shootId)
const isThere = (file: string) =>
  access(file).then(
    () => true,
    () => false,
  )

/** So much of one shoot: some thousand photographs as a phone sends them. One link must not fill the disk. */
const MOST_BYTES = 1_000_000_000
const fullWords = (bytes: number) =>
  `The photographs of this shoot fill the ${Math.round(bytes / 1e6)} MB that are kept of one. This one stays on the phone; the owner can make room under photos/ in the data folder.`

/** How full each shoot's folder is. */
const filled = new Map<string, number>()
async function sizeOf(folder: string): Promise<number> {
  const names = await readdir(folder).catch(() => [])
  const sizes = await Promise.all(names.map((name) => stat(path.join(folder, name)).catch(() => ({ size: 0 }))))
  return sizes.reduce((sum, { size }) => sum + size, 0)
}
/** Takes room for so many bytes, or refuses; what seems full is looked at again, it may have been cleared. */
async function takeRoom(folder: string, bytes: number, most: number): Promise<void> {
  if ((filled.get(folder) ?? most) + bytes > most) filled.set(folder, await sizeOf(folder))
  const before = filled.get(folder) as number
  if (before + bytes > most) throw new BorderError('photos-full', { sentence: fullWords(most) })
  filled.set(folder, before + bytes)
}

/** Keeps a photograph under the name of its content; it is on the disk for good before the name is told. */
export async function keepPhoto(
  shootId: string,
  bytes: Uint8Array,
  most = MOST_BYTES,
): Promise<{ name: string; became: 'kept' | 'known' }> {
  await requireShoot(shootId)
  const type = photoTypeOf(bytes)
  if (type === null) throw new BorderError('photo-unknown')
  return putPhoto(shootId, photoName(bytes, type), bytes, most)
}

/** The same for one whose name is known to be its own, of a shoot that may be on its way in. */
export async function putPhoto(
  shootId: string,
  name: string,
  bytes: Uint8Array,
  most = MOST_BYTES,
): Promise<{ name: string; became: 'kept' | 'known' }> {
  const file = path.join(photoFolder(shootId), name)
  if (await isThere(file)) return { name, became: 'known' }
  await takeRoom(photoFolder(shootId), bytes.length, most)
  await write(file, bytes).catch((fault: Error) => {
    const sentence = `The disk did not take the photograph (${fault.message}); it was not kept. Send it again.`
    throw new BorderError('disk-refused', { sentence })
  })
  return { name, became: 'kept' }
}

/** Whole under its name or not there: half of one would stand for the whole for ever. */
async function write(file: string, bytes: Uint8Array): Promise<void> {
  const folder = path.dirname(file)
  await mkdir(folder, { recursive: true })
  const half = `${file}.${process.pid}-${++writes}.part`
  const handle = await open(half, 'wx')
  try {
    await handle.writeFile(bytes)
    await handle.datasync()
  } catch (fault) {
    await rm(half, { force: true })
    throw fault
  } finally {
    await handle.close()
  }
  await rename(half, file)
  await syncFolder(folder)
}
let writes = 0

export async function readPhoto(shootId: string, name: string): Promise<Buffer> {
  await requireShoot(shootId)
  const found = PHOTO_NAME.test(name) ? await readFile(path.join(photoFolder(shootId), name)).catch(() => null) : null
  if (found) return found
  throw new BorderError('photo-not-found')
}
