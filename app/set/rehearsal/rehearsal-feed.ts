import type { EntryDocument } from '@/lib/log/entry'
import { entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import { whenText } from '@/lib/log/entry-words'
import { EMPTY_LOG, type Line, merge } from '@/lib/log/log'
import { crewAnswers } from '@/lib/session/made-up-crew'
import { reduce } from '@/lib/session/reduce'
import {
  type Effect,
  type LiveForecast,
  openSession,
  type Session,
  type SessionEvent,
  withLog,
} from '@/lib/session/session'
import { channelsNow } from '@/lib/session/who'
import { type Instant, instant, later, type Seconds, seconds } from '@/lib/units'
import { type Alarm, AlertsHere } from '../feed/alerts-here'
import type { DeviceClock } from '../feed/device-clock'
import { openedSession } from '../feed/opened-session'
import type { Forecaster } from '../feed/own-forecast'
import type { EntryDraft, SetFeed, SetOpening, SetSnapshot } from '../set-feed'
import { PlayedClock, type Speed } from './played-clock'
import { type PlayedDay, playedLine } from './played-day'

export interface RehearsalDevice {
  readonly clock: DeviceClock
  readonly alarm: Alarm
  readonly forecaster: Forecaster
  chance(bytes: number): Uint8Array
}
export interface Rehearsed {
  readonly day: PlayedDay
  readonly opening: SetOpening
  /** An invented crew answers its calls; the log of a day that was has its answers. */
  readonly crewSeed: number | null
  readonly person: string | null
  readonly speed: Speed
}
/** How it plays, for the bar. */
export interface Playing {
  readonly speed: Speed
  readonly state: 'working-out' | 'plays' | 'waits' | 'stands' | 'over'
}

const STEP_MS = 200
/** The played day waits so long for the person it asks; then the crew answers for them, and it goes on. */
const WAIT_MS = 12_000
/** A forecast is made anew so often in played time without news, and never sooner than this after the last. [estimate] */
const FORECAST_EVERY_MS = 60_000
const FORECAST_APART_MS = 1000
/** What a jump finds due makes no noise. */
const FOUND_MS = 2 * 60_000

/** A day played on the screens of the set. Whatever is added stays in memory here: nothing ever goes to the server. */
export class RehearsalFeed implements SetFeed {
  person: string | null
  #session: Session
  #played: PlayedClock
  #speed: Speed
  #paused = false
  #isOpen = false
  #stopped = false
  /** Counts the jumps: what was asked before the last one is not heard any more. */
  #turn = 0
  #next = 0
  #made = 0
  #asking = false
  #news = false
  #askedAt = { played: 0, ownMs: Number.NEGATIVE_INFINITY }
  #waits: { readonly key: string; readonly sinceMs: number } | null = null
  #alerts: AlertsHere
  #answers: Line[] = []
  #added: Line[] = []
  #shown: SetSnapshot | null = null
  #playing: Playing | null = null
  readonly #listeners = new Set<() => void>()

  constructor(
    readonly device: RehearsalDevice,
    readonly rehearsed: Rehearsed,
  ) {
    const { day, opening, person, speed } = rehearsed
    this.person = person
    this.#speed = speed
    this.#played = new PlayedClock(() => device.clock.own(), day.opensAt)
    this.#session = openSession(opening.day)
    this.#alerts = this.#newAlerts()
    this.#put(day.opensAt)
  }

  /** It goes on by steps: a screen that asks twice in one drawing must hear the same. */
  now(): Instant {
    return this.#session.now
  }
  subscribe(changed: () => void): () => void {
    this.#listeners.add(changed)
    return () => this.#listeners.delete(changed)
  }
  snapshot(): SetSnapshot {
    this.#shown ??= {
      session: this.#session,
      link: 'live',
      waiting: 0,
      forecastBy: this.#session.forecast ? 'this device' : null,
      merged: [],
      sounding: this.#alerts.sounding(this.#session),
      rehearsal: true,
    }
    return this.#shown
  }
  playing(): Playing {
    this.#playing ??= { speed: this.#speed, state: this.#state() }
    return this.#playing
  }

  start(): void {
    this.#step()
  }
  stop(): void {
    this.#stopped = true
    this.device.forecaster.stop()
  }
  pause(paused: boolean): void {
    this.#paused = paused
    this.#run()
    this.#changed()
  }
  faster(speed: Speed): void {
    this.#speed = speed
    this.#run()
    this.#changed()
  }
  /** Goes to a time of the day; what was added after it has not happened. */
  jump(to: Instant): void {
    this.#put(to)
    this.#run()
    this.#changed()
  }

  async add(draft: EntryDraft, ago: Seconds = seconds(0)): Promise<void> {
    const line = this.#lineOf(draft, later(this.now(), seconds(-ago)), this.person)
    this.#own(line)
    this.#changed()
  }
  choose(person: string): void {
    this.person = person
    this.#alerts.chosen()
    this.#changed()
  }

  #put(to: Instant): void {
    this.#turn++
    this.#isOpen = false
    this.#waits = null
    this.#answers = []
    this.#added = this.#added.filter(({ entry }) => entry.at <= to)
    this.#alerts = this.#newAlerts()
    const { day, opening } = this.rehearsed
    this.#next = day.lines.filter(({ entry }) => entry.at <= to).length
    const log = merge(EMPTY_LOG, [...day.lines.slice(0, this.#next), ...this.#added])
    this.#session = withLog({ ...openSession(opening.day), now: to }, log)
    this.#played.run(0)
    this.#played.jump(to)
  }
  #newAlerts(): AlertsHere {
    const fired = new Set<string>()
    return new AlertsHere({
      alarm: this.device.alarm,
      now: () => this.#session.now,
      person: () => this.person,
      fire: async (key) => !fired.has(key) && fired.add(key).has(key),
    })
  }

  #step(): void {
    if (this.#stopped) return
    this.device.clock.after(STEP_MS, () => this.#step())
    if (this.#isOpen) {
      this.#playTo(instant(Math.min(this.#played.now(), this.rehearsed.day.ends)))
      this.#waitForMe()
    }
    this.#forecast()
    this.#run()
    this.#changed()
  }
  #playTo(now: Instant): void {
    for (let due = this.#due(now); due; due = this.#due(now)) this.#take(due)
    if (now > this.#session.now) this.#reduce({ id: `tick/${now}`, at: now, kind: 'tick' })
  }
  /** The first line of the day or of its crew that has come by now. */
  #due(now: Instant): Line | null {
    const told = this.rehearsed.day.lines[this.#next]
    const answered = this.#answers[0]
    const isAnswer = answered !== undefined && (!told || answered.entry.at < told.entry.at)
    const first = isAnswer ? answered : told
    if (!first || first.entry.at > now) return null
    if (isAnswer) this.#added.push(this.#answers.shift() as Line)
    else this.#next++
    return first
  }
  #own(line: Line): void {
    this.#added.push(line)
    this.#take(line)
  }
  #take(line: Line): void {
    this.#news = true
    this.#reduce({ id: line.entry.id, at: instant(Math.max(line.entry.at, this.#session.now)), kind: 'line', line })
  }
  #reduce(event: SessionEvent): void {
    const [session, effects] = reduce(this.#session, event)
    this.#session = session
    this.#alerts.take(effects, false)
    this.#answer(effects)
    if (!channelsNow(session).includes('sound')) this.device.alarm.hush()
  }

  #answer(effects: readonly Effect[]): void {
    const { crewSeed } = this.rehearsed
    if (crewSeed === null) return
    const said = effects.flatMap((effect) => crewAnswers(effect, this.#session.now, crewSeed, this.person))
    const lines = said.map(({ at, person, call, answer }) =>
      this.#lineOf({ kind: 'call-answer', call, answer }, at, person, CREW),
    )
    this.#answers = [...this.#answers, ...lines].sort((a, b) => a.entry.at - b.entry.at)
  }
  /** The day slows down for whom it asks; whoever only watches is answered for. */
  #waitForMe(): void {
    const hurries = this.rehearsed.crewSeed !== null && !this.#paused && this.#speed > 1
    const asked = hurries ? this.#alerts.sounding(this.#session) : null
    if (!asked) this.#waits = null
    else if (this.#waits?.key !== asked.key) this.#waits = { key: asked.key, sinceMs: this.device.clock.own() }
    else if (this.device.clock.own() - this.#waits.sinceMs > WAIT_MS)
      this.#own(
        this.#lineOf({ kind: 'call-answer', call: asked.call, answer: 'coming' }, this.now(), this.person, CREW),
      )
  }

  #forecast(): void {
    const own = this.device.clock.own()
    const { now, forecast } = this.#session
    const isDue = this.#news || !this.#isOpen || now >= this.#askedAt.played + FORECAST_EVERY_MS
    const tooSoon = this.#isOpen && own < this.#askedAt.ownMs + FORECAST_APART_MS
    if (this.#asking || !isDue || tooSoon) return
    this.#asking = true
    this.#news = false
    this.#askedAt = { played: now, ownMs: own }
    const turn = this.#turn
    void this.#ask(forecast).then((made) => {
      this.#asking = false
      if (!this.#stopped) this.#heard(made, turn)
    })
  }
  async #ask(last: Session['forecast']): Promise<LiveForecast | null> {
    const { plan } = this.rehearsed.opening
    if (!plan) return null
    const { told, now } = this.#session
    // Its picture is long, and of no use to the next one.
    const before = last && { ...last, lines: {} }
    return this.device.forecaster.ask({ plan, told, now, before })
  }
  #heard(forecast: LiveForecast | null, turn: number): void {
    if (turn !== this.#turn) return
    const { now } = this.#session
    const id = `rehearsal/${this.#made++}`
    if (!this.#isOpen) this.#open(forecast && { id, at: instant(now - FOUND_MS), forecast })
    else if (forecast) this.#reduce({ id, at: now, kind: 'forecast', forecast })
    this.#run()
    this.#changed()
  }
  /** With the forecast that counts at this time the day can play on from it; where the real day stands is no part of it. */
  #open(forecast: SetOpening['forecast']): void {
    const { log, now } = this.#session
    const { session, old, fresh } = openedSession({ ...this.rehearsed.opening, forecast, state: null }, null, log, now)
    this.#session = session
    this.#isOpen = true
    this.#alerts.take(old, true)
    this.#alerts.take(fresh, true)
    this.#answer([...old, ...fresh])
  }

  #run(): void {
    const plays = this.#isOpen && !this.#paused
    this.#played.run(plays ? (this.#waits ? 1 : this.#speed) : 0)
  }
  #state(): Playing['state'] {
    if (!this.#isOpen) return 'working-out'
    if (this.now() >= this.rehearsed.day.ends) return 'over'
    if (this.#paused) return 'stands'
    return this.#waits ? 'waits' : 'plays'
  }
  #lineOf(draft: EntryDraft, at: Instant, person: string | null, device = THIS_SCREEN): Line {
    const id = entryId(at, this.device.chance(RANDOM_BYTES))
    const by = person === null ? { device } : { device, person }
    const document = JSON.parse(JSON.stringify({ id, at: whenText(at), by, ...draft })) as EntryDocument
    const line = playedLine(document)
    if (!line) throw new Error('This cannot be logged as it is.')
    return line
  }
  #changed(): void {
    this.#shown = null
    this.#playing = null
    for (const changed of this.#listeners) changed()
  }
}

const THIS_SCREEN = 'rehearsal-screen'
const CREW = 'rehearsal-crew'
