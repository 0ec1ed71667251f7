import 'server-only'
import { createHash } from 'node:crypto'
import { rmSync } from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { identityOf } from './disk-room'

/** By the folder itself and not by its path: it may be reached through links, and moved while somebody holds it. */
async function socketName(folder: string) {
  const id = `emberslate-${createHash('sha256')
    .update(await identityOf(folder))
    .digest('hex')
    .slice(0, 24)}`
  if (process.platform === 'linux') return `\0${id}`
  if (process.platform === 'win32') return `\\\\.\\pipe\\${id}`
  return path.join(os.tmpdir(), `${id}.sock`)
}

const listen = (name: string) =>
  new Promise<net.Server | undefined>((resolve, reject) => {
    const server = net.createServer((caller) => caller.end(String(process.pid)))
    server.once('error', (fault: NodeJS.ErrnoException) =>
      fault.code === 'EADDRINUSE' ? resolve(undefined) : reject(fault),
    )
    server.listen(name, () => {
      server.unref()
      resolve(server)
    })
  })

const askOwner = (name: string) =>
  new Promise<string | undefined>((resolve) => {
    let said = ''
    net
      .connect(name)
      .on('data', (bytes) => {
        said += bytes
      })
      .on('close', () => resolve(said || 'unknown'))
      .on('error', () => resolve(undefined))
  })

/** The process that has this folder open, or nothing where none has. */
export const holderOf = async (folder: string): Promise<string | undefined> => askOwner(await socketName(folder))

/**
 * Keeps a second process off the folder: two PGlite processes on one folder corrupt it without an error.
 * A listening local socket is a lock that the kernel drops with the process; a pid file is not (zombies, reused pids).
 * Returns how to let go; throws a sentence if another process holds it.
 */
export async function lockFolder(folder: string): Promise<() => void> {
  const name = await socketName(folder)
  const held = await listen(name)
  if (held) return () => held.close()
  const owner = await askOwner(name)
  if (owner === undefined && process.platform === 'darwin') {
    rmSync(name, { force: true })
    const again = await listen(name)
    if (again) return () => again.close()
  }
  throw new Error(
    `The folder ${folder} is in use by another Emberslate (process ${owner ?? 'unknown'}). Stop that one, or set EMBERSLATE_DATA to another folder.`,
  )
}
