import { mkdir, open, readdir, rename, rm, rmdir, statfs } from 'node:fs/promises'
import path from 'node:path'
import type { Readable } from 'node:stream'
import { crc32 } from 'node:zlib'
import { type Entry, openPromise, type ZipFile } from 'yauzl'
import { openDatabase } from '../../data/client'
import { syncFolder } from '../../data/folder/append-synced'
import { ROOM_BYTES } from '../../data/folder/disk-room'
import { HEAD, HEAD_NAME, isPart } from './parts'

export interface Restored {
  readonly made: string
  readonly shoots: number
  readonly lines: number
  readonly notes: readonly string[]
}
/** The database is made anew beside what comes out of the file. */
const DATABASE_BYTES = 60_000_000
const mb = (bytes: number) => `${Math.ceil(bytes / 1e6)} MB`

/** Puts a backup into a folder that has nothing yet, all or nothing: it is opened once, to see that it is whole, before it is there. */
export async function restoreInto(folder: string, file: string): Promise<Restored> {
  await requireEmpty(folder)
  const zip = await openPromise(file, { autoClose: false }).catch((fault: NodeJS.ErrnoException) => {
    throw new Error(
      fault.code === 'ENOENT'
        ? `There is no file ${file}. Name the backup that you want back.`
        : `${file} is no whole backup (${fault.message}). Take another one.`,
    )
  })
  const half = `${folder}.restoring-${process.pid}`
  try {
    const entries = await checkedEntries(zip, file)
    const made = await readHead(zip, entries)
    await mkdir(path.dirname(folder), { recursive: true })
    await requireRoomFor(path.dirname(folder), entries)
    await mkdir(half, { mode: 0o700 })
    for (const entry of entries) if (entry.fileName !== HEAD_NAME) await takeOut(zip, entry, half)
    const restored = { made, ...(await opened(half)) }
    await rmdir(folder).catch(() => undefined)
    await rename(half, folder)
    await syncFolder(path.dirname(folder))
    return restored
  } finally {
    zip.close()
    await rm(half, { recursive: true, force: true })
  }
}

async function requireEmpty(folder: string) {
  const names = await readdir(folder).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return []
    throw fault
  })
  if (names.length > 0)
    throw new Error(
      `${folder} has something in it already; a backup goes into an empty folder. Move that one away, or set EMBERSLATE_DATA to another.`,
    )
}

/** By the file's own directory: every name and size is looked at before anything is written. */
async function checkedEntries(zip: ZipFile, file: string): Promise<readonly Entry[]> {
  const entries: Entry[] = []
  const seen = new Set<string>()
  try {
    for await (const entry of zip.eachEntry()) entries.push(entry)
  } catch (fault) {
    throw new Error(`${file} is no whole backup (${(fault as Error).message}). Take another one.`)
  }
  for (const { fileName } of entries) {
    const name = fileName.toLowerCase()
    if (!isPart(fileName) || seen.has(name))
      throw new Error(`${file} has a part “${fileName.slice(0, 80)}” that no backup has. Nothing was restored.`)
    seen.add(name)
  }
  if (!seen.has(HEAD_NAME)) throw new Error(`${file} is no backup of Emberslate: it has no ${HEAD_NAME}.`)
  return entries
}

async function readHead(zip: ZipFile, entries: readonly Entry[]): Promise<string> {
  const entry = entries.find(({ fileName }) => fileName === HEAD_NAME) as Entry
  const pieces: Uint8Array[] = []
  if (entry.uncompressedSize < 10_000) for await (const piece of checkedBytes(zip, entry)) pieces.push(piece)
  const text = Buffer.concat(pieces).toString('utf8')
  const head = HEAD.safeParse(text.startsWith('{') ? JSON.parse(text) : undefined)
  if (!head.success) throw new Error('The backup was made by a newer Emberslate. Restore it with that version.')
  return head.data.made
}

async function requireRoomFor(folder: string, entries: readonly Entry[]) {
  const { bavail, bsize } = await statfs(folder)
  const needed = entries.reduce((sum, { uncompressedSize }) => sum + uncompressedSize, ROOM_BYTES + 2 * DATABASE_BYTES)
  if (bavail * bsize < needed)
    throw new Error(`The backup needs ${mb(needed)} on the disk of ${folder}, and ${mb(bavail * bsize)} are free.`)
}

async function takeOut(zip: ZipFile, entry: Entry, half: string) {
  const place = path.join(half, entry.fileName)
  await mkdir(path.dirname(place), { recursive: true, mode: 0o700 })
  const out = await open(place, 'wx', 0o600)
  try {
    for await (const piece of checkedBytes(zip, entry)) await out.writeFile(piece)
    await out.datasync()
  } finally {
    await out.close()
  }
  await syncFolder(path.dirname(place))
}
/** Never more of them than the directory says, and the same as were put in. */
async function* checkedBytes(zip: ZipFile, entry: Entry): AsyncGenerator<Uint8Array> {
  let crc = 0
  try {
    const stream: Readable = await zip.openReadStreamPromise(entry)
    for await (const piece of stream) {
      crc = crc32(piece, crc)
      yield piece
    }
  } catch (fault) {
    throw new Error(`${entry.fileName} in the backup does not read (${(fault as Error).message}). Take another backup.`)
  }
  if (crc !== entry.crc32)
    throw new Error(
      `${entry.fileName} in the backup is not as it was put in. Take another backup; nothing was restored.`,
    )
}

async function opened(folder: string) {
  const database = await openDatabase(folder)
  try {
    const { prisma } = database
    const [shoots, lines] = [await prisma.shoot.count(), await prisma.logLine.count()]
    return { shoots, lines, notes: database.notes.filter((note) => !note.startsWith('Put back ')) }
  } finally {
    await database.close()
  }
}
