import { type Instant, instant } from '@/lib/units'

export const SPEEDS = [1, 10, 30, 60, 120] as const
export type Speed = (typeof SPEEDS)[number]

/** A day's time that runs as fast as it is told to, or stands. */
export class PlayedClock {
  #rate = 0
  #sinceMs: number
  #from: Instant

  constructor(
    readonly ownMs: () => number,
    at: Instant,
  ) {
    this.#from = at
    this.#sinceMs = ownMs()
  }
  now(): Instant {
    return instant(Math.round(this.#from + (this.ownMs() - this.#sinceMs) * this.#rate))
  }
  run(rate: number): void {
    if (rate === this.#rate) return
    this.jump(this.now())
    this.#rate = rate
  }
  jump(to: Instant): void {
    this.#from = to
    this.#sinceMs = this.ownMs()
  }
}
