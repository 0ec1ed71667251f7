import { type FileHandle, open, readdir, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { syncFolder } from '../../data/folder/append-synced'
import { FOLDERS, HEAD_NAME, isPart } from './parts'
import { ZipWriter } from './zip-writer'

export interface BackedUp {
  readonly shoots: number
  readonly photos: number
  readonly bytes: number
}
const PIECE = 1 << 20
const NEWLINE = 0x0a
const LINES = '.ndjson'
const PICTURE = /\.(?:jpg|webp)$/
/** Written by halves, or the sign of an app that asks its disk. */
const PASSING = /\.(?:new|part)$/

/**
 * Copies what a data folder is made of into one file, while the app writes to it: whole lines only. What was acknowledged
 * before it began is in it. The database is not; it is rebuilt from the rest.
 */
export async function backUp(data: string, file: string, made = new Date()): Promise<BackedUp> {
  const half = `${file}.part`
  await rm(half, { force: true })
  const zip = await ZipWriter.create(half, made)
  try {
    const head = `${JSON.stringify({ emberslateBackup: 1, made: made.toISOString() })}\n`
    await zip.add(HEAD_NAME, [Buffer.from(head)])
    let [shoots, photos] = [0, 0]
    for (const folder of FOLDERS)
      for await (const name of namesIn(data, folder)) {
        if (!(await copy(zip, data, name))) continue
        if (name.startsWith('journal/')) shoots++
        if (name.startsWith('photos/')) photos++
      }
    await zip.end()
    await zip.close()
    await rename(half, file)
    await syncFolder(path.dirname(path.resolve(file)))
    return { shoots, photos, bytes: (await stat(file)).size }
  } catch (fault) {
    await zip.close().catch(() => undefined)
    await rm(half, { force: true })
    throw fault
  }
}

const nothingThere = (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'ENOENT') throw fault
}
async function* namesIn(data: string, folder: string): AsyncGenerator<string> {
  const entries = (await readdir(path.join(data, folder), { withFileTypes: true }).catch(nothingThere)) ?? []
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const name = `${folder}/${entry.name}`
    if (entry.isDirectory() && folder === 'photos') yield* namesIn(data, name)
    else if (entry.isFile() && isPart(name) && !PASSING.test(name)) yield name
  }
}

/** False where it was gone before its turn came. */
async function copy(zip: ZipWriter, data: string, name: string): Promise<boolean> {
  const file = await open(path.join(data, name), 'r').catch(nothingThere)
  if (!file) return false
  try {
    const { size } = await file.stat()
    const end = name.includes(LINES) ? await lastLineEnd(file, size) : size
    await zip.add(name, piecesOf(file, end), PICTURE.test(name))
    return true
  } finally {
    await file.close()
  }
}

/** Where the last whole line ends, of a file that somebody may be adding to. */
async function lastLineEnd(file: FileHandle, size: number): Promise<number> {
  for (let end = size; end > 0; end -= PIECE) {
    const from = Math.max(0, end - PIECE)
    const { buffer, bytesRead } = await file.read(Buffer.alloc(end - from), 0, end - from, from)
    const at = buffer.subarray(0, bytesRead).lastIndexOf(NEWLINE)
    if (at >= 0) return from + at + 1
  }
  return 0
}
async function* piecesOf(file: FileHandle, end: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < end; ) {
    const { buffer, bytesRead } = await file.read(
      Buffer.alloc(Math.min(PIECE, end - at)),
      0,
      Math.min(PIECE, end - at),
      at,
    )
    if (bytesRead === 0) return
    at += bytesRead
    yield buffer.subarray(0, bytesRead)
  }
}
