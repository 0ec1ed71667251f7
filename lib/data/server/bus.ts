import 'server-only'
import { database, type Tx } from '../client'
import { databaseUrl } from '../env'
import { CHANNEL, ListenLine } from './listen-line'

/** What one process tells all of them, its own included. Ids only: what happened is read from the database. */
export type Notice =
  | { readonly on: 'log'; readonly shoot: string; readonly position: number }
  | { readonly on: 'version'; readonly shoot: string; readonly version: number }
  | { readonly on: 'forecast'; readonly shoot: string }
  /** Somebody was taken out of a shoot that processes remember. */
  | { readonly on: 'erased'; readonly shoot: string }
  | { readonly on: 'session-ended'; readonly id: string }
  | { readonly on: 'work-asked' }
  | { readonly on: 'work-done'; readonly id: string }
/** `again`: notices may have been missed; look at everything again. */
export type Heard = Notice | { readonly on: 'again' }
/** Must not throw and must not wait. */
export type Ear<On extends Heard['on']> = (heard: Extract<Heard, { on: On }>) => void
/** Told true when this process is the one, and false when it no longer is. */
export type Led = (leads: boolean) => void

export interface Bus {
  /** With `tx` it is heard when that is committed, and never where it is not; for what is rare, as commits then wait for each other. */
  notify(notice: Notice, tx?: Tx): Promise<void>
  /** Hears from now on; returns how to stop. */
  hear<On extends Heard['on']>(on: On, ear: Ear<On>): () => void
  /** Asks to be the one process that does what is named, until stopped; told at each change. */
  lead(name: string, led: Led): () => void
  /** How long the database has been out of reach, in milliseconds. */
  awayMs(): number
  close(): Promise<void>
}

/** Those of one process who hear. */
class Ears {
  readonly #ears = new Map<string, Set<(heard: never) => void>>()

  hear<On extends Heard['on']>(on: On, ear: Ear<On>): () => void {
    const own = this.#ears.get(on) ?? new Set()
    this.#ears.set(on, own.add(ear))
    return () => own.delete(ear)
  }
  tell(heard: Heard): void {
    for (const ear of this.#ears.get(heard.on) ?? []) ear(heard as never)
  }
}

/** One process alone: whoever notifies has told everybody, and whoever asks is the one. */
class EmbeddedBus extends Ears implements Bus {
  async notify(notice: Notice): Promise<void> {
    this.tell(notice)
  }
  lead(_name: string, led: Led): () => void {
    led(true)
    return () => {}
  }
  awayMs = () => 0
  async close(): Promise<void> {}
}

/** Where statements outside a transaction go. */
type Statements = Pick<Tx, '$executeRaw'>

/** Several processes by one PostgreSQL: what one notifies all hear, as long as their connection lives. */
export class ServerBus extends Ears implements Bus {
  readonly #url: string
  readonly #statements: () => Promise<Statements>
  /** Made when somebody first hears: a command that only writes needs none. */
  #line: ListenLine | null = null
  #before: Promise<void> = Promise.resolve()
  #waiting: { readonly payloads: Set<string>; readonly sent: Promise<void> } | null = null

  constructor(url: string, statements: () => Promise<Statements>) {
    super()
    this.#url = url
    this.#statements = statements
  }
  async notify(notice: Notice, tx?: Tx): Promise<void> {
    const payload = JSON.stringify(notice)
    if (tx) await tx.$executeRaw`SELECT pg_notify(${CHANNEL}, ${payload})`
    else await this.#soon(payload)
  }
  /** Notices that come while others are on their way go together. */
  #soon(payload: string): Promise<void> {
    if (this.#waiting) {
      this.#waiting.payloads.add(payload)
      return this.#waiting.sent
    }
    const payloads = new Set([payload])
    const sent = this.#before
      .catch(() => undefined)
      .then(() => {
        this.#waiting = null
        return this.#send([...payloads])
      })
    this.#waiting = { payloads, sent }
    this.#before = sent
    return sent
  }
  /** A notice need not outlive a crash, so its commit does not wait for the disk; all that commit notices wait for each other. */
  async #send(payloads: readonly string[]): Promise<void> {
    const statements = await this.#statements()
    await statements.$executeRaw`SELECT set_config('synchronous_commit', 'off', true),
      (SELECT count(*) FROM (SELECT pg_notify(${CHANNEL}, payload) FROM unnest(${payloads}::text[]) AS payload) AS sent)`
  }
  override hear<On extends Heard['on']>(on: On, ear: Ear<On>): () => void {
    this.#opened()
    return super.hear(on, ear)
  }
  lead(name: string, led: Led): () => void {
    return this.#opened().lead(name, led)
  }
  awayMs(): number {
    return this.#line?.awayMs() ?? 0
  }
  async close(): Promise<void> {
    await this.#line?.close()
    this.#line = null
  }

  #opened(): ListenLine {
    this.#line ??= new ListenLine(this.#url, {
      heard: (payload) => this.tell(JSON.parse(payload) as Notice),
      look: () => this.tell({ on: 'again' }),
    })
    return this.#line
  }
}

/** One for the process, whichever of Next's bundles it is loaded in. */
const shared = globalThis as { emberslateBus?: Bus }
export function bus(): Bus {
  shared.emberslateBus ??= makeBus()
  return shared.emberslateBus
}
function makeBus(): Bus {
  const url = databaseUrl()
  return url === null ? new EmbeddedBus() : new ServerBus(url, async () => (await database()).prisma)
}
/** Lets go of its connection, as the end of the process would. */
export async function closeBus(): Promise<void> {
  await shared.emberslateBus?.close()
  shared.emberslateBus = undefined
}
export const notify: Bus['notify'] = (notice, tx) => bus().notify(notice, tx)
export const hear: Bus['hear'] = (on, ear) => bus().hear(on, ear)
export const lead: Bus['lead'] = (name, led) => bus().lead(name, led)
