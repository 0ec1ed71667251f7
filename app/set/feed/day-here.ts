import type { EntryId } from '@/lib/log/entry-id'
import { EMPTY_LOG, type Line, merge } from '@/lib/log/log'
import { reduce } from '@/lib/session/reduce'
import { type Effect, openSession, type Session, type SessionEvent, withLog } from '@/lib/session/session'
import type { Instant } from '@/lib/units'
import type { ServerState, SetOpening } from '../set-feed'
import { openedSession, withForecast, withServer } from './opened-session'
import type { KeptDay } from './store'

/** What effects an event had, and those that came up long before. */
type Told = (effects: readonly Effect[], old: readonly Effect[]) => void

/** The day as this device sees it: the session, and what moves it. Says what is to be done about each step. */
export class DayHere {
  session: Session
  forecastBy: 'server' | 'this device' | null
  isOpen = false
  #serverAt = 0
  /** Lines that wait until the log is through: half a log would call people for nothing. */
  #held: Line[] | null = []
  #state: ServerState | null = null

  constructor(
    opening: SetOpening,
    readonly told: Told,
  ) {
    this.session = withForecast({ ...openSession(opening.day), now: opening.now }, opening.forecast)
    this.forecastBy = opening.forecast ? 'server' : null
  }

  get isThrough(): boolean {
    return this.#held === null
  }

  open(opening: SetOpening, kept: KeptDay | null, now: Instant): void {
    this.isOpen = true
    const log = merge(EMPTY_LOG, this.#held ?? [])
    this.#held = []
    const { session, old, fresh } = openedSession(opening, kept, log, now)
    this.session = session
    this.#serverAt = opening.forecast?.at ?? 0
    if (session.forecast) this.forecastBy = 'server'
    this.told(fresh, old)
  }

  /** Lines of the log, wherever they come from. */
  lines(lines: readonly Line[], now: Instant): void {
    if (lines.length === 0) return
    if (this.#held) for (const line of lines) this.#held.push(line)
    else this.#apply(lines, now)
  }
  /** What somebody does here is in force at once. */
  own(line: Line, now: Instant): void {
    if (this.isOpen) this.#apply([line], now)
    else this.lines([line], now)
  }
  /** From now lines may come in pieces. */
  hold(): void {
    this.#held ??= []
  }
  /** The log is through, or has to do as it is. */
  release(now: Instant): void {
    const held = this.#held
    if (!this.isOpen || !held) return
    this.#held = null
    if (this.#state) this.session = withServer(this.session, this.#state)
    this.#state = null
    if (held.length > 0) this.#apply(held, now)
  }
  /** Where the server stands; it counts as soon as the log is through. */
  serverState(state: ServerState, now: Instant): void {
    if (!this.isOpen) return
    this.#state = state
    if (this.#held) return
    this.hold()
    this.release(now)
  }
  /** The server refused it: it stays on this device, and is no part of the day. */
  drop(id: EntryId): void {
    if (this.#held) this.#held = this.#held.filter(({ entry }) => entry.id !== id)
    const log = new Map([...this.session.log].filter(([one]) => one !== id))
    this.session = withLog(this.session, log)
  }

  /** Of the server's forecasts the latest counts, and any of them before a device's own. */
  serverForecast(given: NonNullable<SetOpening['forecast']>, now: Instant): void {
    if (given.at < this.#serverAt || (given.id === this.session.forecast?.id && this.forecastBy === 'server')) return
    this.#serverAt = given.at
    this.forecastBy = 'server'
    if (!this.isOpen || this.session.history.some(({ id }) => id === given.id)) {
      this.session = withForecast(this.session, given)
      if (this.isOpen) this.tick(now)
    } else this.#step({ id: given.id, at: now, kind: 'forecast', forecast: given.forecast })
  }
  ownForecast(id: string, forecast: NonNullable<SetOpening['forecast']>['forecast'], now: Instant): void {
    this.forecastBy = 'this device'
    this.#step({ id, at: now, kind: 'forecast', forecast })
  }
  newDay(opening: SetOpening, now: Instant): void {
    if (this.isOpen) this.#step({ id: `day/${opening.version}`, at: now, kind: 'day', day: opening.day })
  }
  tick(now: Instant): void {
    if (this.isOpen) this.#step({ id: `tick/${now}`, at: now, kind: 'tick' })
  }

  #apply(lines: readonly Line[], now: Instant): void {
    this.#step({ id: lines.at(-1)?.entry.id as string, at: now, kind: 'lines', lines })
  }
  #step(event: SessionEvent): void {
    const [session, effects] = reduce(this.session, event)
    this.session = session
    this.told(effects, [])
  }
}
