/** So many keys are remembered; then those that are full again are forgotten. */
const MOST_KEYS = 4000

interface Bucket {
  level: number
  at: number
}

/** How often something may be tried: at once up to `burst` times, then once in `everyMs`. In memory, by key. */
export class RateLimit {
  readonly #burst: number
  readonly #everyMs: number
  readonly #buckets = new Map<string, Bucket>()

  constructor(burst: number, everyMs: number) {
    this.#burst = burst
    this.#everyMs = everyMs
  }

  /** Whole seconds to wait; 0 where it may be tried now, and then it counts. */
  take(key: string, now = Date.now()): number {
    if (this.#buckets.size > MOST_KEYS) this.#forgetFull(now)
    const level = this.#levelOf(key, now)
    const may = level >= 1
    this.#buckets.set(key, { level: may ? level - 1 : level, at: now })
    return may ? 0 : Math.ceil(((1 - level) * this.#everyMs) / 1000)
  }

  #levelOf(key: string, now: number): number {
    const bucket = this.#buckets.get(key)
    if (!bucket) return this.#burst
    // A clock that was set back must not keep anybody waiting until it is where it was.
    return Math.min(this.#burst, bucket.level + Math.max(0, now - bucket.at) / this.#everyMs)
  }

  #forgetFull(now: number) {
    for (const key of this.#buckets.keys()) if (this.#levelOf(key, now) >= this.#burst) this.#buckets.delete(key)
  }
}
