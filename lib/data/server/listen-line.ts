import 'server-only'
import { Client } from 'pg'
import { say } from '../say'

export const CHANNEL = 'emberslate'
/** The connection is asked so often whether it lives; a server that went silently would never say so. */
const ASK_EACH_MS = 1000
const ANSWER_WITHIN_MS = 2000
/** The server ends the connection of a process that has not asked for so long, and with it what the process led. */
const IDLE_MS = 3500
/** A process that ended between keeping something and telling it told nobody. */
const ASKS_BETWEEN_LOOKS = 30
const FIRST_WAIT_MS = 100
const MOST_WAIT_MS = 1000
/** Advisory locks have one space of numbers for all who lock; the name keeps ours apart. */
const LOCK = "hashtextextended('lead/' || name, 0)"

export interface LineTold {
  heard(payload: string): void
  /** Something may have been missed: it listens for the first time or again, or some time has gone by. */
  look(): void
}
interface Wish {
  readonly name: string
  readonly led: (leads: boolean) => void
  leads: boolean
}

/** The one connection by which a process hears of the others, and holds what only one may hold; it always comes back. */
export class ListenLine {
  readonly #url: string
  readonly #told: LineTold
  readonly #wishes = new Set<Wish>()
  readonly #dropped: string[] = []
  readonly #running: Promise<void>
  #wake = () => {}
  #hurried = false
  #closed = false
  /** It has listened before. */
  #lives = false
  #awaySince: number | null = Date.now()

  constructor(url: string, told: LineTold) {
    this.#url = url
    this.#told = told
    this.#running = this.#run()
  }

  awayMs(): number {
    return this.#awaySince === null ? 0 : Date.now() - this.#awaySince
  }
  lead(name: string, led: (leads: boolean) => void): () => void {
    const wish = { name, led, leads: false }
    this.#wishes.add(wish)
    this.#hurry()
    return () => {
      if (this.#wishes.delete(wish) && wish.leads) this.#dropped.push(name)
      this.#hurry()
    }
  }
  close(): Promise<void> {
    this.#closed = true
    this.#hurry()
    return this.#running
  }

  async #run(): Promise<void> {
    for (let waitMs = FIRST_WAIT_MS; !this.#closed; waitMs = Math.min(2 * waitMs, MOST_WAIT_MS)) {
      const was = await this.#listen()
      if (was && !this.#closed) say('warn', 'database-away')
      this.#awaySince ??= Date.now()
      this.#lost()
      if (was) waitMs = FIRST_WAIT_MS
      if (!this.#closed) await this.#pause(waitMs)
    }
  }
  /** One connection, until it is lost; true where it was had. */
  async #listen(): Promise<boolean> {
    const client = new Client({
      connectionString: this.#url,
      application_name: 'emberslate listens',
      keepAlive: true,
      connectionTimeoutMillis: ANSWER_WITHIN_MS,
      query_timeout: ANSWER_WITHIN_MS,
    })
    let lost = false
    const ended = () => {
      lost = true
      this.#hurry()
    }
    client.on('error', ended).on('end', ended)
    client.on('notification', ({ payload = '' }) => this.#told.heard(payload))
    let was = false
    try {
      await client.connect()
      // PostgreSQL 13 has no such setting, and waits for the network to say that a process is gone.
      await client.query(
        `SELECT set_config(name, '${IDLE_MS}', false) FROM pg_settings WHERE name = 'idle_session_timeout'`,
      )
      await client.query(`LISTEN ${CHANNEL}`)
      was = true
      if (this.#lives) say('info', 'database-back', { awayMs: this.awayMs() })
      this.#lives = true
      this.#awaySince = null
      this.#told.look()
      for (let asked = 1; !lost && !this.#closed; asked++) {
        await this.#ask(client)
        if (asked % ASKS_BETWEEN_LOOKS === 0) this.#told.look()
        await this.#pause(ASK_EACH_MS)
      }
    } catch {
      // Away, or gone: it is tried again.
    }
    void client.end().catch(() => undefined)
    return was
  }
  /** Whether it lives, and what is free to be led, are one question. */
  async #ask(client: Client): Promise<void> {
    for (const name of this.#dropped.splice(0))
      await client.query(`SELECT pg_advisory_unlock(${LOCK}) FROM (SELECT $1::text AS name) AS one`, [name])
    const wanted = [...this.#wishes].filter(({ leads }) => !leads)
    const { rows } = await client.query<{ name: string; got: boolean }>(
      `SELECT name, pg_try_advisory_lock(${LOCK}) AS got FROM unnest($1::text[]) AS name`,
      [wanted.map(({ name }) => name)],
    )
    for (const [i, { name, got }] of rows.entries()) if (got) this.#got(name, wanted[i])
  }
  #got(name: string, wish: Wish | undefined): void {
    if (!wish || !this.#wishes.has(wish)) return void this.#dropped.push(name)
    wish.leads = true
    wish.led(true)
  }
  #lost(): void {
    this.#dropped.length = 0
    for (const wish of this.#wishes) {
      if (!wish.leads) continue
      wish.leads = false
      wish.led(false)
    }
  }
  #hurry(): void {
    this.#hurried = true
    this.#wake()
  }
  async #pause(ms: number): Promise<void> {
    if (!this.#hurried)
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, ms)
        this.#wake = () => {
          clearTimeout(timer)
          resolve()
        }
      })
    this.#hurried = false
  }
}
