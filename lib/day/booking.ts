import type { Mask, Mode } from './crew'

/** Who is bound in each minute of the day. */
export class Booking {
  private readonly grid: Int32Array
  constructor(
    readonly length: number,
    private readonly words: number,
  ) {
    this.grid = new Int32Array(length * words)
  }
  clear(): void {
    this.grid.fill(0)
  }
  copy(): Booking {
    const copy = new Booking(this.length, this.words)
    copy.grid.set(this.grid)
    return copy
  }
  restore(copy: Booking): void {
    this.grid.set(copy.grid)
  }
  /** Whoever was booked alone in that time is free again. */
  release(mask: Mask, from: number, to: number): void {
    const last = Math.min(to, this.length)
    for (let w = 0; w < this.words; w++) {
      const kept = ~(mask[w] as number)
      for (let at = Math.max(0, from) * this.words + w; at < last * this.words; at += this.words)
        this.grid[at] = (this.grid[at] as number) & kept
    }
  }
  book(mask: Mask, from: number, to: number): void {
    const last = Math.min(to, this.length)
    for (let w = 0; w < this.words; w++) {
      const bits = mask[w] as number
      if (bits !== 0)
        for (let at = Math.max(0, from) * this.words + w; at < last * this.words; at += this.words)
          this.grid[at] = (this.grid[at] as number) | bits
    }
  }
  /** The last minute in [from, to) in which somebody of the mask is bound, or -1. */
  lastClash(mask: Mask, from: number, to: number): number {
    const { grid, words } = this
    const first = Math.max(0, from)
    if (words === 1) {
      const bits = mask[0] as number
      for (let t = Math.min(to, this.length) - 1; t >= first; t--) if (((grid[t] as number) & bits) !== 0) return t
      return -1
    }
    for (let t = Math.min(to, this.length) - 1; t >= first; t--)
      for (let w = 0; w < words; w++) if (((grid[t * words + w] as number) & (mask[w] as number)) !== 0) return t
    return -1
  }
  /** Whether in some minute of [from, to) the bound ones and `more` together leave nobody of the mask. */
  exhausts(mask: Mask, more: Mask, from: number, to: number): boolean {
    const last = Math.min(to, this.length)
    for (let t = Math.max(0, from); t < last; t++) {
      let left = 0
      for (let w = 0; w < this.words; w++)
        left |= (mask[w] as number) & ~((this.grid[t * this.words + w] as number) | (more[w] as number))
      if (left === 0) return true
    }
    return false
  }
  /** The same start if setup and roll fit there, else the next that may. */
  nextStart(mode: Mode, setupStart: number, setup: number, roll: number): number {
    const rolls = setupStart + setup
    const inRoll = this.lastClash(mode.rollMask, rolls, rolls + roll)
    if (inRoll >= 0) return mode.rollMask === mode.setupMask ? inRoll + 1 : inRoll + 1 - setup
    const inSetup = this.lastClash(mode.setupMask, setupStart, rolls)
    return inSetup >= 0 ? inSetup + 1 : setupStart
  }
}
