import type { ClashTable } from './clash'
import type { MomentJob } from './moment-job'

/** Nodes of the tree looked at before the best found so far is taken; small days finish long before. */
const MOST_NODES = 6_000
export const DROPPED = -1
/** Points, more than the shots around it may be worth. */
export const NOT_TO_BE_HAD = 400
/** In so many cooks they already stand in each other's way on the sheet. */
export const MOSTLY = 0.4

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
    const options = usual(jobs[i] as MomentJob).map((mode) => ({
      mode,
      more: lossOf(jobs, clashes, meatOn, chosen, order, depth, mode) + (costs[i]?.[mode] ?? 0),
    }))
    for (const { mode, more } of [...options, { mode: DROPPED, more: (jobs[i] as MomentJob).weight }].sort(byCost)) {
      chosen[i] = mode
      visit(depth + 1, loss + more)
    }
    chosen[i] = DROPPED
  }
  visit(0, 0)
  return improved(jobs, clashes, meatOn, costs, order, best.modes)
}
const usual = ({ modes }: MomentJob) => modes.flatMap(({ crossed }, mode) => (crossed ? [] : [mode]))
const byCost = (a: { more: number }, b: { more: number }) => a.more - b.more

/** One shot at a time is staffed anew or dropped while that lessens the whole loss: the tree may have been cut short. */
function improved(
  jobs: readonly MomentJob[],
  clashes: ClashTable,
  meatOn: ArrayLike<number>,
  costs: readonly (readonly number[])[],
  order: readonly number[],
  start: readonly number[],
): number[] {
  const modes = [...start]
  const whole = () =>
    order.reduce((sum, i, depth) => {
      const mode = modes[i] as number
      if (mode === DROPPED) return sum + (jobs[i] as MomentJob).weight
      return sum + lossOf(jobs, clashes, meatOn, modes, order, depth, mode) + (costs[i]?.[mode] ?? 0)
    }, 0)
  let least = whole()
  for (let again = true; again; ) {
    again = false
    for (const i of order)
      for (const mode of [DROPPED, ...usual(jobs[i] as MomentJob)]) {
        const kept = modes[i] as number
        modes[i] = mode
        const loss = whole()
        if (loss < least - 1e-9) [least, again] = [loss, true]
        else modes[i] = kept
      }
  }
  return modes
}

/** What the shot at `depth` in the order loses to (or takes from) the shots before it. */
export function lossOf(
  jobs: readonly MomentJob[],
  clashes: ClashTable,
  meatOn: ArrayLike<number>,
  modes: ArrayLike<number>,
  order: readonly number[],
  depth: number,
  mode: number,
): number {
  const i = order[depth] as number
  let loss = 0
  for (let k = 0; k < depth; k++) {
    const j = order[k] as number
    const other = modes[j] as number
    if (other === DROPPED) continue
    // Twice its share: a shot missed in more than half of the cooks is better dropped, and said so.
    const share = clashes.share(j, other, i, mode, meatOn)
    loss += Math.min(1.5, 2 * share) * (jobs[i] as MomentJob).weight
    // Nobody may gain elsewhere by a shot that is planned and cannot be had.
    if (share > MOSTLY) loss += NOT_TO_BE_HAD
  }
  return loss
}
