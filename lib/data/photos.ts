import 'server-only'
import { access, mkdir, open, readFile, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { PHOTO_NAME, photoName, photoTypeOf } from '../log/photo-name'
import { syncFolder } from './append-synced'
import { BorderError } from './border-error'
import { dataFolder } from './env'
import { requireShoot } from './load-log'

const folderOf = (shootId: string) => path.join(dataFolder(), 'photos', shootId)
const isThere = (file: string) =>
  access(file).then(
    () => true,
    () => false,
  )

/** Keeps a photograph under the name of its content; it is on the disk for good before the name is told. */
export async function keepPhoto(
  shootId: string,
  bytes: Uint8Array,
): Promise<{ name: string; became: 'kept' | 'known' }> {
  await requireShoot(shootId)
  const type = photoTypeOf(bytes)
  if (type === null) throw new BorderError('photo-unknown')
  const name = photoName(bytes, type)
  const file = path.join(folderOf(shootId), name)
  if (await isThere(file)) return { name, became: 'known' }
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
  const found = PHOTO_NAME.test(name) ? await readFile(path.join(folderOf(shootId), name)).catch(() => null) : null
  if (found) return found
  throw new BorderError('photo-not-found')
}
