import { formatDuration, type Instant, instant, type Seconds, seconds } from '../units'
import { FILE_DEVICE } from './entry-words'
import type { Line, Log, Receipt } from './log'

/** How far a device's clock runs ahead of the server's (negative: behind), from what it said as it sent. */
export interface Skew {
  readonly device: string
  readonly ahead: Seconds
  readonly sendings: number
}
/**
 * What a device says of its clock is short by the time the message took. Of sendings that differ by less than this the
 * greatest counts, as the least delayed; a greater step means that the clock was set. [estimate]
 */
const SAME_CLOCK_MS = 10_000
/** Less than this nobody needs to be told. [estimate] */
const TOLD_FROM_S = 2

const aheadMs = ({ received, sent }: Receipt) => sent - received

/** Gives each line of a log its time by the server's clock. */
export class Clocks {
  /** By device, ascending. */
  readonly #said = new Map<string, number[]>()
  readonly #last = new Map<string, Receipt>()

  constructor(log: Log) {
    for (const { entry, receipt } of log.values()) {
      const { device } = entry.by
      if (!receipt || device === FILE_DEVICE) continue
      const said = this.#said.get(device)
      if (said) said.push(aheadMs(receipt))
      else this.#said.set(device, [aheadMs(receipt)])
      const last = this.#last.get(device)
      if (!last || receipt.received > last.received || (receipt.received === last.received && receipt.sent > last.sent))
        this.#last.set(device, receipt)
    }
    for (const said of this.#said.values()) said.sort((a, b) => a - b)
  }

  /** When it happened by the server's clock; a line on its way goes by its device's last sending. */
  timeOf({ entry, receipt }: Line, at: Instant = entry.at): Instant {
    // Whoever sends a file has said what its times mean.
    if (entry.by.device === FILE_DEVICE) return at
    const known = receipt ?? this.#last.get(entry.by.device)
    return known ? instant(at - this.#ahead(entry.by.device, aheadMs(known))) : at
  }

  skews(): Readonly<Record<string, Skew>> {
    const all = [...this.#last].sort(([a], [b]) => (a < b ? -1 : 1))
    return Object.fromEntries(
      all.map(([device, last]): [string, Skew] => {
        const ahead = seconds(this.#ahead(device, aheadMs(last)) / 1000)
        return [device, { device, ahead, sendings: this.#said.get(device)?.length ?? 0 }]
      }),
    )
  }

  #ahead(device: string, said: number): number {
    const all = this.#said.get(device) ?? []
    let [low, high] = [0, all.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((all[middle] as number) <= said + SAME_CLOCK_MS) low = middle + 1
      else high = middle
    }
    return all[low - 1] ?? said
  }
}

/** "phone-3f2a runs 3 min ahead; its times are set right." Nothing where it is right within a second or two. */
export function skewWords({ device, ahead }: Skew): string | null {
  if (Math.abs(ahead) < TOLD_FROM_S) return null
  const by = formatDuration(seconds(Math.abs(ahead)))
  return `${device} runs ${by} ${ahead > 0 ? 'ahead' : 'behind'}; its times are set right.`
}
