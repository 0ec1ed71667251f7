import 'server-only'
import { access, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { databaseUrl, dataFolder } from './env'
import { syncFolder } from './folder/append-synced'
import { requireFolder, requireRoom } from './folder/disk-room'
import { SERVER, type Server } from './server/server-sql'

/** Files that never change, by folder and name: photographs, pieces of an archive on its way in. */
export interface Blobs {
  put(folder: string, name: string, bytes: Uint8Array): Promise<'kept' | 'known'>
  read(folder: string, name: string): Promise<Buffer | null>
  sizeOf(folder: string): Promise<number>
  names(folder: string): Promise<readonly string[]>
  /** All of a folder, or those that are named. */
  remove(folder: string, names?: readonly string[]): Promise<void>
  /** Folders in this one to which nothing was added since. */
  removeOlder(folder: string, before: number): Promise<void>
}

const nothingThere = (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'ENOENT') throw fault
}
const isThere = (file: string) =>
  access(file).then(
    () => true,
    () => false,
  )

export function blobsOnDisk(data: string): Blobs {
  const pathOf = (folder: string, ...name: string[]) => path.join(data, folder, ...name)
  const names = async (folder: string) => {
    const all = (await readdir(pathOf(folder)).catch(nothingThere)) ?? []
    return all.filter((name) => !name.endsWith(HALF)).sort()
  }
  return {
    put: async (folder, name, bytes) => {
      if (await isThere(pathOf(folder, name))) return 'known'
      await requireFolder(data)
      await requireRoom(data, 'Nothing was kept', bytes.byteLength)
      await writeOnce(pathOf(folder, name), bytes)
      return 'kept'
    },
    read: async (folder, name) => (await readFile(pathOf(folder, name)).catch(nothingThere)) ?? null,
    sizeOf: async (folder) => {
      const sizes = await Promise.all(
        (await names(folder)).map((name) => stat(pathOf(folder, name)).catch(() => ({ size: 0 }))),
      )
      return sizes.reduce((sum, { size }) => sum + size, 0)
    },
    names,
    remove: async (folder, some) => {
      const files = some?.map((name) => pathOf(folder, name)) ?? [pathOf(folder)]
      // Somebody may add to a folder while it goes.
      for (const file of files) await rm(file, { recursive: true, force: true, maxRetries: 3 })
    },
    removeOlder: async (folder, before) => {
      for (const name of await names(folder)) {
        const { mtimeMs } = await stat(pathOf(folder, name)).catch(() => ({ mtimeMs: before }))
        if (mtimeMs < before) await rm(pathOf(folder, name), { recursive: true, force: true })
      }
    },
  }
}

const HALF = '.part'
let writes = 0
/** Whole under its name or not there: half of one would stand for the whole for ever. */
async function writeOnce(file: string, bytes: Uint8Array): Promise<void> {
  const folder = path.dirname(file)
  await mkdir(folder, { recursive: true })
  const half = `${file}.${process.pid}-${++writes}${HALF}`
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

const PUT =
  'INSERT INTO "Blob" ("folder", "name", "bytes") VALUES ($1, $2, $3) ON CONFLICT DO NOTHING RETURNING 1 AS put'
const SIZE = 'SELECT coalesce(sum(octet_length("bytes")), 0)::float8 AS size FROM "Blob" WHERE "folder" = $1'
const REMOVE = 'DELETE FROM "Blob" WHERE "folder" = $1 AND ($2::text[] IS NULL OR "name" = ANY($2))'
const REMOVE_OLDER = `DELETE FROM "Blob" WHERE "folder" IN (
  SELECT "folder" FROM "Blob" WHERE "folder" LIKE $1 GROUP BY "folder" HAVING max("at") < to_timestamp($2::float8 / 1000))`

export const blobsOnServer = ({ read, write }: Server): Blobs => ({
  put: async (folder, name, bytes) => {
    const put = await write(PUT, [folder, name, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)])
    return put.length > 0 ? 'kept' : 'known'
  },
  read: async (folder, name) => {
    const select = 'SELECT "bytes" FROM "Blob" WHERE "folder" = $1 AND "name" = $2'
    const [row] = await read<{ readonly bytes: Buffer }>(select, [folder, name])
    return row?.bytes ?? null
  },
  sizeOf: async (folder) => (await read<{ readonly size: number }>(SIZE, [folder]))[0]?.size ?? 0,
  names: async (folder) => {
    const rows = await read<{ readonly name: string }>('SELECT "name" FROM "Blob" WHERE "folder" = $1', [folder])
    // Sorted here: a server's order of letters may be another one.
    return rows.map(({ name }) => name).sort()
  },
  remove: async (folder, names) => {
    await write(REMOVE, [folder, names ?? null])
  },
  removeOlder: async (folder, before) => {
    await write(REMOVE_OLDER, [`${folder}/%`, before])
  },
})

const here = (): Blobs => (databaseUrl() === null ? blobsOnDisk(dataFolder()) : blobsOnServer(SERVER))

/** Kept for good when it is told; what stands under the name already is left. */
export const putBlob = (folder: string, name: string, bytes: Uint8Array) => here().put(folder, name, bytes)
export const readBlob = (folder: string, name: string) => here().read(folder, name)
export const sizeOfBlobs = (folder: string) => here().sizeOf(folder)
/** Their names, in order. */
export const blobsIn = (folder: string) => here().names(folder)
export const removeBlobs = (folder: string, names?: readonly string[]) => here().remove(folder, names)
export const removeOlderBlobs = (folder: string, before: number) => here().removeOlder(folder, before)
