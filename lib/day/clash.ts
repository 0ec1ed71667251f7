import { type Mode, meet } from './crew'
import { handleMin, type MomentJob } from './moment-job'
import { RULES } from './rules'

/** How two moment shots with these people hang together: not at all, one standby for both, or one after the other. */
export type Tie = 'apart' | 'chain' | 'turns'

export function tieOf(a: MomentJob, modeA: Mode, b: MomentJob, modeB: Mode): Tie {
  const [first, next] = a.likely <= b.likely ? [a, b] : [b, a]
  if (!meet(modeA.rollMask, modeB.rollMask)) return 'apart'
  const here = a.cook === b.cook && a.place === b.place
  const behindCamera = (one: Mode, two: Mode) =>
    one.cameras.some((c) => two.cameras.includes(c)) ||
    one.operators.some((p) => two.operators.includes(p) || two.hands.includes(p)) ||
    one.hands.some((p) => two.operators.includes(p))
  if (!behindCamera(modeA, modeB)) return here ? 'apart' : 'turns'
  const sameStand = alike(modeA.cameras, modeB.cameras) && alike(modeA.operators, modeB.operators)
  return sameStand && first.chain.has(next.shot.id) ? 'chain' : 'turns'
}
const alike = (a: readonly number[], b: readonly number[]) => a.length === b.length && a.every((x) => b.includes(x))

/**
 * Share of members in which the later of two shots is not ready because the earlier one still holds its people.
 * `apartMin`: how much later the second cook's meat-on is than the first's. Pairs are taken member by member.
 */
export function clashShare(a: MomentJob, b: MomentJob, tie: Tie, apartMin: number): number {
  if (tie === 'apart') return 0
  const members = Math.min(a.times.length, b.times.length)
  let clashes = 0
  for (let m = 0; m < members; m++) {
    const ta = a.times[m] as number
    const tb = (b.times[m] as number) + apartMin
    if (!Number.isFinite(ta) || !Number.isFinite(tb)) continue
    const [first, next, t1, t2] = ta <= tb ? [a, b, ta, tb] : [b, a, tb, ta]
    const ready = t1 + first.after + (tie === 'chain' ? RULES.reframeMin : next.setup)
    if (ready > t2 - next.before) clashes++
  }
  return clashes / members
}

export const lidsOppose = (a: MomentJob, b: MomentJob) =>
  a.cook === b.cook && [a.shot.lid, b.shot.lid].sort().join() === 'open,shut'

/** Share of members in which one rolls with the lid open while the other wants it shut. */
export function lidClash(a: MomentJob, b: MomentJob): number {
  if (!lidsOppose(a, b)) return 0
  const apart = a.times.filter((t, m) => {
    const u = b.times[m] as number
    return t + a.after + 2 * handleMin <= u - b.before || u + b.after + 2 * handleMin <= t - a.before
  })
  return 1 - apart.length / a.times.length
}

const TIES: readonly Tie[] = ['apart', 'chain', 'turns']
/** Remembers ties and clash shares: the search asks for the same pairs some thousand times a second. */
export class ClashTable {
  /** Where each job's modes begin among all modes of all jobs. */
  private readonly first: Int32Array
  private readonly modes: number
  /** For two modes their tie, 1 and up; 0 is not known yet. */
  private readonly ties: Uint8Array
  /** For two jobs of one cook and a tie the share; NaN is not known yet. */
  private readonly same: Float64Array
  /** For two jobs of two cooks and a tie the share, by how far apart the meats go on. */
  private readonly others = new Map<number, Map<number, number>>()
  constructor(private readonly jobs: readonly MomentJob[]) {
    this.first = new Int32Array(jobs.length)
    let modes = 0
    jobs.forEach((job, i) => {
      this.first[i] = modes
      modes += job.modes.length
    })
    this.modes = modes
    this.ties = new Uint8Array(modes * modes)
    this.same = new Float64Array(jobs.length * jobs.length * TIES.length).fill(Number.NaN)
  }

  /** Job and mode indices of both, and the cooks' meat-on minutes. */
  share(i: number, modeI: number, j: number, modeJ: number, meatOn: ArrayLike<number>): number {
    const [a, b] = [this.jobs[i] as MomentJob, this.jobs[j] as MomentJob]
    const tie = this.tie(i, modeI, j, modeJ)
    const pair = (i * this.jobs.length + j) * TIES.length + tie
    if (a.cook !== b.cook)
      return this.shareApart(a, b, pair, tie, (meatOn[b.cook] as number) - (meatOn[a.cook] as number))
    const before = this.same[pair] as number
    if (!Number.isNaN(before)) return before
    const share = shareOf(a, b, tie, 0)
    this.same[pair] = share
    return share
  }
  private shareApart(a: MomentJob, b: MomentJob, pair: number, tie: number, apart: number): number {
    const known = this.others.get(pair) ?? new Map<number, number>()
    this.others.set(pair, known)
    const before = known.get(apart)
    if (before !== undefined) return before
    const share = shareOf(a, b, tie, apart)
    known.set(apart, share)
    return share
  }
  private tie(i: number, modeI: number, j: number, modeJ: number): number {
    const at = ((this.first[i] as number) + modeI) * this.modes + (this.first[j] as number) + modeJ
    if (this.ties[at] === 0) {
      const [a, b] = [this.jobs[i] as MomentJob, this.jobs[j] as MomentJob]
      this.ties[at] = 1 + TIES.indexOf(tieOf(a, a.modes[modeI] as Mode, b, b.modes[modeJ] as Mode))
    }
    return (this.ties[at] as number) - 1
  }
}
const shareOf = (a: MomentJob, b: MomentJob, tie: number, apart: number) =>
  Math.max(clashShare(a, b, TIES[tie] as Tie, apart), lidClash(a, b))
