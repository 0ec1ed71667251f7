import type { EntryDocument } from '@/lib/log/entry'
import type { Receipt } from '@/lib/log/log'
import type { Problem } from '@/lib/refusals'
import { instant } from '@/lib/units'
import { backoffMs, type DeviceClock, Pause } from './device-clock'
import type { ServerClock } from './server-clock'
import type { SendAnswer, Wire } from './wire'

/** A phone that was cut off for hours sends its queue in pieces. */
const PIECE = 100
const ANSWER_WITHIN_MS = 15_000
const MOST_WAIT_MS = 30_000

export interface OutboxTold {
  /** The server has it; without a receipt it had it before, and the log brings that one. */
  kept(documents: readonly EntryDocument[], receipt: Receipt | null): Promise<void>
  refused(document: EntryDocument, sentence: string): Promise<void>
  changed(): void
}

/** Sends what waits, in order and again until the server has confirmed it; what the server refuses is set aside. */
export class Outbox {
  readonly #waiting = new Map<string, EntryDocument>()
  readonly #pause: Pause
  #sending = false
  #stopped = false
  #failed = 0
  /** Sent one by one after a sending was refused as a whole. */
  #singly = 0
  /** Why nothing goes out, in the server's words. */
  why: string | null = null

  constructor(
    readonly wire: Wire,
    readonly clock: DeviceClock,
    readonly server: ServerClock,
    readonly told: OutboxTold,
  ) {
    this.#pause = new Pause(clock)
  }

  get size(): number {
    return this.#waiting.size
  }
  add(documents: readonly EntryDocument[]): void {
    for (const document of documents) this.#waiting.set(document.id as string, document)
    this.told.changed()
    void this.send()
  }
  /** The log itself brought it, ahead of the answer or without it. True where it was waiting. */
  confirmed(id: string): boolean {
    return this.#waiting.delete(id)
  }
  /** The server was heard: no need to wait any longer. */
  hurry(): void {
    this.#failed = 0
    this.#pause.hurry()
    void this.send()
  }
  stop(): void {
    this.#stopped = true
    this.#pause.hurry()
  }

  async send(): Promise<void> {
    if (this.#sending) return
    this.#sending = true
    while (this.#waiting.size > 0 && !this.#stopped) {
      const batch = [...this.#waiting.values()].slice(0, this.#singly > 0 ? 1 : PIECE)
      this.#singly = Math.max(0, this.#singly - 1)
      const waitMs = await this.#sendOne(batch)
      if (waitMs !== null && !this.#stopped) await this.#pause.wait(waitMs)
    }
    this.#sending = false
  }

  /** Null where it got through, else how long to wait. */
  async #sendOne(batch: readonly EntryDocument[]): Promise<number | null> {
    const line = new AbortController()
    const callOff = this.clock.after(ANSWER_WITHIN_MS, () => line.abort())
    const sent = this.clock.own()
    const answer = await this.wire.send(sent, batch, line.signal).catch(() => null)
    callOff()
    if (answer?.heard === 'kept' || answer?.heard === 'refused') {
      this.#failed = 0
      this.why = null
      if (answer.heard === 'kept') await this.#kept(batch, answer, sent)
      else if (batch.length > 1) this.#singly = batch.length
      else await this.#setAside(batch[0] as EntryDocument, sentenceOf(answer.problems) ?? answer.sentence)
      return null
    }
    this.why = answer?.sentence ?? null
    this.told.changed()
    return answer?.waitMs ?? backoffMs(this.#failed++, MOST_WAIT_MS)
  }

  async #kept(batch: readonly EntryDocument[], answer: SendAnswer & { heard: 'kept' }, sent: number): Promise<void> {
    this.server.hear(sent, answer.received)
    const became = (what: 'kept' | 'known') =>
      batch.filter((document, i) => answer.entries[i]?.became === what && this.#waiting.has(document.id as string))
    const receipt = { received: instant(answer.received), sent: instant(sent) }
    await this.told.kept(became('kept'), receipt)
    await this.told.kept(became('known'), null)
    for (const [i, document] of batch.entries()) {
      const one = answer.entries[i]
      if (one?.became === 'refused') await this.#setAside(document, sentenceOf(one.problems) ?? REFUSED)
      else this.#waiting.delete(document.id as string)
    }
    this.told.changed()
  }

  async #setAside(document: EntryDocument, sentence: string): Promise<void> {
    await this.told.refused(document, sentence)
    this.#waiting.delete(document.id as string)
    this.told.changed()
  }
}

const REFUSED = 'The server does not take this entry.'
const sentenceOf = (problems: readonly Problem[]) => problems[0]?.sentence
