import { type Instant, instant } from '@/lib/units'

/** A better sample is not given up for a fresher one sooner than this. [estimate] */
const STALE_MS = 10 * 60_000
const SLACK_MS = 20

/** What the server's clock says, from answers that carry it; before the first one it is taken to be this device's. */
export class ServerClock {
  #aheadMs = 0
  /** By how much it may be wrong: half of what the message took. */
  #errorMs = Number.POSITIVE_INFINITY
  #heard = 0

  constructor(readonly own: () => number) {}

  now(): Instant {
    return instant(this.own() + this.#aheadMs)
  }
  get heard(): boolean {
    return Number.isFinite(this.#errorMs)
  }

  /** `server` was said at some time between `asked` and now, both by this device's clock. */
  hear(asked: number, server: number): void {
    const answered = this.own()
    const errorMs = Math.max(0, answered - asked) / 2
    const aheadMs = server - (asked + answered) / 2
    // Both cannot be right: one of the clocks was set.
    const wasSet = Math.abs(aheadMs - this.#aheadMs) > errorMs + this.#errorMs + SLACK_MS
    if (errorMs > this.#errorMs && !wasSet && answered < this.#heard + STALE_MS) return
    this.#aheadMs = aheadMs
    this.#errorMs = errorMs
    this.#heard = answered
  }
}
