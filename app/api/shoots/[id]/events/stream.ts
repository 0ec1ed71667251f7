import { setTimeout } from 'node:timers/promises'
import { isAway } from '@/lib/data/away'
import type { KeptLine } from '@/lib/data/folder/log-journal'
import { listen } from '@/lib/data/listeners'
import { loadLog } from '@/lib/data/load-log'
import { sayFault } from '@/lib/data/say'
import { bus, hear } from '@/lib/data/server/bus'
import type { LiveEvent } from '../../../../live/live-day'
import { liveDay } from '../../../../live/live-days'
import { lineText } from '../log/read-sending'

/** Often enough that a phone notices a dead line before a call is due, and proxies keep it open. [estimate] */
const HEARTBEAT_MS = 10_000
/** A browser waits so long before it comes back. */
const RETRY_MS = 1000
/** A listener that lets so many chunks lie is gone, or comes back and resumes. */
const MOST_WAITING = 2000
const PIECE = 1000
const DRAIN_MS = 50
/** Without its database for so long the server knows nothing of the day; the phone goes on by itself. */
const MOST_AWAY_MS = 20_000
const encoder = new TextEncoder()
const bytes = (text: string) => encoder.encode(text)

const toldOnce = new WeakMap<LiveEvent, Uint8Array>()
/** Without an id: whoever comes back resumes the log by position, and gets the latest forecast anyway. */
function liveBytes(event: LiveEvent): Uint8Array {
  const known = toldOnce.get(event)
  if (known) return known
  const [name, data] = 'day' in event ? ['day', event.day] : ['forecast', event.forecast]
  const made = bytes(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`)
  toldOnce.set(event, made)
  return made
}

/** Encoded once for all who listen: a batch is told to each of them in turn. */
const encoded = new WeakMap<KeptLine, Uint8Array>()
function eventOf(line: KeptLine): Uint8Array {
  const known = encoded.get(line)
  if (known) return known
  const made = bytes(`id: ${line.position}\nevent: entry\ndata: ${lineText(line)}\n\n`)
  encoded.set(line, made)
  return made
}

/** Every line after `since`, first what is kept, then as it comes in: each once and in order; ends with `gone`. */
export function logStream(shootId: string, since: number, gone: AbortSignal): ReadableStream<Uint8Array> {
  let stop = () => {}
  return new ReadableStream<Uint8Array>(
    {
      start(controller) {
        const listener = new Hearing(shootId, since, controller)
        stop = () => listener.stop()
        if (gone.aborted) stop()
        gone.addEventListener('abort', stop, { once: true })
        // Not awaited: the head of the answer goes out at once.
        void listener.catchUp()
      },
      cancel: () => stop(),
    },
    { highWaterMark: MOST_WAITING },
  )
}

class Hearing {
  readonly #controller: ReadableStreamDefaultController<Uint8Array>
  readonly #shootId: string
  /** Heard while the kept lines were still being read. */
  #early: KeptLine[] | null = []
  #position: number
  #unlisten = () => {}
  readonly #unhear: () => void
  readonly #unerase: () => void
  readonly #beat: NodeJS.Timeout
  #over = false

  constructor(shootId: string, since: number, controller: ReadableStreamDefaultController<Uint8Array>) {
    this.#shootId = shootId
    this.#position = since
    this.#controller = controller
    controller.enqueue(bytes(`retry: ${RETRY_MS}\n\n`))
    const live = liveDay(shootId)
    this.#unhear = live.hear((event) => this.#send(liveBytes(event)))
    // Whoever listens comes back at once, to a day that remembers nothing.
    this.#unerase = hear('erased', ({ shoot }) => shoot === shootId && this.stop())
    live.latest().then(
      (forecast) => forecast && this.#send(liveBytes({ forecast })),
      () => this.stop(),
    )
    this.#beat = setInterval(() => this.#lives(), HEARTBEAT_MS)
    this.#beat.unref()
  }

  async catchUp(): Promise<void> {
    try {
      const unlisten = await listen(this.#shootId, (lines) => this.#hear(lines))
      if (this.#over) return unlisten()
      this.#unlisten = unlisten
      for (;;) {
        const lines = await loadLog(this.#shootId, this.#position, PIECE)
        this.#tell(lines)
        if (lines.length < PIECE || this.#over) break
        // A slow phone takes a long log at its own pace.
        while (!this.#over && (this.#controller.desiredSize ?? 0) <= PIECE) await setTimeout(DRAIN_MS)
      }
      const early = this.#early ?? []
      this.#early = null
      this.#tell(early)
      // Who listens knows by it that the log is through.
      this.#send(bytes(`: at ${this.#position}\n\n`))
    } catch (fault) {
      if (!isAway(fault)) sayFault('event-stream', fault)
      this.stop()
    }
  }

  stop(): void {
    if (this.#over) return
    this.#over = true
    this.#unlisten()
    this.#unhear()
    this.#unerase()
    clearInterval(this.#beat)
    try {
      this.#controller.close()
    } catch {
      // The reader closed it first.
    }
  }

  #lives(): void {
    if (bus().awayMs() > MOST_AWAY_MS) this.stop()
    else this.#send(bytes(`: at ${this.#position}\n\n`))
  }

  #hear(lines: readonly KeptLine[]): void {
    if (this.#early) this.#early.push(...lines)
    else this.#tell(lines)
  }

  #tell(lines: readonly KeptLine[]): void {
    for (const line of lines) {
      if (line.position <= this.#position) continue
      this.#position = line.position
      this.#send(eventOf(line))
    }
  }

  #send(chunk: Uint8Array): void {
    if (this.#over) return
    // None is left where the reader is gone already; whoever writes must not suffer for it.
    if ((this.#controller.desiredSize ?? 0) <= 0) this.stop()
    else
      try {
        this.#controller.enqueue(chunk)
      } catch {
        this.stop()
      }
  }
}
