import 'server-only'
import { open, readFile, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { syncFolder } from './append-synced'

/**
 * Puts other lines in place of a file's: whole beside it, synced, then renamed, so that it is the one or the other whatever
 * happens. Journals only grow; taking a person out of them is the one exception. False where there is no such file.
 */
export async function rewriteFile(
  name: string,
  next: (lines: readonly string[]) => readonly string[],
): Promise<boolean> {
  const text = await readFile(name, 'utf8').catch((fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'ENOENT') throw fault
  })
  if (text === undefined) return false
  const lines = next(text.split('\n').filter((line) => line !== ''))
  const file = await open(`${name}.new`, 'w')
  try {
    await file.writeFile(lines.map((line) => `${line}\n`).join(''))
    await file.datasync()
  } catch (fault) {
    await rm(`${name}.new`, { force: true })
    throw fault
  } finally {
    await file.close()
  }
  await rename(`${name}.new`, name)
  await syncFolder(path.dirname(name))
  return true
}
