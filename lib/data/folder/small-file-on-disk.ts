import 'server-only'
import { mkdir, open, readFile, rename } from 'node:fs/promises'
import path from 'node:path'
import { dataFolder } from '../env'
import { notTaken } from '../not-taken'
import type { SmallFileKind } from '../small-file'
import { syncFolder } from './append-synced'
import { requireFolder } from './disk-room'

/** Next loads this file once per bundle; the proxy and the routes must see the same door. */
const shared = globalThis as { emberslateDoor?: Map<string, Promise<unknown>>; emberslateDoorTurn?: Promise<unknown> }

/**
 * Read once, held in memory, and on the disk before a change is told. It lies beside the database and not in it, so that a
 * rebuild from the journals leaves the door as it was.
 */
export class SmallFileOnDisk<T> {
  readonly #kind: SmallFileKind<T>

  constructor(kind: SmallFileKind<T>) {
    this.#kind = kind
  }

  get #file() {
    return path.join(dataFolder(), this.#kind.name)
  }

  read(): Promise<T> {
    shared.emberslateDoor ??= new Map()
    const held = shared.emberslateDoor.get(this.#file) as Promise<T> | undefined
    if (held) return held
    const loading = this.#load()
    shared.emberslateDoor.set(this.#file, loading)
    loading.catch(() => shared.emberslateDoor?.delete(this.#file))
    return loading
  }

  /** Changes wait for each other, whichever file they are about; nothing changes where the disk refuses. */
  change(next: (now: T) => T): Promise<T> {
    const turn = (shared.emberslateDoorTurn ?? Promise.resolve()).then(async () => {
      const now = await this.read()
      const value = next(now)
      if (value === now) return now
      await requireFolder(dataFolder())
      await writeWhole(this.#file, `${JSON.stringify(value, null, 1)}\n`).catch(notKept)
      shared.emberslateDoor?.set(this.#file, Promise.resolve(value))
      return value
    })
    shared.emberslateDoorTurn = turn.catch(() => undefined)
    return turn
  }

  async #load(): Promise<T> {
    const text = await readFile(this.#file, 'utf8').catch((fault: NodeJS.ErrnoException) => {
      if (fault.code === 'ENOENT') return undefined
      throw fault
    })
    if (text === undefined) return this.#kind.empty
    try {
      return this.#kind.schema.parse(JSON.parse(text))
    } catch {
      // Never taken for empty: a door that forgets its owner would let the next one in.
      throw new Error(`${this.#file} does not read. Mend it, or move it away and start again.`)
    }
  }
}

const notKept = notTaken((why) => `The disk did not take the change (${why}); all is as it was.`)

/** The file as a whole or as it was: written beside, synced, and put in its place. */
async function writeWhole(name: string, text: string) {
  const folder = path.dirname(name)
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const beside = `${name}.new`
  const file = await open(beside, 'w', 0o600)
  try {
    await file.writeFile(text)
    await file.datasync()
  } finally {
    await file.close()
  }
  await rename(beside, name)
  await syncFolder(folder)
}
