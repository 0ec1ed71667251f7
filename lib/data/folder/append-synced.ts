import 'server-only'
import { type FileHandle, mkdir, open } from 'node:fs/promises'
import path from 'node:path'

const NEWLINE = 0x0a

async function lacksNewline(file: FileHandle, size: number) {
  if (size === 0) return false
  const { buffer } = await file.read(Buffer.alloc(1), 0, 1, size - 1)
  return buffer[0] !== NEWLINE
}

/** What stands in a folder, names included, for good. */
export async function syncFolder(folder: string) {
  const handle = await open(folder, 'r')
  await handle.sync().finally(() => handle.close())
}

/**
 * Puts lines at the end of a file for good, before anybody is told that they are saved: the database itself never calls
 * fsync. A write that fails half way (a full disk) leaves the file as it was. Returns a function that takes the lines back.
 */
export async function appendSynced(name: string, lines: readonly string[]) {
  const folder = path.dirname(name)
  await mkdir(folder, { recursive: true })
  const file = await open(name, 'a+')
  const { size } = await file.stat()
  try {
    // A line that a power cut left half written must not swallow the next one.
    const start = (await lacksNewline(file, size)) ? '\n' : ''
    await file.appendFile(start + lines.map((line) => `${line}\n`).join(''))
    await file.datasync()
    if (size === 0) await syncFolder(folder)
  } catch (fault) {
    await file.truncate(size).catch(() => undefined)
    throw fault
  } finally {
    await file.close()
  }
  return async () => {
    const again = await open(name, 'r+')
    await again.truncate(size).finally(() => again.close())
  }
}
