import { quantileOf } from '../model/quantiles'
import type { CookTimes } from './cook-times'
import { type Mask, meet } from './crew'
import type { MomentJob } from './moment-job'
import { countBelow, type Sorted, sorted } from './samples'
import type { Anchor } from './shot-window'

type Holds = { readonly called: Sorted; readonly released: Sorted }

/** How likely a moment's call breaks into a stretch of the sheet, member by member. */
export class HoldRisk {
  private readonly known = new Map<string, readonly Holds[]>()
  constructor(
    private readonly jobs: readonly MomentJob[],
    private readonly cooks: readonly CookTimes[],
  ) {}

  /** Share of members in which shot k holds somebody within [from, to); minutes of the day. */
  shareOf(k: number, anchor: Anchor | null, from: number, to: number, meatOn: ArrayLike<number>): number {
    const { called, released } = this.holds(anchor)[k] as Holds
    const zero = meatOn[(this.jobs[k] as MomentJob).cook] as number
    // A hold misses the stretch if it is called after it, or over before it: never both.
    const begun = countBelow(called, to - zero)
    const over = countBelow(released, from - zero)
    return Math.max(0, begun - over) / called.length
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
      if (held && meet(mask, held)) risk += this.shareOf(k, anchor, from, to, meatOn)
    }
    return risk
  }

  private holds(anchor: Anchor | null): readonly Holds[] {
    const key = anchor ? `${anchor.cook}/${anchor.moment}` : ''
    const before = this.known.get(key)
    if (before) return before
    const shift = anchor ? this.shifts(anchor) : null
    const moved = (times: Float64Array) =>
      sorted(times.map((t, m) => (Number.isFinite(t) ? t - (shift?.[m] ?? 0) : Number.POSITIVE_INFINITY)))
    const holds = this.jobs.map((job) => ({ called: moved(job.called), released: moved(job.released) }))
    this.known.set(key, holds)
    return holds
  }
  private shifts(anchor: Anchor): Float64Array {
    const times = this.cooks[anchor.cook]?.at(anchor.moment) ?? new Float64Array(0)
    const likely = quantileOf(sorted(times), 0.5)
    return times.map((t) => (Number.isFinite(t) ? t - likely : 0))
  }
}

/** The stretch in which a moment's hold may lie: 5 % of standbys to 95 % of releases, minutes after meat-on. */
export function tentativeSpan(job: MomentJob): { from: number; to: number } {
  const standby = quantileOf(job.sorted, 0.05) - job.before - job.standbySetup
  const released = quantileOf(sorted(job.released), 0.95)
  return { from: Math.min(standby, quantileOf(sorted(job.called), 0.05)), to: released }
}
