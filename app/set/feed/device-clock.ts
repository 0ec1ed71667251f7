/** Time and timers of the device; a test brings its own. */
export interface DeviceClock {
  /** Milliseconds since 1970, as this device believes. */
  own(): number
  /** Calls once, and returns how to call it off. */
  after(ms: number, then: () => void): () => void
}

export const DEVICE_CLOCK: DeviceClock = {
  own: () => Date.now(),
  after: (ms, then) => {
    const timer = setTimeout(then, ms)
    return () => clearTimeout(timer)
  },
}

/** Waits; `hurry` ends the wait. */
export class Pause {
  #end: (() => void) | null = null
  constructor(readonly clock: DeviceClock) {}

  wait(ms: number): Promise<void> {
    return new Promise((resolve) => {
      const callOff = this.clock.after(ms, () => this.hurry())
      this.#end = () => {
        callOff()
        resolve()
      }
    })
  }
  hurry(): void {
    const end = this.#end
    this.#end = null
    end?.()
  }
}

/** Twice as long after each try in vain. */
export const backoffMs = (failed: number, most: number) => Math.min(most, 500 * 2 ** Math.min(failed, 10))
