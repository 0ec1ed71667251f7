import 'server-only'

/** So often what was noted is written down. */
const TOGETHER_MS = 60_000

interface Noted {
  at: Map<string, number>
  written: number
}
/** Next loads this file once per bundle; the proxy and the routes note in one place. */
const shared = globalThis as { emberslateSeen?: Map<string, Noted> }

/**
 * When somebody was last seen, by the id of their session or key. It is noted in memory and written down for all together:
 * were each to write for itself, a thousand phones would write their whole file some twenty times a second. What a crash
 * loses of it is a minute.
 */
export class LastSeen {
  readonly #name: string

  constructor(name: string) {
    this.#name = name
  }

  get #noted(): Noted {
    shared.emberslateSeen ??= new Map()
    const noted = shared.emberslateSeen.get(this.#name) ?? { at: new Map(), written: Number.NEGATIVE_INFINITY }
    shared.emberslateSeen.set(this.#name, noted)
    return noted
  }

  /** Notes it; where it is time, returns what everybody has to write down now. */
  note(id: string, now: number): ReadonlyMap<string, number> | undefined {
    const noted = this.#noted
    const { at } = noted
    at.set(id, now)
    // A clock that stepped back must not keep the next writing away.
    if (Math.abs(now - noted.written) < TOGETHER_MS) return undefined
    noted.written = now
    noted.at = new Map()
    return at
  }

  /** The later of what was noted and what was kept. */
  of(id: string, kept: number): number {
    return Math.max(kept, this.#noted.at.get(id) ?? 0)
  }
}
