import type { ClashTable } from './clash'
import type { MomentJob } from './moment-job'

/** Nodes of the tree looked at before the best found so far is taken; small days finish long before. */
const MOST_NODES = 40_000
export const DROPPED = -1

/**
 * A staffing for every moment shot (index of its mode, or DROPPED) at the least expected loss: a clash costs its share of
 * the later shot's weight, a drop the weight itself, a staffing its own cost. Branch and bound in order of time.
 */
export function assignMoments(
  jobs: readonly MomentJob[],
  clashes: ClashTable,
  meatOn: ArrayLike<number>,
  costs: readonly (readonly number[])[],
): number[] {
  const order = jobs.map((_, i) => i).sort((a, b) => (jobs[a] as MomentJob).likely - (jobs[b] as MomentJob).likely)
  let best: { loss: number; modes: number[] } = { loss: Number.POSITIVE_INFINITY, modes: jobs.map(() => DROPPED) }
  let nodes = 0
  const chosen = jobs.map(() => DROPPED)
  const visit = (depth: number, loss: number): void => {
    if (loss >= best.loss || nodes++ > MOST_NODES) return
    const i = order[depth]
    if (i === undefined) {
      best = { loss, modes: [...chosen] }
      return
    }
    const earlier = order.slice(0, depth)
    const options = (jobs[i] as MomentJob).modes
      .map((_, mode) => ({
        mode,
        more: lossOf(jobs, clashes, meatOn, chosen, earlier, i, mode) + (costs[i]?.[mode] ?? 0),
      }))
      .sort((a, b) => a.more - b.more)
    for (const { mode, more } of [...options, { mode: DROPPED, more: (jobs[i] as MomentJob).weight }]) {
      chosen[i] = mode
      visit(depth + 1, loss + more)
    }
    chosen[i] = DROPPED
  }
  visit(0, 0)
  return best.modes
}

/** What shot i loses to (or takes from) the shots staffed before it. */
export function lossOf(
  jobs: readonly MomentJob[],
  clashes: ClashTable,
  meatOn: ArrayLike<number>,
  modes: ArrayLike<number>,
  others: readonly number[],
  i: number,
  mode: number,
): number {
  let loss = 0
  for (const j of others) {
    const other = modes[j] as number
    if (other === DROPPED) continue
    // Twice its share: a shot missed in more than half of the cooks is better dropped, and said so.
    loss += Math.min(1.01, 2 * clashes.share(j, other, i, mode, meatOn)) * (jobs[i] as MomentJob).weight
  }
  return loss
}
