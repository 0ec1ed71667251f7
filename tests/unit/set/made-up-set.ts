import type { Alarm } from '../../../app/set/feed/alerts-here'
import type { DeviceClock } from '../../../app/set/feed/device-clock'
import { LiveFeed } from '../../../app/set/feed/live-feed'
import { MemoryStore } from '../../../app/set/feed/memory-store'
import type { Forecaster } from '../../../app/set/feed/own-forecast'

import { type Listener, SERVER_AWAY, type SendAnswer, type Sent, type Wire } from '../../../app/set/feed/wire'
import type { SetOpening, SoundAlert } from '../../../app/set/set-feed'
import type { EntryDocument } from '../../../lib/log/entry'
import { whenText } from '../../../lib/log/entry-words'
import { readEntry } from '../../../lib/log/read-entry'
import { instant } from '../../../lib/units'
import { at } from '../log/lines'
import { sessionDayWith } from '../session/made-up-day'

/** Lets everything run that waits for nothing but its turn. */
export const settled = async () => {
  for (let i = 0; i < 60; i++) await Promise.resolve()
}

/** Time that stands still until it is told to run. */
export class MadeUpTime {
  #timers: { at: number; then: () => void }[] = []
  constructor(public ms: number) {}

  clock(aheadMs = 0): DeviceClock {
    return {
      own: () => this.ms + aheadMs,
      after: (ms, then) => {
        const timer = { at: this.ms + ms, then }
        this.#timers.push(timer)
        return () => {
          this.#timers = this.#timers.filter((one) => one !== timer)
        }
      },
    }
  }
  async run(seconds: number): Promise<void> {
    const until = this.ms + seconds * 1000
    await settled()
    for (;;) {
      const next = this.#timers.filter((one) => one.at <= until).sort((a, b) => a.at - b.at)[0]
      if (!next) break
      this.#timers = this.#timers.filter((one) => one !== next)
      this.ms = next.at
      next.then()
      await settled()
    }
    this.ms = until
  }
}

/** A server with one shoot's log, and a network that can be cut. */
export class MadeUpServer {
  readonly log: { document: EntryDocument; received: number; sent: number }[] = []
  opening: SetOpening
  reached = true
  /** Takes the sending, and its answer never arrives. */
  losesAnswers = false
  full = false
  /** It knows no device any more. */
  shut = false
  /** Its database does not answer: 503 with Retry-After. */
  away = false
  person: string | null = null
  readonly #listeners = new Set<{ listener: Listener; end: () => void }>()

  constructor(
    readonly time: MadeUpTime,
    changes: Partial<SetOpening> = {},
  ) {
    this.opening = { version: 1, day: sessionDayWith(), forecast: null, people: [], now: at(0), ...changes }
  }

  cut(): void {
    this.reached = false
    for (const { end } of this.#listeners) end()
  }
  tell(event: string, data: object): void {
    for (const { listener } of this.#listeners) listener.event({ event, data: JSON.stringify(data), id: null })
  }
  append(sent: number, documents: readonly EntryDocument[]): SendAnswer {
    const entries = documents.map((document): Sent => {
      const id = document.id as string
      const read = readEntry(document)
      if (!read.ok) return { id, became: 'refused', problems: read.problems }
      if (document.kind === 'note' && document.text === 'forbidden')
        return { id, became: 'refused', problems: [{ pointer: '/entries/0/text', sentence: 'This is not taken.' }] }
      if (this.log.some((line) => line.document.id === id)) return { id, became: 'known' }
      this.log.push({ document, received: this.time.ms, sent })
      for (const { listener } of this.#listeners) this.#say(listener, this.log.length)
      return { id, became: 'kept' }
    })
    const problems = entries.flatMap((one) => (one.became === 'refused' ? one.problems : []))
    if (entries.every(({ became }) => became === 'refused')) return { heard: 'refused', problems, sentence: 'No.' }
    return { heard: 'kept', received: this.time.ms, entries }
  }
  wire(): Wire {
    return {
      opening: async () => {
        if (!this.reached) throw new Error('cut')
        return { ...this.opening, now: instant(this.time.ms) }
      },
      whoAmI: async () => this.person,
      listen: (since, listener, signal) => this.#listen(since, listener, signal),
      send: async (sent, entries) => {
        if (!this.reached) throw new Error('cut')
        if (this.shut) return { heard: 'not-now', sentence: 'Open your crew link again.', waitMs: null }
        if (this.away) return { heard: 'not-now', sentence: SERVER_AWAY, waitMs: 2000 }
        if (this.full) return { heard: 'not-now', sentence: 'The disk is full.', waitMs: null }
        const answer = this.append(sent, JSON.parse(JSON.stringify(entries)))
        if (this.losesAnswers) throw new Error('cut')
        return answer
      },
    }
  }

  async #listen(since: number, listener: Listener, signal: AbortSignal): Promise<void> {
    if (this.shut) listener.notNow('Open your crew link again.', null)
    if (this.away) listener.notNow(SERVER_AWAY, 2000)
    if (!this.reached || this.shut || this.away) throw new Error('cut')
    listener.opened()
    for (let position = since + 1; position <= this.log.length; position++) this.#say(listener, position)
    listener.beat()
    await new Promise<void>((resolve) => {
      const one = { listener, end: resolve }
      this.#listeners.add(one)
      signal.addEventListener('abort', () => resolve())
      void settled().then(() => signal.aborted && resolve())
    }).finally(() => {
      for (const one of this.#listeners) if (one.listener === listener) this.#listeners.delete(one)
    })
  }
  #say(listener: Listener, position: number): void {
    const { document, received, sent } = this.log[position - 1] as (typeof this.log)[number]
    const data = { ...document, received: whenText(instant(received)), sent: whenText(instant(sent)) }
    listener.event({ event: 'entry', data: JSON.stringify(data), id: String(position) })
  }
}

export class HeardAlarm implements Alarm {
  readonly sounded: { key: string; at: number; channels: string }[] = []
  hushed = 0
  constructor(readonly time: MadeUpTime) {}
  sound({ key, channels }: SoundAlert): void {
    this.sounded.push({ key, at: this.time.ms, channels: channels.join() })
  }
  notify(): void {}
  hush(): void {
    this.hushed++
  }
  get keys(): readonly string[] {
    return this.sounded.map(({ key }) => key)
  }
}

let devices = 0
/** A phone of the crew: what it keeps lives on when its page is opened again. */
export class Phone {
  readonly store: MemoryStore
  readonly alarm: HeardAlarm
  feed: LiveFeed
  /** How often the page was opened anew. */
  anew = 0
  readonly #number = devices++
  #chance = 0

  constructor(
    readonly server: MadeUpServer,
    readonly more: { aheadMs?: number; forecaster?: Forecaster; lasting?: boolean } = {},
  ) {
    this.store = new MemoryStore(more.lasting ?? true)
    this.alarm = new HeardAlarm(server.time)
    this.feed = this.open()
  }
  open(): LiveFeed {
    const { server, alarm, store, more } = this
    this.feed = new LiveFeed(
      {
        wire: server.wire(),
        clock: server.time.clock(more.aheadMs),
        alarm,
        forecaster: more.forecaster ?? null,
        openStore: async () => store,
        chance: (bytes) =>
          Uint8Array.from({ length: bytes }, (_, i) => (i === 0 ? this.#number : this.#chance++ & 255)),
        newDay: () => {},
        startAnew: () => this.anew++,
      },
      server.opening,
    )
    return this.feed
  }
  async start(person?: string): Promise<void> {
    void this.feed.start()
    await settled()
    if (person) this.feed.choose(person)
    await settled()
  }
  async reload(): Promise<void> {
    this.feed.stop()
    await settled()
    this.open()
    await this.start()
  }
}

export const reading = (temp: number) => ({ kind: 'reading', cook: 'hero', sensor: 'core', temp: `${temp} °C` })
export const markOf = (moment: string) => ({ kind: 'mark', cook: 'hero', moment })
