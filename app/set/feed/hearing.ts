import { backoffMs, type DeviceClock, Pause } from './device-clock'
import type { Heard } from './event-lines'
import type { Wire } from './wire'

/** The server beats every 10 s; without a beat for so long the line is dead, whatever the network says. */
const SILENT_MS = 25_000
const MOST_WAIT_MS = 8000

export interface HearingTold {
  opened(): void
  event(heard: Heard): void
  beat(): void
  /** The line is gone, or could not be had. */
  cut(): void
  notNow(sentence: string): void
}

/** Keeps listening to the server: notices a dead line, comes back, resumes after the last position. */
export class Hearing {
  readonly #pause: Pause
  #line: AbortController | null = null
  #stopped = false
  /** So long the server asked to be left alone. */
  #waitMs: number | null = null

  constructor(
    readonly wire: Pick<Wire, 'listen'>,
    readonly clock: DeviceClock,
    readonly since: () => number,
    readonly told: HearingTold,
  ) {
    this.#pause = new Pause(clock)
  }

  async run(): Promise<void> {
    let failed = 0
    while (!this.#stopped) {
      const heard = await this.#listen()
      if (this.#stopped) return
      this.told.cut()
      failed = heard ? 0 : failed + 1
      await this.#pause.wait(Math.min(this.#waitMs ?? backoffMs(failed, MOST_WAIT_MS), MOST_WAIT_MS))
    }
  }

  /** There may be a network again, or the phone was looked at: try at once. */
  hurry(): void {
    this.#pause.hurry()
  }
  /** The device itself says that the network is gone. */
  drop(): void {
    this.#line?.abort()
  }
  stop(): void {
    this.#stopped = true
    this.drop()
    this.hurry()
  }

  /** True where the server was heard. */
  async #listen(): Promise<boolean> {
    const line = new AbortController()
    this.#line = line
    this.#waitMs = null
    let heard = false
    let callOff = this.clock.after(SILENT_MS, () => line.abort())
    const alive = () => {
      heard = true
      callOff()
      callOff = this.clock.after(SILENT_MS, () => line.abort())
    }
    const listener = {
      opened: () => {
        alive()
        this.told.opened()
      },
      event: (one: Heard) => {
        alive()
        this.told.event(one)
      },
      beat: () => {
        alive()
        this.told.beat()
      },
      notNow: (sentence: string, waitMs: number | null) => {
        this.#waitMs = waitMs
        this.told.notNow(sentence)
      },
    }
    await this.wire.listen(this.since(), listener, line.signal).catch(() => {})
    callOff()
    return heard
  }
}
