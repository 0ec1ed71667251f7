import type { Line } from '@/lib/log/log'
import type { FeedStore, Kept, KeptDay, KeptLine } from './store'

/** Keeps on the device what is heard and done, and knows up to where the server's log is here. */
export class Keeping {
  /** Heard up to here, and safe on the device up to there. */
  heard: number
  #safe: number
  #batch: Line[] = []
  /** Something heard was not kept: nothing after it counts as safe, so that a reload hears it again. */
  #hasGap = false
  /** The server lets this device in no more. */
  #isOut = false
  readonly #fired: Set<string>

  constructor(
    readonly store: FeedStore,
    kept: Kept,
    readonly told: (lines: readonly Line[]) => void,
  ) {
    this.heard = kept.day?.position ?? 0
    this.#safe = this.heard
    this.#fired = new Set(kept.fired)
  }

  /** Lines that come in one piece are told in one. */
  hear(line: Line, position: number): void {
    if (this.#batch.length === 0) queueMicrotask(() => this.#flush())
    this.#batch.push(line)
    this.heard = Math.max(this.heard, position)
  }
  /** Settles when they are safe. */
  lines(lines: readonly KeptLine[]): Promise<void> {
    return lines.length === 0 ? Promise.resolve() : this.store.keepLines(lines)
  }
  /** What the server has answered already: not kept here, it is sent again after a reload and answered the same. */
  answered(lines: readonly KeptLine[]): Promise<void> {
    return this.lines(lines).catch(warn)
  }
  day(day: Omit<KeptDay, 'position'>): Promise<void> {
    if (this.#isOut) return Promise.resolve()
    return this.store.keepDay({ ...day, position: this.#safe }).catch(warn)
  }
  /** What the server has goes from this device, until it lets it in again; a page that is opened then hears all of it. */
  forget(): Promise<void> {
    this.#isOut = true
    this.#hasGap = true
    this.#safe = 0
    return this.store.forget().catch(warn)
  }
  letIn(): void {
    this.#isOut = false
  }
  person(person: string): Promise<void> {
    return this.store.keepPerson(person).catch(warn)
  }
  /** True once for each key on this device; where the device keeps nothing, once while the page is open. */
  async fire(key: string, at: number): Promise<boolean> {
    if (this.#fired.has(key)) return false
    this.#fired.add(key)
    return this.store.fire(key, at).catch(() => true)
  }

  #flush(): void {
    const [lines, position] = [this.#batch, this.heard]
    this.#batch = []
    this.told(lines)
    const kept = lines.map(({ document, receipt }) => (receipt ? { document, receipt } : { document }))
    this.store.keepLines(kept).then(
      () => {
        if (!this.#hasGap) this.#safe = Math.max(this.#safe, position)
      },
      (fault) => {
        this.#hasGap = true
        warn(fault)
      },
    )
  }
}
const warn = (fault: unknown) => console.warn('This device did not keep it:', fault)
