import { chanceOf } from '../model/random'
import { assignMoments, DROPPED } from './assign-moments'
import type { Board } from './board'
import { layBase } from './day-base'
import type { Genes } from './draft'
import { fixedCost, wrapCost } from './draft-cost'
import type { DayProblem } from './problem'
import { PRICES, RULES } from './rules'
import { layDraft } from './scheduler'
import { restaffAround } from './staff-moments'

/** When a cook's meat may go on is looked at so often, and two days to begin with are so far apart. */
const SCAN_MIN = 10
const APART_MIN = 20
/** So many are carried on from cook to cook, and laid out whole. */
const BEAM = 12
/** Of the first cook's times so many are looked at. */
const FEW = 4

/** Days to begin with, the most promising first: by priority, with the meats put on at different times. */
export function firstDays(board: Board, most: number): Genes[] {
  const { problem } = board
  let beam = [firstGenes(problem)]
  for (let c = 0; c < problem.cooks.length; c++) {
    const tried = beam.flatMap((day) => scanOf(problem, c).map((i) => withMeatOn(problem, day, c, i)))
    beam = best(tried, (genes) => baseCost(board, genes), BEAM, c > 0 ? SCAN_MIN : 0)
  }
  return best(beam, (genes) => layDraft(board, genes).cost, most, APART_MIN)
}
function best(days: readonly Genes[], costOf: (genes: Genes) => number, most: number, apartMin: number): Genes[] {
  const kept: Genes[] = []
  const costed = days.map((genes) => ({ genes, cost: costOf(genes) })).sort((a, b) => a.cost - b.cost)
  for (const { genes } of costed)
    if (kept.length < most && kept.every((day) => apart(day, genes) >= apartMin)) kept.push(genes)
  return kept
}
const apart = (a: Genes, b: Genes) => Math.max(...a.meatOn.map((at, c) => Math.abs(at - (b.meatOn[c] as number))))

/** What it costs with nothing but its moments. */
function baseCost(board: Board, genes: Genes): number {
  const base = layBase(board, genes)
  const wrap = Math.ceil(base.lastNeed + RULES.strikeMin)
  return (
    fixedCost(board, base, genes) +
    base.meals.mealsMissing * PRICES.mealMissing +
    wrapCost(board.problem, base.crewCall, wrap)
  )
}

/** As the first cook is best by itself, and a few more times; every other whenever it may go on. */
function scanOf(problem: DayProblem, cook: number): number[] {
  const count = problem.meatOn.choices[cook]?.length ?? 1
  const first = cook === 0 ? bestStart(problem, cook) : 0
  const all = [first]
  const step = cook === 0 ? Math.max(SCAN_MIN, Math.floor(count / FEW)) : SCAN_MIN
  for (let i = first % step; i < count; i += step) if (i !== first) all.push(i)
  return all
}
/** The staffing of one cook alone does not hang on when it goes on. */
function withMeatOn(problem: DayProblem, genes: Genes, cook: number, i: number): Genes {
  const moved = { ...genes, meatOn: genes.meatOn.with(cook, i) }
  return cook > 0 ? restaffed(problem, moved) : moved
}

function restaffed(problem: DayProblem, genes: Genes): Genes {
  const momentMode = genes.momentMode.map(() => DROPPED)
  const minutes = minutesOf(problem, genes.meatOn)
  const { uniform } = chanceOf(1, 0, 0x6c6f)
  for (let round = 0; round < 2; round++) restaffAround(problem, minutes, momentMode, -1, uniform)
  return { ...genes, momentMode }
}
const minutesOf = ({ meatOn }: DayProblem, indices: readonly number[]) =>
  meatOn.choices.map((all, c) => all[indices[c] as number] ?? 0)

/** Moments staffed at the least loss; the rest by weight, the least free first. */
function firstGenes(problem: DayProblem): Genes {
  const { floats, moments, cooks } = problem
  const meatOn = cooks.map((_, c) => bestStart(problem, c))
  const room = (i: number) => {
    const job = floats[i] as DayProblem['floats'][number]
    const window = job.windows[0]
    return job.span || !window ? 0 : Math.min(...window.hi.map((e) => e.likely), 9999) - job.roll
  }
  return {
    meatOn,
    callLead: problem.call === null ? needBefore(problem) : 0,
    momentMode:
      cooks.length > 1
        ? moments.map(() => DROPPED)
        : assignMoments(moments, problem.clashes, minutesOf(problem, meatOn), lockedCosts(problem)),
    order: floats
      .map((_, i) => i)
      .sort((a, b) => (floats[b]?.weight ?? 0) - (floats[a]?.weight ?? 0) || room(a) - room(b)),
    mode: floats.map(() => 0),
    offset: floats.map(() => 0),
    meals: [240, 270, 270],
  }
}

/** A camera that a locked-off shot names is better left to it: what using it costs a moment shot, by job and mode. */
function lockedCosts({ floats, moments }: DayProblem): number[][] {
  const locked = floats.filter((f) => f.span && f.modes.every((m) => m.cameras.join() === f.modes[0]?.cameras.join()))
  return moments.map((job) =>
    job.modes.map((mode) => {
      const taken = locked.filter((f) => mode.cameras.some((c) => f.modes[0]?.cameras.includes(c)))
      return taken.reduce((sum, f) => sum + f.weight * 0.02, 0)
    }),
  )
}

/** Where the wanted light has the highest chance; else the soonest. */
function bestStart({ meatOn }: DayProblem, cook: number): number {
  if (cook > 0 || meatOn.wish.length === 0) return 0
  return meatOn.wish.indexOf(Math.min(...meatOn.wish))
}
/** A first guess at what has to be shot before the meat goes on. */
function needBefore({ floats }: DayProblem): number {
  const raw = floats.filter((f) => f.raw)
  return Math.ceil(raw.reduce((sum, f) => sum + f.setup + f.roll, 0) / 5) * 5
}
