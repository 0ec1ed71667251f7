import 'server-only'
import { createHash } from 'node:crypto'
import { rmSync } from 'node:fs'
import { realpath } from 'node:fs/promises'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { identityOf } from './disk-room'

/**
 * By the folder itself and not by its path alone: it may be reached through links, and moved while somebody holds it. By the
 * path too, for that is all that the release before this one knows: neither of the two may open what the other has open.
 */
const socketNames = async (folder: string) => [await identityOf(folder), await realpath(folder)].map(socketName)
function socketName(by: string) {
  const id = `emberslate-${createHash('sha256').update(by).digest('hex').slice(0, 24)}`
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
export async function holderOf(folder: string): Promise<string | undefined> {
  const owners = await Promise.all((await socketNames(folder)).map(askOwner))
  return owners.find((owner) => owner !== undefined)
}

/**
 * Keeps a second process off the folder: two PGlite processes on one folder corrupt it without an error.
 * A listening local socket is a lock that the kernel drops with the process; a pid file is not (zombies, reused pids).
 * Returns how to let go; throws a sentence if another process holds it.
 */
export async function lockFolder(folder: string): Promise<() => void> {
  const held: net.Server[] = []
  const letGo = () => {
    for (const server of held) server.close()
  }
  for (const name of await socketNames(folder)) {
    const server = await take(name)
    if (server) held.push(server)
    else {
      letGo()
      throw new Error(
        `The folder ${folder} is in use by another Emberslate (process ${(await askOwner(name)) ?? 'unknown'}). Stop that one, or set EMBERSLATE_DATA to another folder.`,
      )
    }
  }
  return letGo
}

async function take(name: string): Promise<net.Server | undefined> {
  const server = await listen(name)
  // There a socket is a file, which stays behind a process that was killed.
  if (server || process.platform !== 'darwin' || (await askOwner(name)) !== undefined) return server
  rmSync(name, { force: true })
  return listen(name)
}
