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

/** Remembers clash shares: the search asks for the same pairs again and again. */
export class ClashTable {
  private readonly known = new Map<string, number>()
  constructor(private readonly jobs: readonly MomentJob[]) {}

  /** Job and mode indices of both, and the cooks' meat-on minutes. */
  share(i: number, modeI: number, j: number, modeJ: number, meatOn: ArrayLike<number>): number {
    const [a, b] = [this.jobs[i] as MomentJob, this.jobs[j] as MomentJob]
    const apart = a.cook === b.cook ? 0 : (meatOn[b.cook] as number) - (meatOn[a.cook] as number)
    const key = `${i}.${modeI}.${j}.${modeJ}.${apart}`
    const before = this.known.get(key)
    if (before !== undefined) return before
    const tie = tieOf(a, a.modes[modeI] as Mode, b, b.modes[modeJ] as Mode)
    const share = Math.max(clashShare(a, b, tie, apart), lidClash(a, b))
    this.known.set(key, share)
    return share
  }
}
