import { quantileOf } from '../model/quantiles'
import type { CookTimes } from './cook-times'
import type { Mask } from './crew'
import type { MomentJob } from './moment-job'
import { countBelow, type Sorted, sorted } from './samples'
import type { Anchor } from './shot-window'

type Holds = { readonly called: Tally; readonly released: Tally }

/** How likely a moment's call breaks into a stretch of the sheet, member by member. */
export class HoldRisk {
  private readonly known = new Map<string, readonly Holds[]>()
  /** The same by the anchor itself: the search asks some thousand times in each day it tries. */
  private readonly byAnchor = new Map<Anchor | null, readonly Holds[]>()
  constructor(
    private readonly jobs: readonly MomentJob[],
    private readonly cooks: readonly CookTimes[],
  ) {}

  /** Share of members in which shot k holds somebody within [from, to); minutes of the day. */
  shareOf(k: number, anchor: Anchor | null, from: number, to: number, meatOn: ArrayLike<number>): number {
    const { called, released } = this.holds(anchor)[k] as Holds
    const zero = meatOn[(this.jobs[k] as MomentJob).cook] as number
    // A hold misses the stretch if it is called after it, or over before it: never both.
    return Math.max(0, called.below(to - zero) - released.below(from - zero)) / called.members
  }

  /** Expected number of holds that fall on people of the mask within [from, to). */
  of(
    mask: Mask,
    masks: readonly (Mask | null)[],
    anchor: Anchor | null,
    from: number,
    to: number,
    meatOn: ArrayLike<number>,
  ) {
    let risk = 0
    for (let k = 0; k < this.jobs.length; k++) {
      const held = masks[k]
      if (!held) continue
      for (let w = 0; w < mask.length; w++)
        if (((mask[w] as number) & (held[w] as number)) !== 0) {
          risk += this.shareOf(k, anchor, from, to, meatOn)
          break
        }
    }
    return risk
  }

  private holds(anchor: Anchor | null): readonly Holds[] {
    const before = this.byAnchor.get(anchor)
    if (before) return before
    const key = anchor ? `${anchor.cook}/${anchor.moment}` : ''
    const holds = this.known.get(key) ?? this.holdsBeside(anchor)
    this.known.set(key, holds)
    this.byAnchor.set(anchor, holds)
    return holds
  }
  private holdsBeside(anchor: Anchor | null): readonly Holds[] {
    const shift = anchor ? this.shifts(anchor) : null
    const moved = (times: Float64Array) =>
      new Tally(sorted(times.map((t, m) => (Number.isFinite(t) ? t - (shift?.[m] ?? 0) : Number.POSITIVE_INFINITY))))
    return this.jobs.map((job) => ({ called: moved(job.called), released: moved(job.released) }))
  }
  private shifts(anchor: Anchor): Float64Array {
    const times = this.cooks[anchor.cook]?.at(anchor.moment) ?? new Float64Array(0)
    const likely = quantileOf(sorted(times), 0.5)
    return times.map((t) => (Number.isFinite(t) ? t - likely : 0))
  }
}

/** How many of a sample lie below a minute, looked up for whole minutes. */
class Tally {
  private readonly first: number
  private readonly counts: Uint16Array
  readonly members: number
  constructor(private readonly sample: Sorted) {
    this.members = sample.length
    const finite = sample.filter((t) => Number.isFinite(t))
    this.first = finite.length > 0 ? Math.floor(finite[0] as number) : 0
    const last = finite.length > 0 ? Math.ceil(finite.at(-1) as number) + 1 : 0
    this.counts = Uint16Array.from({ length: last - this.first + 1 }, (_, i) => countBelow(sample, this.first + i))
  }
  below(minute: number): number {
    const i = minute - this.first
    if (i <= 0) return 0
    if (i >= this.counts.length) return this.counts[this.counts.length - 1] as number
    return Number.isInteger(i) ? (this.counts[i] as number) : countBelow(this.sample, minute)
  }
}

/** The stretch in which a moment's hold may lie: 5 % of standbys to 95 % of releases, minutes after meat-on. */
export function tentativeSpan(job: MomentJob): { from: number; to: number } {
  const standby = quantileOf(job.sorted, 0.05) - job.before - job.standbySetup
  const released = quantileOf(sorted(job.released), 0.95)
  return { from: Math.min(standby, quantileOf(sorted(job.called), 0.05)), to: released }
}
