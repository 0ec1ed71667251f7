import type { EntryDraft, SetFeed, SetOpening, SetSnapshot } from '../../../app/set/set-feed'
import { entryId } from '../../../lib/log/entry-id'
import { readEntry } from '../../../lib/log/read-entry'
import { reduce } from '../../../lib/session/reduce'
import {
  type Effect,
  type LiveForecast,
  openSession,
  type Session,
  type SessionEvent,
} from '../../../lib/session/session'
import { type Instant, instant, type Seconds, seconds } from '../../../lib/units'

type Sound = Effect & { readonly do: 'sound-alert' }

/** A feed that keeps everything in memory, by a clock it is given: for tests and for looking at screens. */
export class MemoryFeed implements SetFeed {
  person: string | null
  #session: Session
  #sounding: Sound | null = null
  #made = 0
  #shown: SetSnapshot | null = null
  readonly #listeners = new Set<() => void>()

  constructor(
    opening: Pick<SetOpening, 'day' | 'now'>,
    person: string | null,
    readonly now: () => Instant,
    readonly more: Partial<SetSnapshot> = {},
  ) {
    this.person = person
    this.#session = openSession(opening.day)
    this.tick()
  }
  snapshot(): SetSnapshot {
    this.#shown ??= {
      session: this.#session,
      link: 'live',
      waiting: 0,
      forecastBy: 'server',
      merged: [],
      sounding: this.#sounding,
      ...this.more,
    }
    return this.#shown
  }
  subscribe(changed: () => void) {
    this.#listeners.add(changed)
    return () => this.#listeners.delete(changed)
  }
  choose(person: string) {
    this.person = person
    this.#changed()
  }
  tick(at: Instant = this.now()) {
    this.#step({ id: `tick-${this.#made++}`, at, kind: 'tick' })
  }
  forecast(forecast: LiveForecast) {
    this.#step({ id: `forecast-${this.#made++}`, at: this.now(), kind: 'forecast', forecast })
  }
  async add(draft: EntryDraft, ago: Seconds = seconds(0)) {
    const at = instant(this.now() - ago * 1000)
    const random = new Uint8Array(10).fill(this.#made++ % 256)
    const by = { device: 'phone-1', ...(this.person && { person: this.person }) }
    const document = { id: entryId(at, random), at: new Date(at).toISOString(), by, ...draft }
    const read = readEntry(document)
    if (!read.ok) throw new Error(read.problems.map(({ sentence }) => sentence).join(' '))
    const receipt = { received: this.now(), sent: this.now() }
    this.#step({ id: read.value.id, at: this.now(), kind: 'line', line: { entry: read.value, document, receipt } })
  }
  #step(event: SessionEvent) {
    const [next, effects] = reduce(this.#session, event)
    this.#session = next
    const sound = effects.findLast(
      (one): one is Sound => one.do === 'sound-alert' && one.to.includes(this.person ?? ''),
    )
    if (sound) this.#sounding = sound
    const answers = this.#sounding ? (next.told.answers[this.#sounding.call] ?? []) : []
    if (answers.some(({ person }) => person === this.person)) this.#sounding = null
    this.#changed()
  }
  #changed() {
    this.#shown = null
    for (const listener of this.#listeners) listener()
  }
}
