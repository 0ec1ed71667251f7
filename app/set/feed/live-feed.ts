import type { EntryDocument } from '@/lib/log/entry'
import { entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import { whenText } from '@/lib/log/entry-words'
import type { Line, Receipt } from '@/lib/log/log'
import { channelsNow } from '@/lib/session/who'
import { type Instant, instant, type Seconds, seconds } from '@/lib/units'
import type { EntryDraft, Link, SetFeed, SetOpening, SetSnapshot } from '../set-feed'
import { type Alarm, AlertsHere } from './alerts-here'
import { byOwnClock } from './by-own-clock'
import { DayHere } from './day-here'
import type { DeviceClock } from './device-clock'
import type { Heard } from './event-lines'
import { Hearing } from './hearing'
import { Keeping } from './keeping'
import { heardLine, keptLine } from './kept-line'
import { Merged } from './merged-words'
import { Outbox } from './outbox'
import type { Forecaster } from './own-forecast'
import { OwnForecasts } from './own-forecasts'
import { ServerClock } from './server-clock'
import type { FeedStore, Kept } from './store'
import { OPEN_AGAIN, type Wire } from './wire'

/** What the feed has from the device that it runs on. */
export interface Device {
  readonly wire: Wire
  readonly clock: DeviceClock
  readonly alarm: Alarm
  readonly forecaster: Forecaster | null
  openStore(): Promise<FeedStore>
  chance(bytes: number): Uint8Array
  /** A new version of the shoot is announced. */
  newDay(): void
  /** What was kept here is not to be shown any more: the page opens anew. */
  startAnew(): void
}

/** Short enough that an alert is out within a second of its time. */
const TICK_MS = 800
/** So long a screen waits for the server, and for the end of its log, before it goes on with what it has. */
const OPEN_WITHIN_MS = 3000
const THROUGH_WITHIN_MS = 3000
const KEEP_EVERY_MS = 5000
const ANSWER_WITHIN_MS = 10_000

/** The live day in a browser: what is done is kept on the device first, sent when it can be, and folded with the others'. */
export class LiveFeed implements SetFeed {
  #person: string | null = null
  #signedIn = false
  /** Why the server lets this device not listen, and what to do. */
  #notNow: string | null = null
  #name = ''
  #opening: SetOpening
  #keeping: Keeping | null = null
  #connected: boolean | null = null
  /** Something of the time without the server is not through yet. */
  #behind = true
  #stopped = false
  #shown: SetSnapshot | null = null
  #aside: NonNullable<SetSnapshot['aside']> = []
  #ownMade = 0
  readonly #listeners = new Set<() => void>()
  readonly #confirmed = new Map<string, () => void>()
  readonly #loaded = new Signal()
  readonly #through = new Signal()
  readonly #refreshed = new Signal()
  readonly #server: ServerClock
  readonly #merged = new Merged()
  readonly #day: DayHere
  readonly #alerts: AlertsHere
  readonly #outbox: Outbox
  readonly #hearing: Hearing
  readonly #own: OwnForecasts

  constructor(
    readonly device: Device,
    opening: SetOpening,
  ) {
    const { wire, clock, alarm, forecaster } = device
    this.#opening = opening
    this.#server = new ServerClock(() => clock.own())
    this.#alerts = new AlertsHere({
      alarm,
      now: () => this.now(),
      person: () => this.#person,
      fire: async (key) => (await this.#keeping?.fire(key, this.now())) ?? false,
    })
    this.#day = new DayHere(opening, (effects, old) => {
      this.#alerts.take(old, true)
      this.#alerts.take(effects, false)
      if (!channelsNow(this.#day.session).includes('sound')) alarm.hush()
    })
    this.#outbox = new Outbox(wire, clock, this.#server, {
      kept: (documents, receipt) => this.#sent(documents, receipt),
      refused: (document, sentence) => this.#setAside(document, sentence),
      changed: () => this.#changed(),
    })
    this.#hearing = new Hearing(wire, clock, () => this.#keeping?.heard ?? 0, {
      opened: () => this.#connect(),
      event: (heard) => this.#hear(heard),
      beat: () => this.#beat(),
      cut: () => this.#cut(),
      notNow: (sentence) => {
        this.#notNow = sentence
        if (sentence === OPEN_AGAIN) void this.#keeping?.forget()
        this.#changed()
      },
    })
    this.#own = new OwnForecasts(forecaster, (forecast) => {
      if (this.#connected || this.#stopped) return
      this.#ownMade++
      this.#day.ownForecast(`${this.#name}/${this.now()}/${this.#ownMade}`, forecast, this.now())
      this.#changed()
    })
  }

  get person(): string | null {
    return this.#person
  }
  now(): Instant {
    return this.#server.now()
  }
  subscribe(changed: () => void): () => void {
    this.#listeners.add(changed)
    return () => this.#listeners.delete(changed)
  }
  snapshot(): SetSnapshot {
    this.#shown ??= {
      session: this.#day.session,
      link: this.#link(),
      waiting: this.#outbox.size,
      forecastBy: this.#day.forecastBy,
      merged: this.#merged.sentences,
      sounding: this.#alerts.sounding(this.#day.session),
      aside: this.#aside,
      held: this.#outbox.why ?? this.#notNow,
    }
    return this.#shown
  }

  async start(): Promise<void> {
    const { clock, chance, openStore } = this.device
    const store = await openStore()
    const kept = await store.open(`phone-${hex(chance(4))}`)
    if (this.#stopped) return store.close()
    this.#load(store, kept)
    void this.#hearing.run()
    clock.after(OPEN_WITHIN_MS, () => this.#waitNoMore())
    await Promise.all([this.#through.given, this.#refreshed.given])
    if (this.#stopped) return
    this.#day.open(this.#opening, kept.day, this.now())
    this.#alerts.missed(this.#opening.state?.raised ?? [])
    this.#merged.opened(this.#day.session.told.told)
    if (this.#connected !== null) this.#day.release(this.now())
    this.#tick()
    this.#keepOften()
  }
  stop(): void {
    this.keepNow()
    this.#stopped = true
    this.#hearing.stop()
    this.#outbox.stop()
    this.device.forecaster?.stop()
    this.#waitNoMore()
  }

  async add(draft: EntryDraft, ago: Seconds = seconds(0)): Promise<void> {
    await this.#loaded.given
    const keeping = this.#keeping as Keeping
    const own = this.device.clock.own()
    const line = this.#lineOf(byOwnClock(draft, own - this.now()), instant(own - ago * 1000))
    await keeping.lines([{ document: line.document }])
    this.#day.own(line, this.now())
    this.#own.news()
    // Where nothing is kept here, only the server keeps it safe.
    const safe = keeping.store.lasting ? null : this.#confirmation(line.entry.id)
    this.#outbox.add([line.document])
    await safe
  }
  choose(person: string): void {
    if (this.#signedIn || person === this.#person) return
    this.#person = person
    void this.#loaded.given.then(() => this.#keeping?.person(person))
    this.#alerts.chosen()
    this.#changed()
  }

  /** The device says that its network is gone. */
  networkGone(): void {
    this.#hearing.drop()
  }
  /** There may be a network again, or somebody looks at the screen again. */
  lookAgain(): void {
    this.#hearing.hurry()
    this.#day.tick(this.now())
    this.#changed()
  }
  /** So that the device can forecast by itself when the network goes. */
  warm(): void {
    if (!this.#stopped) this.device.forecaster?.warm()
  }
  /** The page may go at any time from now. */
  keepNow(): void {
    if (!this.#day.isOpen) return
    const { now, calls, alerts, load, history, forecast } = this.#day.session
    const state = { now, calls, alerts, load, history, forecast }
    void this.#keeping?.day({ opening: this.#opening, state, raised: this.#alerts.raised })
  }

  #load(store: FeedStore, found: Kept): void {
    const isOver = found.day !== null && erasedSince(found.day.opening, this.#opening)
    const kept = isOver ? { ...found, day: null, lines: found.lines.filter(({ receipt }) => !receipt) } : found
    if (isOver) void store.forget().catch((fault) => console.warn('This device still keeps what was erased:', fault))
    this.#keeping = new Keeping(store, kept, (lines) => this.#heardLines(lines))
    this.#name = kept.device
    this.#person ??= kept.person
    this.#alerts.raised = kept.day?.raised ?? []
    if (kept.day) this.#opening = laterOf(kept.day.opening, this.#opening)
    this.#aside = kept.lines.flatMap(({ document, refused }) => (refused ? [{ document, sentence: refused }] : []))
    const standing = kept.lines.filter(({ refused }) => !refused)
    this.#day.lines(
      standing.flatMap((line) => keptLine(line) ?? []),
      this.now(),
    )
    this.#loaded.give()
    this.#outbox.add(standing.flatMap(({ document, receipt }) => (receipt ? [] : [document])))
  }

  #lineOf(draft: EntryDraft, at: Instant): Line {
    const id = entryId(instant(this.device.clock.own()), this.device.chance(RANDOM_BYTES))
    const by = this.#person === null ? { device: this.#name } : { device: this.#name, person: this.#person }
    const document = JSON.parse(JSON.stringify({ id, at: whenText(at), by, ...draft })) as EntryDocument
    const line = keptLine({ document })
    if (!line) throw new Error('This cannot be logged as it is.')
    return line
  }
  #confirmation(id: string): Promise<void> {
    return new Promise((resolve) => this.#confirmed.set(id, resolve))
  }

  #waitNoMore(): void {
    this.#through.give()
    this.#refreshed.give()
  }
  #connect(): void {
    this.#connected = true
    this.#notNow = null
    this.#keeping?.letIn()
    this.#day.hold()
    this.device.clock.after(THROUGH_WITHIN_MS, () => this.#beat())
    void this.#refresh()
    this.#outbox.hurry()
    this.#changed()
  }
  #cut(): void {
    if (this.#connected !== false) this.#own.news()
    this.#connected = false
    this.#behind = true
    this.#merged.cutOff()
    this.#waitNoMore()
    // What was heard before the line broke may be half of it, and is all there is.
    this.#day.release(this.now())
    this.#changed()
  }
  /** The server lives, and has told everything. */
  #beat(): void {
    this.#through.give()
    this.#day.release(this.now())
    // A hidden page's own timers may sleep; this wakes it.
    this.#day.tick(this.now())
    this.#changed()
  }
  #hear({ event, data, id }: Heard): void {
    if (event === 'entry') {
      const line = heardLine(data)
      if (line) this.#keeping?.hear(line, Number(id))
      return
    }
    if (event === 'forecast') this.#day.serverForecast(JSON.parse(data), this.now())
    if (event === 'day') void this.#refresh()
    this.#changed()
  }
  #heardLines(lines: readonly Line[]): void {
    const sent = lines.filter(({ entry }) => this.#outbox.confirmed(entry.id))
    this.#merged.count('sent', sent.length)
    this.#merged.count('came', lines.filter(({ entry }) => entry.by.device !== this.#name).length)
    for (const { entry } of sent) this.#confirmed.get(entry.id)?.()
    this.#day.lines(lines, this.now())
    this.#changed()
  }

  async #refresh(): Promise<void> {
    const asked = this.device.clock.own()
    const signal = AbortSignal.timeout(ANSWER_WITHIN_MS)
    const me = this.device.wire.whoAmI(signal).catch(() => null)
    const opening = await this.device.wire.opening(signal).catch(() => null)
    if (opening) this.#server.hear(asked, opening.now)
    if (opening) this.#adopt(opening)
    const told = await me
    if (told && told !== this.#person) this.choose(told)
    if (told) this.#signedIn = true
    this.#refreshed.give()
    this.#changed()
  }
  #adopt(opening: SetOpening): void {
    if (erasedSince(this.#opening, opening)) return void this.#keeping?.forget().then(() => this.device.startAnew())
    const isNew = opening.version > this.#opening.version
    this.#opening = opening
    if (isNew) this.#day.newDay(opening, this.now())
    if (isNew) this.device.newDay()
    if (opening.forecast) this.#day.serverForecast(opening.forecast, this.now())
    if (opening.state) this.#day.serverState(opening.state, this.now())
    if (opening.state && this.#day.isOpen) this.#alerts.missed(opening.state.raised)
  }

  async #sent(documents: readonly EntryDocument[], receipt: Receipt | null): Promise<void> {
    this.#merged.count('sent', documents.length)
    if (receipt) {
      const lines = documents.flatMap((document) => keptLine({ document, receipt }) ?? [])
      await this.#keeping?.answered(lines.map(({ document }) => ({ document, receipt })))
      this.#day.lines(lines, this.now())
    }
    for (const { id } of documents) this.#confirmed.get(id as string)?.()
  }
  async #setAside(document: EntryDocument, sentence: string): Promise<void> {
    await this.#keeping?.answered([{ document, refused: sentence }])
    this.#aside = [...this.#aside, { document, sentence }]
    this.#day.drop(document.id as string)
    this.#confirmed.get(document.id as string)?.()
  }

  #link(): Link {
    if (this.#connected === false) return 'cut-off'
    return this.#behind || this.#outbox.why ? 'catching-up' : 'live'
  }
  #tick(): void {
    if (this.#stopped) return
    this.device.clock.after(TICK_MS, () => this.#tick())
    this.#day.tick(this.now())
    if (this.#connected === false) this.#own.tick(this.#day.session, this.#opening.plan, this.now())
    this.#changed()
  }
  #keepOften(): void {
    if (this.#stopped) return
    this.keepNow()
    this.device.clock.after(KEEP_EVERY_MS, () => this.#keepOften())
  }
  #changed(): void {
    const isThrough = this.#connected && this.#day.isThrough && this.#outbox.size === 0
    if (this.#behind && isThrough) {
      this.#behind = false
      this.#merged.back()
    }
    if (this.#day.isOpen) this.#merged.heard(this.#day.session.told.told)
    this.#shown = null
    for (const changed of this.#listeners) changed()
  }
}

/** Something that is waited for, and happens once. */
class Signal {
  give: () => void = () => {}
  readonly given = new Promise<void>((resolve) => {
    this.give = resolve
  })
}

/** A page from the cache may be older than what the device kept. */
const laterOf = (kept: SetOpening, given: SetOpening): SetOpening =>
  kept.version > given.version || (kept.version === given.version && kept.now > given.now) ? kept : given

/** Somebody was taken out of the log: what was kept before still names them. */
const erasedSince = (kept: SetOpening, given: SetOpening) => (given.erased ?? 0) > (kept.erased ?? 0)

const hex = (bytes: Uint8Array) => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
