import 'server-only'
import { setTimeout } from 'node:timers/promises'
import { databaseUrl } from './env'
import type { KeptLine } from './folder/log-journal'
import { lastPosition, loadLog } from './load-log'
import { type Bus, bus, notify } from './server/bus'

/** Called with every line that was kept, in order of position; must not throw and must not wait. */
export type Listener = (lines: readonly KeptLine[]) => void

/** Where the lines of a log are read: the database, but for a test. */
export interface LogRead {
  last(shootId: string): Promise<number>
  after(shootId: string, position: number, most: number): Promise<readonly KeptLine[]>
}
const PIECE = 1000
const AGAIN_MS = 200

/** Those who listen in this process; what other processes kept is read on after each notice. */
export class LogListeners {
  readonly #shoots = new Map<string, Followed>()
  readonly #log: LogRead | null

  /** Without a log to read nobody else writes: lines are handed over as they are kept. */
  constructor(from: Bus, log: LogRead | null) {
    this.#log = log
    if (!log) return
    from.hear('log', ({ shoot, position }) => this.#shoots.get(shoot)?.reaches(position))
    from.hear('again', () => {
      for (const followed of this.#shoots.values()) followed.reaches(Number.POSITIVE_INFINITY)
    })
  }
  async listen(shootId: string, listener: Listener): Promise<() => void> {
    const followed = this.#shoots.get(shootId) ?? new Followed(shootId, this.#log)
    this.#shoots.set(shootId, followed)
    followed.listeners.add(listener)
    const stop = () => {
      followed.listeners.delete(listener)
      if (followed.listeners.size === 0 && this.#shoots.get(shootId) === followed) this.#shoots.delete(shootId)
    }
    await followed.begun.catch((fault) => {
      stop()
      throw fault
    })
    return stop
  }
  tell(shootId: string, lines: readonly KeptLine[]): void {
    this.#shoots.get(shootId)?.tell(lines)
  }
  count = (shootId: string) => this.#shoots.get(shootId)?.listeners.size ?? 0
}

/** A log that somebody listens to, and how far it was told. */
class Followed {
  readonly listeners = new Set<Listener>()
  /** From here on nothing is missed. */
  readonly begun: Promise<void>
  readonly #shootId: string
  readonly #log: LogRead | null
  #told = 0
  #more = false
  #reading = false

  constructor(shootId: string, log: LogRead | null) {
    this.#shootId = shootId
    this.#log = log
    this.begun = this.#begin()
    this.begun.catch(() => undefined)
  }
  async #begin(): Promise<void> {
    if (this.#log) this.#told = await this.#log.last(this.#shootId)
  }
  tell(lines: readonly KeptLine[]): void {
    for (const listener of this.listeners) listener(lines)
  }
  reaches(position: number): void {
    if (position <= this.#told) return
    this.#more = true
    if (!this.#reading) void this.#readOn()
  }
  async #readOn(): Promise<void> {
    this.#reading = true
    while (this.#more && this.listeners.size > 0) {
      this.#more = false
      const lines = await this.#next()
      // The database is away, or this connection of the pool was.
      if (lines === null) await setTimeout(AGAIN_MS)
      this.#more ||= lines === null || lines.length === PIECE
    }
    this.#reading = false
  }
  async #next(): Promise<readonly KeptLine[] | null> {
    try {
      await this.begun
      const lines = (await this.#log?.after(this.#shootId, this.#told, PIECE)) ?? []
      this.#told = lines.at(-1)?.position ?? this.#told
      if (lines.length > 0) this.tell(lines)
      return lines
    } catch {
      return null
    }
  }
}

/** One for the process and its bus, whichever of Next's bundles it is loaded in. */
const shared = globalThis as { emberslateListeners?: WeakMap<Bus, LogListeners> }
function listeners(): LogListeners {
  shared.emberslateListeners ??= new WeakMap()
  const known = shared.emberslateListeners.get(bus())
  if (known) return known
  const made = new LogListeners(bus(), databaseUrl() === null ? null : { last: lastPosition, after: loadLog })
  shared.emberslateListeners.set(bus(), made)
  return made
}

/** Hears the lines of a shoot from the time this resolves; returns how to stop. */
export const listen = (shootId: string, listener: Listener) => listeners().listen(shootId, listener)
export const listenerCount = (shootId: string) => listeners().count(shootId)

/** Tells all who listen, in every process; other processes look as far as `known` too. */
export async function tellListeners(shootId: string, lines: readonly KeptLine[], known: number): Promise<void> {
  const position = lines.at(-1)?.position ?? known
  if (databaseUrl() !== null && position > 0) await notify({ on: 'log', shoot: shootId, position })
  else if (lines.length > 0) listeners().tell(shootId, lines)
}
