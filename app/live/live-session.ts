import 'server-only'
import type { KeptLine } from '@/lib/data/folder/log-journal'
import { type AppliedForecast, forecastsSince } from '@/lib/data/forecast-journal'
import type { Line } from '@/lib/log/log'
import { readEntry } from '@/lib/log/read-entry'
import { reduce } from '@/lib/session/reduce'
import { openSession, type Session, type SessionEvent } from '@/lib/session/session'
import type { SessionDay } from '@/lib/session/session-day'
import { type Instant, instant } from '@/lib/units'
import { stands } from '../set/feed/alerts-here'
import type { Raised, ServerState } from '../set/set-feed'

type Told = Omit<AppliedForecast, 'after'>
type Heard = { readonly at: number } & ({ readonly line: Line } | { readonly told: Told })

/** After a start the day is lived again from its journals, in steps so long, and no further back. */
const LIVED_STEP_MS = 60_000
const LIVED_MS = 18 * 3_600_000
/** What is still open came up lately: in steps as fine as the day's own, so that each alert has the owner it had. */
const FINE_STEP_MS = 5000
const FINE_MS = 3_600_000
/** A clock that is set back by more than this is not merely corrected. [estimate] */
const BACK_MS = 5000
/** After so many steps others have their turn. */
const STEPS_AT_ONCE = 20
const MOST_RAISED = 60

/** Who is called and alerted, as the server sees the day: where a phone that opens late goes on from. */
export class LiveSession {
  #session: Session | null = null
  #version = 0
  #opened: Promise<void> | null = null
  #isLived = false
  #raised: readonly Raised[] = []
  #waiting: Heard[] = []
  /** All that was ever heard, to live by it again. */
  readonly #heard: Heard[] = []
  #place: { readonly shootId: string; readonly day: SessionDay } | null = null
  #steppedAt = 0

  hear(lines: readonly KeptLine[]): void {
    for (const { document, received, sent } of lines) {
      const read = readEntry(document)
      const receipt = { received: instant(received), sent: instant(sent) }
      if (read.ok) this.#hear({ at: received, line: { entry: read.value, document, receipt } })
    }
  }
  forecast(told: Told): void {
    this.#hear({ at: told.at, told })
  }
  #hear(one: Heard): void {
    this.#waiting.push(one)
    this.#heard.push(one)
  }
  /** The day as it is announced now. */
  async open(shootId: string, version: number, day: SessionDay): Promise<void> {
    const isNewer = version > this.#version
    this.#version = Math.max(version, this.#version)
    if (isNewer || !this.#place) this.#place = { shootId, day }
    this.#opened ??= this.#relive(shootId, day)
    await this.#opened
    const at = this.#session?.now
    if (isNewer && at && this.#session?.announced !== day) this.#reduce({ id: `day/${version}`, at, kind: 'day', day })
  }
  /** What was heard takes effect, and what is due is raised. */
  step(now: Instant): void {
    if (now < this.#steppedAt - BACK_MS) this.#liveAgain()
    this.#steppedAt = now
    if (this.#isLived) this.#live(this.#waiting.splice(0), now)
  }
  state(now: Instant): ServerState | null {
    this.step(now)
    const session = this.#session
    if (!session) return null
    const { calls, alerts, load } = session
    return { now, calls, alerts, load, raised: this.#raised.flatMap((one) => unseen(session, one)) }
  }

  /** The clock was set back: time does not run back in a session, so what was lived would stand still until it is reached again. */
  #liveAgain(): void {
    if (!this.#place || !this.#opened) return
    const { shootId, day } = this.#place
    this.#isLived = false
    this.#raised = []
    this.#waiting = [...this.#heard]
    this.#opened = this.#relive(shootId, day)
    // As at the first time, whoever opens the day next hears the fault.
    this.#opened.catch(() => undefined)
  }
  async #relive(shootId: string, day: SessionDay): Promise<void> {
    this.#session = openSession(day)
    const now = Date.now()
    const since = now - LIVED_MS
    const kept = await forecastsSince(shootId, since)
    const heard = this.#waiting.splice(0)
    const known = new Set(heard.map((one) => ('told' in one ? one.told.id : '')))
    const told = kept.filter(({ id }) => !known.has(id)).map((step): Heard => ({ at: step.at, told: step }))
    const all = [...heard, ...told].sort((a, b) => a.at - b.at)
    const first = all.find(({ at }) => at >= since)?.at ?? now
    for (let [at, i] = [first, 0]; at < now; at += at < now - FINE_MS ? LIVED_STEP_MS : FINE_STEP_MS, i++) {
      const later = all.findIndex((one) => one.at > at)
      this.#live(all.splice(0, later < 0 ? all.length : later), instant(at))
      if (i % STEPS_AT_ONCE === 0) await new Promise((done) => setImmediate(done))
    }
    this.#live(all, instant(now))
    this.#isLived = true
  }
  #live(heard: readonly Heard[], at: Instant): void {
    const lines = heard.flatMap((one) => ('line' in one ? [one.line] : []))
    const last = lines.at(-1)
    if (last) this.#reduce({ id: last.entry.id, at, kind: 'lines', lines })
    for (const one of heard)
      if ('told' in one) this.#reduce({ id: one.told.id, at, kind: 'forecast', forecast: one.told.forecast })
    this.#reduce({ id: `tick/${at}`, at, kind: 'tick' })
  }
  #reduce(event: SessionEvent): void {
    if (!this.#session) return
    const [session, effects] = reduce(this.#session, event)
    this.#session = session
    const raised = effects.flatMap((effect) => (effect.do === 'sound-alert' ? [{ effect, at: event.at }] : []))
    this.#raised = [...this.#raised, ...raised].slice(-MOST_RAISED)
  }
}

/** For those who have not yet seen to it: who answered on another phone is not told again. */
function unseen(session: Session, one: Raised): Raised[] {
  const to = one.effect.to.filter((person) => stands(session, one, person))
  return to.length > 0 ? [{ ...one, effect: { ...one.effect, to } }] : []
}
