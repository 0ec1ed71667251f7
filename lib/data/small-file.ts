import 'server-only'
import type { z } from 'zod'
import { databaseUrl } from './env'
import { SmallFileOnDisk } from './folder/small-file-on-disk'
import { SmallFileOnServer } from './server/small-file-on-server'

/** What a small file is called, by its path in the data folder, what may stand in it, and what is meant where it is not there. */
export interface SmallFileKind<T> {
  readonly name: string
  readonly schema: z.ZodType<T>
  readonly empty: T
}

/**
 * A small file that is read and changed as a whole. What is told is kept for good; a change by anybody, in whichever
 * process, is seen by the next who reads.
 */
export class SmallFile<T> {
  readonly #onDisk: SmallFileOnDisk<T>
  readonly #onServer: SmallFileOnServer<T>

  constructor(name: string, schema: z.ZodType<T>, empty: T) {
    this.#onDisk = new SmallFileOnDisk({ name, schema, empty })
    this.#onServer = new SmallFileOnServer({ name, schema, empty })
  }

  get #here() {
    return databaseUrl() === null ? this.#onDisk : this.#onServer
  }

  read(): Promise<T> {
    return this.#here.read()
  }

  /** Changes wait for each other; what `next` throws, or what is the same as it was, changes nothing. */
  change(next: (now: T) => T): Promise<T> {
    return this.#here.change(next)
  }
}
