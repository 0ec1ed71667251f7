import 'server-only'
import { isAway } from '@/lib/data/away'
import { BorderError } from '@/lib/data/border-error'
import type { KeptLine } from '@/lib/data/folder/log-journal'
import type { AppliedForecast } from '@/lib/data/forecast-journal'
import { keepTold, lastTold } from '@/lib/data/last-told'
import { listen } from '@/lib/data/listeners'
import { loadLog } from '@/lib/data/load-log'
import { loadShoot, savedVersion } from '@/lib/data/load-shoot'
import { lastErasure } from '@/lib/data/person/erasure-version'
import { sayFault } from '@/lib/data/say'
import { hear, lead } from '@/lib/data/server/bus'
import type { Layout } from '@/lib/day/layout'
import { parseShoot } from '@/lib/plan/parse'
import type { Shoot, ShootDocument } from '@/lib/plan/shoot'
import { type SessionDay, sessionDay } from '@/lib/session/session-day'
import { type Instant, instant } from '@/lib/units'
import type { ServerState } from '../set/set-feed'
import { layoutReady } from '../workbench'
import { isHeard } from './live-answer'
import { askLive } from './live-pool'
import { LiveSession } from './live-session'
import { differs } from './worth-telling'

export type LiveEvent =
  | { readonly forecast: Omit<AppliedForecast, 'after'> }
  | { readonly day: { readonly version: number } }
export type LiveListener = (event: LiveEvent) => void
export interface OpenDay {
  readonly version: number
  readonly document: ShootDocument
  readonly shoot: Shoot
  readonly layout: Layout
  readonly session: SessionDay
}

/** Readings that come thick and fast share a forecast; one alone is answered at once. */
const LEAST_APART_MS = 2000
const TICK_MS = 60_000
/** Who is called and alerted is looked at so often here; phones do it by themselves. */
const STEP_MS = 5000
/** A day that nobody watches or writes to is let go. */
const IDLE_MS = 30 * TICK_MS
const nowMs = (): Instant => instant(Date.now())
/** That the database is away is told by whoever listens to it, once for all days. */
function noteFault(fault: unknown): void {
  if (!isAway(fault)) sayFault('live-day', fault)
}
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/**
 * A day under way: whatever its log hears is forecast anew, the latest wins, and everybody who listens is told. What is
 * told was kept before. Of several processes that have this day one leads: it forecasts, and the others tell what it kept.
 */
export class LiveDay {
  readonly #shootId: string
  readonly #gone: () => void
  readonly #listeners = new Set<LiveListener>()
  readonly #stops: (() => void)[]
  #session = new LiveSession()
  #open: Promise<OpenDay> | undefined
  #lines: KeptLine[] = []
  #sent = 0
  readonly #told: Promise<void>
  #last: AppliedForecast | null = null
  #version = 0
  #erased: number | null = null
  #leads = false
  #over = false
  /** The last one was told to this process's phones alone: the database was away. */
  #unkept = false
  #busy = false
  #again = false
  #startedMs = 0
  #touchedMs = Date.now()

  constructor(shootId: string, gone: () => void) {
    this.#shootId = shootId
    this.#gone = gone
    const tick = setInterval(() => this.#tick(), TICK_MS)
    tick.unref()
    const step = setInterval(() => this.#session.step(nowMs()), STEP_MS)
    step.unref()
    this.#stops = [
      hear('version', ({ shoot, version }) => shoot === shootId && this.#newVersion(version)),
      hear('forecast', ({ shoot }) => shoot === shootId && !this.#leads && void this.#readTold()),
      hear('erased', ({ shoot }) => shoot === shootId && this.#stop()),
      hear('again', () => void this.#lookAgain()),
      () => clearInterval(tick),
      () => clearInterval(step),
    ]
    this.#told = this.#remember()
    this.#told.then(
      () => this.#untilStopped(lead(shootId, (leads) => void this.#led(leads))),
      (fault) => this.#stop(fault),
    )
  }

  /** The day as announced; refused where the shoot is not here or cannot be laid out. */
  opened(): Promise<OpenDay> {
    this.#touchedMs = Date.now()
    if (!this.#open) {
      this.#open = openDay(this.#shootId)
      this.#open.catch(() => {
        this.#open = undefined
      })
    }
    return this.#open
  }
  /** The forecast told last, on this or an earlier run of the server; null before the first. */
  async latest(): Promise<AppliedForecast | null> {
    await this.#told
    return this.#last
  }
  /** Who is called and who owns what; null where the day cannot be laid out. */
  async state(): Promise<ServerState | null> {
    await this.#told
    const day = await this.opened().catch(() => null)
    return day && (await this.#openSession(day)) ? this.#session.state(nowMs()) : null
  }
  /** Hears what is told from now on; returns how to stop. */
  hear(listener: LiveListener): () => void {
    this.#listeners.add(listener)
    if (!this.#last?.forecast.lines) this.wake()
    return () => this.#listeners.delete(listener)
  }
  /** Forecasts anew, now or as soon as the forecast under way is done. */
  wake(): void {
    this.#touchedMs = Date.now()
    this.#again = true
    if (this.#leads && !this.#busy) void this.#work()
  }

  /** A day may be stopped while it still remembers. */
  #untilStopped(stop: () => void): void {
    if (this.#over) stop()
    else this.#stops.push(stop)
  }
  async #remember(): Promise<void> {
    const early: KeptLine[] = []
    let take = (lines: readonly KeptLine[]) => {
      early.push(...lines)
    }
    this.#untilStopped(await listen(this.#shootId, (lines) => take(lines)))
    this.#version = Math.max(this.#version, (await savedVersion(this.#shootId)) ?? 0)
    this.#erased = await lastErasure(this.#shootId)
    this.#last = await lastTold(this.#shootId)
    this.#lines = [...(await loadLog(this.#shootId, 0))]
    this.#session.hear(this.#lines)
    take = (lines) => this.#hear(lines)
    this.#hear(early)
    if (this.#lines.some(isHeard)) this.wake()
  }
  async #led(leads: boolean): Promise<void> {
    this.#leads = leads
    if (!leads) return
    // Another may have led until now.
    await this.#readTold()
    if (this.#again || this.#unkept) this.wake()
  }
  /** What the leading process told, for those who listen to this one. */
  async #readTold(): Promise<void> {
    const before = this.#last
    const step = await lastTold(this.#shootId).catch(() => null)
    if (step && step.id !== before?.id && this.#last === before) this.#takeOver(step)
  }
  /** Something may have been missed. */
  async #lookAgain(): Promise<void> {
    if (!this.#leads) void this.#readTold()
    else if (this.#unkept) this.wake()
    const version = await savedVersion(this.#shootId).catch(() => null)
    if (version) this.#newVersion(version)
  }
  #hear(lines: readonly KeptLine[]) {
    const after = this.#lines.at(-1)?.position ?? 0
    const fresh = lines.filter(({ position }) => position > after)
    this.#lines.push(...fresh)
    this.#session.hear(fresh)
    if (fresh.some(isHeard)) this.wake()
  }
  #newVersion(version: number) {
    if (version <= this.#version) return
    this.#version = version
    this.#open = undefined
    void this.#heedErasure()
      .catch(noteFault)
      .then(() => {
        this.#tell({ day: { version } })
        this.wake()
      })
  }
  /** Somebody was taken out of the log: its lines are read anew. */
  async #heedErasure(): Promise<void> {
    const erased = await lastErasure(this.#shootId)
    const isNew = this.#erased !== null && erased > this.#erased
    this.#erased = erased
    if (!isNew) return
    this.#lines = [...(await loadLog(this.#shootId, 0))]
    this.#sent = 0
    this.#session = new LiveSession()
    this.#session.hear(this.#lines)
  }
  #tick() {
    const expected = this.#last?.forecast.expected ?? []
    const now = nowMs()
    const cooks = expected.filter(({ moment, likely }) => moment === 'meat-on' && likely <= now).map(({ cook }) => cook)
    const under = expected.some(
      ({ cook, moment, likely }) => moment === 'first-slice' && likely > now && cooks.includes(cook),
    )
    if (under) this.wake()
    else if (this.#listeners.size === 0 && now - this.#touchedMs > IDLE_MS) this.#stop()
  }
  #stop(fault?: unknown) {
    if (fault) noteFault(fault)
    this.#over = true
    this.#leads = false
    for (const stop of this.#stops) stop()
    this.#gone()
  }

  async #work(): Promise<void> {
    this.#busy = true
    while (this.#again && this.#leads) {
      // Never longer: the clock may have been set back meanwhile.
      await pause(Math.min(LEAST_APART_MS, Math.max(0, this.#startedMs + LEAST_APART_MS - Date.now())))
      this.#again = false
      this.#startedMs = Date.now()
      await this.#forecast().catch((fault) => {
        if (!(fault instanceof BorderError)) noteFault(fault)
      })
    }
    this.#busy = false
  }

  /** A day that cannot be lived again must keep neither the board from opening nor the forecast from coming. */
  #openSession({ version, session }: OpenDay): Promise<boolean> {
    return this.#session.open(this.#shootId, version, session).then(
      () => true,
      (fault) => {
        noteFault(fault)
        return false
      },
    )
  }
  async #forecast(): Promise<void> {
    await this.#told
    const day = await this.opened()
    void this.#openSession(day)
    const now = nowMs()
    const { lines: _, ...before } = this.#last?.forecast ?? { lines: null }
    const asked = {
      shootId: this.#shootId,
      version: day.version,
      now,
      before: this.#last ? (before as AppliedForecast['forecast']) : null,
    }
    const count = this.#lines.length
    let told = await askLive({ ...asked, after: this.#sent, lines: this.#lines.slice(this.#sent), announced: null })
    if ('missing' in told) {
      const { start, meatOn, lidOpenings } = day.layout
      const announced = { document: day.document, layout: { start, meatOn, lidOpenings } }
      told = await askLive({ ...asked, after: 0, lines: this.#lines.slice(0, count), announced })
    }
    if ('missing' in told) throw new Error(`The live forecast of ${this.#shootId} does not know its day`)
    this.#sent = count
    if (!this.#leads) return
    await this.#apply({ id: `${now}-${count}`, at: now, after: this.#last?.id ?? null, forecast: told.forecast })
  }

  async #apply(step: AppliedForecast): Promise<void> {
    if (!this.#unkept && !differs(step.forecast, this.#last?.forecast ?? null)) return
    // A full disk must not keep a call from moving.
    this.#unkept = await keepTold(this.#shootId, step).then(
      () => false,
      (fault) => {
        noteFault(fault)
        return true
      },
    )
    this.#takeOver(step)
  }
  #takeOver(step: AppliedForecast) {
    this.#last = step
    const { after: _, ...told } = step
    this.#session.forecast(told)
    this.#tell({ forecast: told })
  }
  #tell(event: LiveEvent) {
    for (const listener of this.#listeners) listener(event)
  }
}

async function openDay(shootId: string): Promise<OpenDay> {
  const saved = await loadShoot(shootId)
  if (!saved) throw new BorderError('not-found')
  const { version } = saved
  const document = saved.document as ShootDocument
  const parsed = parseShoot(document)
  if (!parsed.ok) throw new BorderError('invalid', { problems: parsed.problems })
  const laid = await layoutReady(parsed.value)
  if (!laid.ok) throw new BorderError('invalid', { problems: laid.problems })
  const { layout } = laid
  return { version, document, shoot: parsed.value, layout, session: sessionDay(parsed.value, layout) }
}
