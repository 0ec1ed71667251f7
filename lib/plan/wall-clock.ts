import { Temporal } from 'temporal-polyfill'
import { type Instant, instant } from '../units'

/** Zones change their clocks on a quarter of an hour, if at all. */
const STEP_MS = 15 * 60_000
type Offsets = readonly number[]

/** Wall-clock times of a zone as instants, fast enough for a file with a reading each second. */
export class WallClock {
  readonly #known = new Map<number, Offsets>()
  constructor(readonly zone: string) {}

  /** `wallMs`: the wall time as if it were UTC. Null where the clocks skip it; of one that occurs twice the first from `after` on. */
  instantOf(wallMs: number, after = Number.NEGATIVE_INFINITY): Instant | null {
    const all = this.#offsets(Math.floor(wallMs / STEP_MS) * STEP_MS).map((offset) => wallMs - offset)
    const found = all.find((at) => at >= after) ?? all.at(-1)
    return found === undefined ? null : instant(found)
  }

  #offsets(wallMs: number): Offsets {
    const known = this.#known.get(wallMs)
    if (known) return known
    const utc = Temporal.Instant.fromEpochMilliseconds(wallMs).toZonedDateTimeISO('UTC')
    const wall = utc.toPlainDateTime()
    const both = (['earlier', 'later'] as const).map((disambiguation) =>
      wall.toZonedDateTime(this.zone, { disambiguation }),
    )
    const offsets = both
      .filter((one) => one.toPlainDateTime().equals(wall))
      .map((one) => wallMs - one.epochMilliseconds)
    const distinct = [...new Set(offsets)]
    this.#known.set(wallMs, distinct)
    return distinct
  }
}
