import { type FeedStore, idOf, type Kept, type KeptDay, type KeptLine } from './store'

/** Keeps while the page is open: for a browser that refuses to keep anything, and for tests. */
export class MemoryStore implements FeedStore {
  readonly lasting: boolean
  device: string | null = null
  person: string | null = null
  day: KeptDay | null = null
  readonly lines = new Map<string, KeptLine>()
  readonly fired = new Map<string, number>()

  constructor(lasting = false) {
    this.lasting = lasting
  }

  async open(device: string): Promise<Kept> {
    this.device ??= device
    const { person, day, lines, fired } = this
    return { device: this.device, person, day, lines: [...lines.values()], fired: new Set(fired.keys()) }
  }
  async keepPerson(person: string | null): Promise<void> {
    this.person = person
  }
  async keepDay(day: KeptDay): Promise<void> {
    this.day = day
  }
  async keepLines(lines: readonly KeptLine[]): Promise<void> {
    for (const line of lines) this.lines.set(idOf(line), line)
  }
  async fire(key: string, at: number): Promise<boolean> {
    if (this.fired.has(key)) return false
    this.fired.set(key, at)
    return true
  }
  async forget(): Promise<void> {
    this.person = null
    this.day = null
    this.fired.clear()
    for (const [id, line] of this.lines) if (line.receipt) this.lines.delete(id)
  }
  close(): void {}
}
